import { SYRINGE_CATALOGUE } from '../../../core/dosing/syringe.ts';
import { makeJug } from '../../core/make/jug.ts';
import { type TestBarn, testBarn } from './test-barn.ts';

/** A barn with jug 7 in service, every syringe of the catalogue on hand, goats and sheep approved. */
export function printBarn(over: Parameters<typeof makeJug>[0] = {}): TestBarn {
  const test = testBarn();
  const { context } = test.barn;
  context.memory = {
    ...context.memory,
    jugs: [makeJug(over)],
    settings: { ...context.memory.settings, syringeIds: SYRINGE_CATALOGUE.map(({ id }) => id) },
  };
  return test;
}
