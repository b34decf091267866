import { SHIPPED } from '../../../core/formulary/shipped.ts';
import type { RoundWorld } from '../../../core/round/state.ts';
import { makeAnimal } from './animal.ts';
import { makeApproval } from './approval.ts';
import { makeJug } from './jug.ts';
import { CHECKED } from './scale-check.ts';
import { makeSyringe } from './syringe.ts';
import { NINE_OCLOCK, UP } from './time.ts';

/** The farm at nine o'clock: two goats, one jug, goats approved, 1 to 12 mL syringes, everything ready. */
export function makeWorld(over: Partial<RoundWorld> = {}): RoundWorld {
  return {
    now: { uptimeMs: UP, wallMs: NINE_OCLOCK },
    timeZone: 'UTC',
    formulary: SHIPPED,
    clockTrusted: true,
    diskKeeps: true,
    animals: [makeAnimal(), makeAnimal({ id: 'bella', name: 'Bella', tag: '840003123456790' })],
    jugs: [makeJug()],
    approvals: [makeApproval()],
    syringes: [makeSyringe(1, 0.01), makeSyringe(3, 0.1), makeSyringe(6, 0.1), makeSyringe(12, 0.2)],
    earlier: [],
    scale: CHECKED,
    proven: [],
    platformReady: true,
    standing: null,
    onBench: 'bench-not-ready',
    by: 'Kim',
    freshId: 'id-1',
    ...over,
  };
}

/** The same world some milliseconds after nine o'clock; every step of a test wants its own id. */
export function later(ms: number, over: Partial<RoundWorld> = {}): RoundWorld {
  return makeWorld({
    now: { uptimeMs: UP + ms, wallMs: NINE_OCLOCK + ms },
    freshId: `id-at-${ms}`,
    ...over,
  });
}
