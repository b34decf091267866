import { divisionFor } from '../../core/checking/syringe-findings.ts';
import { type Syringe, syringeById } from '../../core/dosing/syringe.ts';
import { expectedGross } from '../../core/mixing/expected-gross.ts';
import { grams, type Mass } from '../../core/quantity/mass.ts';
import { showNumber } from '../../core/quantity/show.ts';
import { millilitres, type Volume } from '../../core/quantity/volume.ts';
import type { Intent, Refusal } from '../../shared/intent.ts';
import type { Memory } from './memory.ts';
import { contradictionOf } from './own-medicine-intents.ts';

const DETAIL_WORDS = {
  en: {
    finer: (step: string) => `steps of ${step} g or finer would do`,
    otherMass: (now: string, jug: number, should: string) =>
      `it weighs ${now} g, jug ${jug} should weigh ${should} g`,
  },
  es: {
    finer: (step: string) => `servirían pasos de ${step} g o más finos`,
    otherMass: (now: string, jug: number, should: string) =>
      `pesa ${now} g, la jarra ${jug} debería pesar ${should} g`,
  },
};

/** What a refusal's words cannot know: the figure that would have done; `undefined` where there is none. */
export function refusalDetail(intent: Intent, code: Refusal, memory: Memory): string | undefined {
  const words = DETAIL_WORDS[memory.settings.language];
  if (code === 'jug-weighs-otherwise' && intent.type === 'prove-on-bench') {
    return bothMasses(intent.jugId, memory, words.otherMass);
  }
  // The keypad says which two figures contradict each other before it lets them be sent.
  if (code === 'contradicts-itself' && memory.settings.language === 'en')
    return contradictionOf(intent, memory);
  if (code !== 'too-coarse-for-syringe') return undefined;
  const task = taskOf(intent, memory);
  if (task === null) return undefined;
  const step = divisionFor(task.syringe, task.mark).value;
  return words.finer(showNumber(step, 3));
}

/** Both masses of a jug that is not proved: what stands there and what should. */
function bothMasses(
  jugId: string,
  { jugs, bench }: Memory,
  say: (now: string, jug: number, should: string) => string,
): string | undefined {
  const jug = jugs.find(({ id }) => id === jugId);
  const expected = jug === undefined ? null : expectedGross(jug, bench.uncertainty ?? grams(0));
  if (jug === undefined || expected === null || bench.steady === null) return undefined;
  const shown = ({ value }: Mass) => showNumber(value, 0);
  return say(shown(bench.steady), jug.number, shown(expected.mass));
}

function taskOf(intent: Intent, { syringeCheck }: Memory): { syringe: Syringe; mark: Volume } | null {
  if (intent.type === 'syringe-check-start') {
    const syringe = syringeById(intent.syringeId);
    return syringe === undefined ? null : { syringe, mark: millilitres(intent.markMl) };
  }
  return 'task' in syringeCheck ? syringeCheck.task : null;
}
