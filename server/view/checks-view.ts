import type { ChecksView } from '../../shared/checks.ts';
import type { Store } from '../store/store.ts';
import { scaleCheckView } from './check-view.ts';
import { syringeCheckRecordView } from './syringe-check-view.ts';
import { rfc3339 } from './times.ts';

/** Every finished check on disk as the wire carries it, the newest first. */
export function checksView({ scaleChecks, syringeChecks }: Store): ChecksView {
  return {
    scales: scaleChecks.all().map(scaleCheckView),
    syringes: syringeChecks.all().map(({ check, forgotten }) => ({
      ...syringeCheckRecordView(check),
      forgotten: forgotten === null ? null : { at: rfc3339(forgotten.atMs), by: forgotten.by },
    })),
  };
}
