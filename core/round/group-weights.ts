import type { GroupMember } from '../dosing/group-dose.ts';
import type { Animal } from '../herd/animal.ts';
import { DAY_MS, type Moment } from '../moment.ts';
import { grams } from '../quantity/mass.ts';

/** A weight from the day book older than this is no weight to dose by (our own guard). */
export const OLDEST_WEIGHT_DAYS = 30;
/** Standard uncertainty of a weight of the last weeks, as a share of it: gut fill and growth (our own guard). */
const DOUBT = 0.05;

/** An animal with the weight a group's dose may go by, or why there is none. */
export function groupMember(
  { id, lastWeight }: Animal,
  now: Moment,
): GroupMember | 'never-weighed' | 'weight-too-old' {
  if (lastWeight === null) return 'never-weighed';
  if (now.wallMs - lastWeight.atMs > OLDEST_WEIGHT_DAYS * DAY_MS) return 'weight-too-old';
  const { mass } = lastWeight;
  return {
    id,
    weight: { mass, uncertainty: grams(DOUBT * mass.value), at: now.uptimeMs, changedFrom: null },
  };
}
