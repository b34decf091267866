import { divisionFor } from '../../core/checking/syringe-findings.ts';
import { type Syringe, syringeById } from '../../core/dosing/syringe.ts';
import { showNumber } from '../../core/quantity/show.ts';
import { millilitres, type Volume } from '../../core/quantity/volume.ts';
import type { Intent, Refusal } from '../../shared/intent.ts';
import type { Memory } from './memory.ts';

/** What a refusal's words cannot know: the figure that would have done; `undefined` where there is none. */
export function refusalDetail(intent: Intent, code: Refusal, memory: Memory): string | undefined {
  if (code !== 'too-coarse-for-syringe') return undefined;
  const task = taskOf(intent, memory);
  if (task === null) return undefined;
  const grams = divisionFor(task.syringe, task.mark).value;
  return `steps of ${showNumber(grams, 3)} g or finer would do`;
}

function taskOf(intent: Intent, { syringeCheck }: Memory): { syringe: Syringe; mark: Volume } | null {
  if (intent.type === 'syringe-check-start') {
    const syringe = syringeById(intent.syringeId);
    return syringe === undefined ? null : { syringe, mark: millilitres(intent.markMl) };
  }
  return 'task' in syringeCheck ? syringeCheck.task : null;
}
