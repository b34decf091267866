/**
 * Keeps the last of something worked out for each owner, and works it out anew only where a part it rests on is another
 * than before; parts are compared by identity, since what is in memory is replaced and never changed in place.
 */
export function keptBy<Owner extends object, T>(): (
  owner: Owner,
  of: readonly unknown[],
  make: () => T,
) => T {
  const kept = new WeakMap<Owner, { readonly of: readonly unknown[]; readonly made: T }>();
  return (owner, of, make) => {
    const before = kept.get(owner);
    if (before?.of.length === of.length && before.of.every((part, i) => part === of[i])) return before.made;
    const made = make();
    kept.set(owner, { of, made });
    return made;
  };
}
