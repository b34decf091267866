import { expect, test } from 'vitest';
import { acceptedLines, correctionLines, recordLines } from '../../kiosk/daybook/record-lines.ts';
import { regimenLines } from '../../kiosk/shed/regimen-lines.ts';
import { enWhole as en } from '../../kiosk/words/en-whole.ts';
import { Show } from '../../kiosk/words/show.ts';
import { BASE, REGIMENS, treatment } from './preview/base-state.ts';

const show = new Show({
  unit: 'kg',
  division: 100,
  benchDivision: 1,
  locale: 'en-GB',
  nowMs: Date.parse(BASE.now),
});

function line(label: string, extra: Parameters<typeof treatment>[1] = {}): string | undefined {
  return recordLines(treatment('t', extra), en, show).find((each) => each.label === label)?.value;
}

test('a record shows the measured volume and beside it the exact one', () => {
  expect(line('Volume')).toBe('6 mL (exactly 5.971 mL)');
});

test('a record shows weight with its doubt at k = 2', () => {
  expect(line('Weight')).toBe('24.6 kg ± 0.2 kg');
});

test('a record names every draw where there was more than one', () => {
  expect(line('Syringe', { draws: 2, marksMl: [5.8, 5.7], volumeMl: 11.5 })).toBe(
    '6 mL syringe, 5.8 mL + 5.7 mL',
  );
});

test('a clear time that is not known is never a date', () => {
  expect(line('Milk clear')).toBe('not known: ask the vet');
  expect(line('Milk clear', { milkClear: { kind: 'not-for-people' } })).toBe('not for people');
});

test('clear times written under an untrusted clock say that they are provisional', () => {
  expect(line('Meat clear', { provisional: true })).toContain('provisional');
});

test('accepted cautions and corrections stand beside the record, none of them lost', () => {
  const corrected = BASE.dayBook.find(({ id }) => id === 't4');
  if (corrected === undefined) throw new Error('no such row');
  expect(acceptedLines(corrected, en, show).map(({ value }) => value)).toEqual([
    'Accepted: In milk: no safe time known',
  ]);
  expect(correctionLines(corrected, en, show).map(({ value }) => value)).toEqual(['It was 417, Sam']);
  expect(acceptedLines(treatment('t'), en, show)).toEqual([]);
  expect(correctionLines(treatment('t'), en, show)).toEqual([]);
});

test('every figure of a regimen comes with how well it is known and from where', () => {
  for (const regimen of REGIMENS) {
    const lines = regimenLines(regimen, en, show);
    expect(lines).toHaveLength(regimen.figures.length + 1 + regimen.notes.length);
    expect(lines.every(({ evidence }) => evidence.length > 3)).toBe(true);
    // The one line without a source is the first note, on whose word the rule is.
    const sourceless = lines.filter(({ text }) => text.length < 8).map(({ id }) => id);
    expect(sourceless).toEqual(['note-0']);
  }
});

test('a figure that is not known says so and never looks like zero', () => {
  const shown = (regimen: number): (string | undefined)[] => {
    const found = REGIMENS[regimen];
    if (found === undefined) throw new Error('no such regimen');
    return regimenLines(found, en, show).flatMap(({ id, value }) => (id.startsWith('note') ? [] : [value]));
  };
  expect(shown(0)).toEqual(['12 mg/kg', '18 mg/kg', 'not known', '14 days', '4 days', 'not known']);
  expect(shown(1)).toEqual(['8 mg/kg', '12 mg/kg', 'not known', '14 days', '3 days', 'never']);
});
