/** The address that tells of the groups of a choice: all, those to treat, a class or a pen. */
export function groupsPath(jugId: string, choice: string, without: readonly string[]): string {
  const query = new URLSearchParams();
  const [kind, ...rest] = choice.split(':');
  if (kind === 'whom') query.set('whom', '1');
  if (kind === 'class' || kind === 'pen') query.set(kind, rest.join(':'));
  if (without.length > 0) query.set('without', without.join(','));
  const asked = query.size > 0 ? `?${query}` : '';
  return `/api/groups/${encodeURIComponent(jugId)}${asked}`;
}
