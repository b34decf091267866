import type { CautionView } from '../../shared/dose.ts';

/** The caution that must be dealt with now, and how many asks there are in all. */
export interface OpenCaution {
  readonly caution: CautionView | null;
  /** Counted from 1 among the asks; 0 for a stop. */
  readonly at: number;
  readonly of: number;
}

/** The first stop there is, else the first ask not yet accepted; notes never hold the work up. */
export function openCaution(cautions: readonly CautionView[], accepted: readonly string[]): OpenCaution {
  const asks = cautions.filter(({ strength }) => strength === 'ask');
  const stop = cautions.find(({ strength }) => strength === 'stop');
  if (stop !== undefined) return { caution: stop, at: 0, of: asks.length };
  const at = asks.findIndex(({ code }) => !accepted.includes(code));
  return { caution: asks[at] ?? null, at: at + 1, of: asks.length };
}
