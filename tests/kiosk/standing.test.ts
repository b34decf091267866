import { expect, test } from 'vitest';
import { standingOf } from '../../kiosk/daybook/standing.ts';
import type { CorrectionView } from '../../shared/dose.ts';
import { treatment } from './preview/base-state.ts';

function correction(kind: CorrectionView['kind'], extra: Partial<CorrectionView> = {}): CorrectionView {
  const empty = { animal: null, animalName: null, volumeMl: null, meat: null, milk: null };
  return { id: kind, kind, ...empty, at: '', by: 'Sam', ...extra };
}

const row = { animalName: 'Bramble', volumeMl: 11.3 };

test.each([
  [
    'nothing corrected',
    [],
    { given: true, animalName: 'Bramble', volumeMl: 11.3, wasAnimal: null, wasVolumeMl: null },
  ],
  [
    'another volume',
    [correction('wrong-volume', { volumeMl: 10.1 })],
    { volumeMl: 10.1, wasVolumeMl: 11.3, wasAnimal: null },
  ],
  ['not given', [correction('not-given')], { given: false, wasVolumeMl: 11.3 }],
  [
    'another animal',
    [correction('wrong-animal', { animalName: 'Juniper' })],
    { animalName: 'Juniper', wasAnimal: 'Bramble', wasVolumeMl: null },
  ],
  [
    'corrected twice: the latest stands',
    [correction('wrong-volume', { volumeMl: 9 }), correction('wrong-volume', { volumeMl: 10.1 })],
    { volumeMl: 10.1, wasVolumeMl: 11.3 },
  ],
])('%s', (_name, corrections, stands) => {
  expect(standingOf(treatment('t', { ...row, corrections }))).toMatchObject(stands);
});
