import type { KeepingView } from '../../shared/keeping.ts';

/** Whether a keeper who had copies has none of late; one who never had any is told where copies are, not here. */
export function copiesMissing({ trouble, overdue, last }: KeepingView['backup']): boolean {
  return trouble !== null || (overdue && last !== null);
}
