import { z } from 'zod';
import { ScaleCheckView } from './check.ts';
import { KeptSyringeCheckView } from './syringe-check.ts';

/** Every finished check of scales and syringes, the newest first: what `GET /api/checks` answers. */
export const ChecksView = z.strictObject({
  scales: z.array(ScaleCheckView),
  syringes: z.array(KeptSyringeCheckView),
});
/** Every finished check of scales and syringes. */
export type ChecksView = z.infer<typeof ChecksView>;
