import { REPEAT_GUARD } from '../../core/formulary/common.ts';
import { CEILING_OF_TARGET } from '../../core/medicine/ceiling.ts';
import { perKilogram } from '../../core/medicine/printed.ts';
import { massFrom, massIn } from '../../core/quantity/mass.ts';
import type { MedicineView } from '../../shared/own-medicine.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';
import { type Choice, type Draft, inUnit, keyed, type Question, type Unit } from './sheet.ts';

/** The species a rule may be for. */
export const SPECIES = ['goat', 'sheep', 'cattle'] as const;
/** On whose word a rule may stand. */
export const USES = ['label', 'extra-label'] as const;
/** How a dose may be given. */
export const ROUTES = ['oral drench', 'under the skin', 'into the muscle', 'as the vet directs'] as const;
/** Which females a rule may leave out for their milk. */
export const MILKERS = ['all-may', 'not-in-milk', 'not-dairy'] as const;

/** What one of each unit of a rate is in mg/kg. */
export const IN_MG_PER_KG = { 'mg/kg': 1, 'mg/lb': perKilogram(1) };
/** What one of each unit of a weight is in kilograms. */
export const IN_KG = { kg: 1, lb: massIn(massFrom(1, 'lb'), 'kg') };
/** Days in each unit; a month is the longest, so that what keeps the young out is never too short. */
export const IN_DAYS = { days: 1, weeks: 7, months: 31 };

const MOST = { 'mg/kg': 1000, 'mg/lb': 450, kg: 900, lb: 2000, hours: 999, days: 365, weeks: 52, months: 36 };

/** The questions for a rule of one medicine, in the order a label answers them. */
export function ruleQuestions(
  draft: Draft,
  { presentations }: MedicineView,
  words: Words,
  show: Show,
): readonly Question[] {
  const { ask, label, instead, unit, guard, guarded } = words.medicines;
  const rates = [unitOf('mg/kg'), unitOf('mg/lb')];
  const twin = rates.filter(({ id }) => id !== (keyed(draft, 'target')?.unit ?? 'mg/kg'));
  const target = inUnit(draft, 'target', IN_MG_PER_KG);
  const ceiling = target === null ? null : show.rate(CEILING_OF_TARGET * target);
  const repeat = words.shed.days(show.number(REPEAT_GUARD.value));
  const sold = presentations.map(({ id, grossGrams, strengthMgPerMl }) => ({
    id,
    name:
      grossGrams === null ? show.strength(strengthMgPerMl) : words.medicines.packet(show.packet(grossGrams)),
  }));

  function unitOf(id: keyof typeof MOST): Unit {
    return { id, name: id in unit ? unit[id as keyof typeof unit] : id, most: MOST[id] };
  }
  const choose = (
    id: 'species' | 'use' | 'sold' | 'route' | 'milkers',
    choices: readonly Choice[],
  ): Question => ({
    id,
    label: label[id],
    title: ask[id],
    ask: { kind: 'choose', choices },
  });
  const rate = (id: 'target' | 'ceiling' | 'floor', not: readonly Choice[]): Question => ({
    id,
    label: label[id],
    title: ask[id],
    ask: { kind: 'key', decimal: true, units: rates, instead: not },
  });
  const span = (
    id: 'repeat' | 'meat' | 'milk' | 'min-age' | 'bred' | 'males',
    units: readonly (keyof typeof MOST)[],
    not: readonly Choice[],
    zero?: true,
  ): Question => ({
    id,
    label: label[id],
    title: ask[id],
    ask: {
      kind: 'key',
      decimal: false,
      units: units.map(unitOf),
      instead: not,
      ...(zero === undefined ? {} : { zero }),
    },
  });
  const none = (name: string, shown = name): Choice => ({ id: 'none', name, shown });
  const noTime = [
    { id: 'unknown', name: instead.unknown },
    { id: 'not-for-people', name: instead.never },
  ];

  return [
    choose('species', named(SPECIES, words.species)),
    choose('use', named(USES, words.medicines.use)),
    ...(sold.length > 1 ? [choose('sold', [{ id: 'all', name: instead.all }, ...sold])] : []),
    choose('route', named(ROUTES, words.medicines.route)),
    rate('target', []),
    {
      id: 'target-twin',
      label: label['target-twin'],
      title: ask.twin(twin[0]?.name ?? ''),
      ask: { kind: 'key', decimal: true, units: twin, instead: [none(instead.notPrinted)] },
    },
    rate('ceiling', [none(instead.notPrinted, ceiling === null ? instead.notPrinted : guarded(ceiling))]),
    rate('floor', [none(instead.notPrinted)]),
    span('repeat', ['days', 'weeks'], [none(guard(repeat), guarded(repeat))]),
    span('meat', ['hours', 'days'], noTime, true),
    span('milk', ['hours', 'days'], noTime, true),
    span('min-age', ['days', 'weeks', 'months'], [none(instead.noLimit)]),
    {
      id: 'min-weight',
      label: label['min-weight'],
      title: ask['min-weight'],
      ask: {
        kind: 'key',
        decimal: true,
        units: [unitOf('kg'), unitOf('lb')],
        instead: [none(instead.noLimit)],
      },
    },
    span('bred', ['days', 'weeks'], [none(instead.noLimit)]),
    ...(keyed(draft, 'bred') === null ? [] : [span('males', ['days', 'weeks'], [none(instead.same)])]),
    choose('milkers', named(MILKERS, words.medicines.milkers, words.medicines.milkersShort)),
  ];
}

function named<Id extends string>(
  ids: readonly Id[],
  names: Readonly<Record<Id, string>>,
  shown: Readonly<Record<Id, string>> = names,
): Choice[] {
  return ids.map((id) => ({ id, name: names[id], shown: shown[id] }));
}
