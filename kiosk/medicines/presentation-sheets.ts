import { JUG_LIFE_GUARD, LABEL_LIQUID } from '../../core/formulary/common.ts';
import type {
  EnteredLiquid,
  EnteredPacket,
  EnteredPresentation,
} from '../../core/formulary/entered-presentation.ts';
import { activeTooHeavy, mixDisagrees, strengthsDisagree } from '../../core/medicine/contradictions.ts';
import { namedMl } from '../../core/medicine/printed.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';
import {
  type Contradiction,
  chosen,
  type Draft,
  inUnit,
  keyed,
  keyedIn,
  type Question,
  type Sheet,
} from './sheet.ts';

const VOLUMES = ['mL', 'L', 'US quart', 'US gallon', 'US fl oz'] as const;
const HOURS = { hours: 1, days: 24 };
const ML = { mL: 1, L: 1000 };

/** The questions for a packet of powder. */
export function packetSheet(words: Words, show: Show): Sheet<EnteredPresentation> {
  const { ask, label, instead, unit } = words.medicines;
  const grams = {
    kind: 'key',
    decimal: true,
    units: [{ id: 'g', name: 'g', most: 10_000 }],
    instead: [],
  } as const;

  function packet(draft: Draft): EnteredPacket | null {
    const gross = keyed(draft, 'gross');
    const active = keyed(draft, 'active');
    const unit = chosen(draft, 'volume-unit', VOLUMES);
    const volume = keyed(draft, 'volume');
    if (gross === null || active === null || unit === null || volume === null) return null;
    return {
      form: 'powder',
      grossGrams: gross.count,
      activeGrams: active.count,
      madeUpTo: { amount: volume.count, unit },
      printedMgPerMl: keyed(draft, 'mix')?.count ?? null,
      jugLifeHours: inUnit(draft, 'jug-life', HOURS),
    };
  }

  return {
    questions(draft) {
      const volume = chosen(draft, 'volume-unit', VOLUMES) ?? 'mL';
      return [
        { id: 'gross', label: label.gross, title: ask.gross, ask: grams },
        { id: 'active', label: label.active, title: ask.active, ask: grams },
        {
          id: 'volume-unit',
          label: label.volumeUnit,
          title: ask.volumeUnit,
          quiet: true,
          ask: { kind: 'choose', choices: VOLUMES.map((id) => ({ id, name: unit[id] })) },
        },
        {
          id: 'volume',
          label: label.volume,
          title: ask.volume(unit[volume]),
          ask: {
            kind: 'key',
            decimal: true,
            units: [{ id: volume, name: unit[volume], most: 100_000 }],
            instead: [],
          },
        },
        {
          id: 'mix',
          label: label.mix,
          title: ask.mix,
          ask: {
            kind: 'key',
            decimal: true,
            units: [{ id: 'mg/mL', name: 'mg/mL', most: 2000 }],
            instead: [{ id: 'none', name: instead.notPrinted }],
          },
        },
        life(
          words,
          { id: 'jug-life', label: label.jugLife, title: ask.jugLife },
          ['hours', 'days'],
          words.shed.hours(show.number(JUG_LIFE_GUARD.value)),
        ),
      ];
    },
    contradiction(draft): Contradiction | null {
      const gross = keyed(draft, 'gross')?.count;
      const active = keyed(draft, 'active')?.count;
      if (gross !== undefined && active !== undefined) {
        const says = activeTooHeavy(active, gross);
        if (says !== null) return { between: ['gross', 'active'], says };
      }
      const entered = packet(draft);
      if (entered === null || entered.printedMgPerMl === null) return null;
      const says = mixDisagrees(entered.activeGrams, namedMl(entered.madeUpTo), entered.printedMgPerMl);
      return says === null ? null : { between: ['active', 'volume', 'mix'], says };
    },
    warning: () => null,
    entered: (draft) =>
      draft['mix'] === undefined || draft['jug-life'] === undefined ? null : packet(draft),
  };
}

/** The questions for a bottle of ready liquid. */
export function bottleSheet(words: Words, show: Show): Sheet<EnteredPresentation> {
  const { ask, label, instead } = words.medicines;
  const units = [
    { id: 'mg/mL', name: 'mg/mL', most: 2000 },
    { id: '%', name: '%', most: 100 },
  ] as const;

  function strengths(draft: Draft): Pick<EnteredLiquid, 'mgPerMl' | 'percent'> {
    const printed = ['strength', 'strength-twin'];
    return { mgPerMl: keyedIn(draft, printed, 'mg/mL'), percent: keyedIn(draft, printed, '%') };
  }

  return {
    questions(draft) {
      const other = units.find(({ id }) => id !== (keyed(draft, 'strength')?.unit ?? 'mg/mL')) ?? units[1];
      return [
        {
          id: 'strength',
          label: label.strength,
          title: ask.strength,
          ask: { kind: 'key', decimal: true, units, instead: [] },
        },
        {
          id: 'strength-twin',
          label: label.twin,
          title: ask.twin(other.name),
          ask: {
            kind: 'key',
            decimal: true,
            units: [other],
            instead: [{ id: 'none', name: instead.notPrinted }],
          },
        },
        {
          id: 'size',
          label: label.size,
          title: ask.size,
          ask: {
            kind: 'key',
            decimal: true,
            units: [
              { id: 'mL', name: 'mL', most: 20_000 },
              { id: 'L', name: words.medicines.unit.L, most: 20 },
            ],
            instead: [],
          },
        },
        life(
          words,
          { id: 'open-life', label: label.openLife, title: ask.openLife },
          ['days'],
          words.shed.days(show.number(LABEL_LIQUID.openLifeDays.value)),
        ),
      ];
    },
    contradiction(draft): Contradiction | null {
      const { mgPerMl, percent } = strengths(draft);
      if (mgPerMl === null || percent === null) return null;
      const says = strengthsDisagree(mgPerMl, percent);
      return says === null ? null : { between: ['strength', 'strength-twin'], says };
    },
    warning: () => null,
    entered(draft) {
      const size = inUnit(draft, 'size', ML);
      const { mgPerMl, percent } = strengths(draft);
      const asked = draft['strength-twin'] !== undefined && draft['open-life'] !== undefined;
      if (!asked || size === null || (mgPerMl === null && percent === null)) return null;
      return {
        form: 'liquid',
        mgPerMl,
        percent,
        bottleMl: size,
        openLifeDays: keyed(draft, 'open-life')?.count ?? null,
      };
    },
  };
}

/** How long something stays good; where the label does not say, our own guard counts. */
function life(
  words: Words,
  question: Pick<Question, 'id' | 'label' | 'title'>,
  units: readonly ('hours' | 'days')[],
  guard: string,
): Question {
  return {
    ...question,
    ask: {
      kind: 'key',
      decimal: false,
      units: units.map((unit) => ({ id: unit, name: words.medicines.unit[unit], most: 365 })),
      instead: [{ id: 'none', name: words.medicines.guard(guard), shown: words.medicines.guarded(guard) }],
    },
  };
}
