import { describe, expect, test } from 'vitest';
import {
  type BodyScoreForExport,
  bodyScoreEvent,
  type EventCore,
  type Json,
  type TreatmentForExport,
  treatmentEvent,
  type WeightForExport,
  weightEvent,
} from '../../../core/exports/animal-data.ts';
import { faultsOf } from '../../oracles/ade/judge.ts';

const core: EventCore = {
  id: '0197f22e-279b-7cc3-98c4-dc0c0c07398f',
  atMs: Date.UTC(2026, 4, 2, 14, 3, 11, 250),
  animal: { tag: '840003123456789', id: 'anna' },
  by: 'Ida',
  changedAtMs: Date.UTC(2026, 4, 2, 14, 3, 11),
  takenBack: false,
};
const weight: WeightForExport = {
  ...core,
  kilograms: 41.35,
  resolutionKilograms: 0.05,
  method: 'scale',
  hoursOffFeed: 0,
};
const treatment: TreatmentForExport = {
  ...core,
  medicine: 'levamisole hydrochloride, drench',
  millilitres: 9.8,
  route: 'oral drench',
  lot: 'L-7',
  expiresAtMs: Date.UTC(2027, 0, 31),
  meatClearAtMs: Date.UTC(2026, 4, 11, 14, 3, 11),
  milkClearAtMs: null,
  comment: '49.45 mg/mL',
};
const score: BodyScoreForExport = { ...core, score: 2.5 };

describe('events stand up to the published schemas', () => {
  const without = { animal: { tag: null, id: 'anna' }, by: '', takenBack: true } as const;

  test.each([
    ['a weight', 'WeightEvent', weightEvent(weight)],
    [
      'a weight of which little is known',
      'WeightEvent',
      weightEvent({
        ...weight,
        ...without,
        method: 'imported',
        resolutionKilograms: null,
        hoursOffFeed: null,
      }),
    ],
    ['a weight by tape', 'WeightEvent', weightEvent({ ...weight, method: 'girth' })],
    ['a weight by eye', 'WeightEvent', weightEvent({ ...weight, method: 'guess' })],
    ['a treatment', 'TreatmentEvent', treatmentEvent(treatment)],
    [
      'a treatment of which little is known',
      'TreatmentEvent',
      treatmentEvent({ ...treatment, ...without, lot: null, meatClearAtMs: null, comment: null }),
    ],
    ['a lot without a day', 'TreatmentEvent', treatmentEvent({ ...treatment, expiresAtMs: null })],
    ['a score', 'ConformationScoreEvent', bodyScoreEvent(score)],
    ['a score taken back', 'ConformationScoreEvent', bodyScoreEvent({ ...score, ...without })],
  ] as const)('%s', (_name, resource, event) => {
    expect(faultsOf(resource, event)).toEqual([]);
  });
});

describe('the schemas find out what is wrong', () => {
  const good = weightEvent(weight) as Record<string, Json>;

  test.each([
    ['no animal', 'WeightEvent', { ...good, animal: {} }],
    ['a negative weight', 'WeightEvent', { ...good, weight: { measurement: -1 } }],
    ['a unit that is none', 'WeightEvent', { ...good, weight: { measurement: 1, units: 'kg' } }],
    ['a time without a zone', 'WeightEvent', { ...good, eventDateTime: '2026-05-02 14:03' }],
    ['no score', 'ConformationScoreEvent', { ...good, traitScored: 'BodyConditionScore' }],
    ['a dose in words', 'TreatmentEvent', { ...good, dose: { doseQuantity: 'some' } }],
  ] as const)('%s', (_name, resource, event) => {
    expect(faultsOf(resource, event)).not.toEqual([]);
  });
});

describe('an event', () => {
  test('is the minimal one of the standard, with more', () => {
    expect(weightEvent(weight)).toMatchObject({
      resourceType: 'WeightEvent',
      eventDateTime: '2026-05-02T14:03:11Z',
      animal: { scheme: 'std.iso.11785', id: '840003123456789' },
      weight: { measurement: 41.35, units: 'KGM', method: 'LoadCell', resolution: 0.05 },
      timeOffFeed: 0,
    });
  });

  test('tells no clear time that is not known', () => {
    expect(treatmentEvent(treatment)).toMatchObject({
      withdrawals: [{ productType: 'Meat', endDate: '2026-05-11T14:03:11Z' }],
    });
  });

  test('that was taken back says so', () => {
    expect(weightEvent({ ...weight, takenBack: true })).toMatchObject({ meta: { isDeleted: true } });
  });

  test('is not made of a weight that is none', () => {
    expect(() => weightEvent({ ...weight, kilograms: Number.NaN })).toThrow(RangeError);
    expect(() => weightEvent({ ...weight, kilograms: -1 })).toThrow(RangeError);
  });
});
