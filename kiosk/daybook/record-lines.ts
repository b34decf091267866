import { DAY_MS } from '../../core/moment.ts';
import type { ClearView, TreatmentView } from '../../shared/dose.ts';
import { monthOf } from '../jug/expiry-month.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

/** One fact of a record: what it is, and the fact as shown. */
export interface RecordLine {
  readonly label: string;
  readonly value: string;
}

/** The whole of a treatment as lines, in the order in which a keeper or inspector asks for them. */
export function recordLines(treatment: TreatmentView, words: Words, show: Show): RecordLine[] {
  const { dayBook } = words;
  const { group } = treatment;
  const mark = (ml: number): string => show.dose(ml, treatment.syringeGraduationMl);
  const { value, low, high } = treatment.deliveredMgPerKg;
  const clear = (at: ClearView): string => {
    if (at.kind !== 'at') return words.clear[at.kind];
    const provisional = treatment.provisional ? `, ${words.platform.provisional}` : '';
    return `${show.day(at.at)} ${show.time(at.at)}${provisional}`;
  };
  const draws = treatment.draws > 1 ? `, ${treatment.marksMl.map(mark).join(words.platform.and)}` : '';
  const left = treatment.leftMl === null ? '' : dayBook.left(mark(treatment.leftMl));
  const late = treatment.late ? `, ${dayBook.late}` : '';
  const readBack = treatment.readBack ? `, ${dayBook.readBack}` : '';
  return [
    { label: dayBook.animal, value: `${treatment.animalName}, ${words.species[treatment.species]}` },
    {
      label: dayBook.weight,
      value: `${show.weight(treatment.weightGrams)} ${dayBook.doubt(show.weight(2 * treatment.weightUncertaintyGrams))}${group === null ? '' : `, ${dayBook.lastOne}`}`,
    },
    { label: dayBook.medicine, value: `${words.shipped(treatment.active)}, ${dayBook.routeOral}` },
    {
      label: dayBook.jug,
      value: `${words.platform.jugNumber(treatment.jugNumber)}, ${show.strength(treatment.strengthMgPerMl)}`,
    },
    {
      label: dayBook.proof,
      value: treatment.proof === null ? dayBook.proofNotKept : dayBook.proofHow[treatment.proof],
    },
    {
      label: dayBook.volume,
      value: `${mark(treatment.volumeMl)} (${dayBook.exact(show.exact(treatment.exactVolumeMl))})`,
    },
    ...(group === null
      ? []
      : [
          {
            label: dayBook.method,
            value: dayBook.groupOf(
              group.members,
              group.heaviestName,
              show.weight(group.heaviestGrams),
              show.day(group.weighedAt),
            ),
          },
        ]),
    { label: dayBook.syringe, value: `${words.shipped(treatment.syringeName)}${draws}` },
    {
      label: dayBook.delivered,
      value: words.platform.interval(show.number(value, 1), show.number(low, 1), show.number(high, 1)),
    },
    {
      label: dayBook.given,
      value: `${show.day(treatment.givenAt)} ${show.time(treatment.givenAt)}${late}${readBack}`,
    },
    { label: dayBook.outcome, value: `${words.platform.outcome[treatment.outcome]}${left}` },
    { label: dayBook.by, value: treatment.by },
    { label: dayBook.onWord, value: dayBook.direction[treatment.direction] },
    ...stockLines(treatment, words),
    { label: dayBook.meat, value: clear(treatment.meatClear) },
    { label: dayBook.milk, value: clear(treatment.milkClear) },
  ];
}

/** The lot and month of the medicine, where they are told. */
function stockLines({ stock }: TreatmentView, words: Words): RecordLine[] {
  if (stock === null) return [];
  // A printed month is over when the next one begins.
  const last = monthOf(new Date(new Date(stock.expiresAt).getTime() - DAY_MS).toISOString());
  const month = `${words.bottle.month(last.month, words.locale)} ${last.year}`;
  const lot = stock.lot ?? words.stock.noLot;
  return [{ label: words.dayBook.lot, value: `${lot}, ${words.stock.expires(month)}` }];
}

/** The corrections of a treatment, oldest first. */
export function correctionLines(treatment: TreatmentView, words: Words, show: Show): RecordLine[] {
  return treatment.corrections.map(({ kind, animalName, volumeMl, at, by }) => ({
    label: show.when(at),
    value: `${words.dayBook.correction[kind](
      animalName ?? '',
      volumeMl === null ? '' : show.dose(volumeMl, treatment.syringeGraduationMl),
    )}, ${by}`,
  }));
}

/** The asks that were accepted for a treatment. */
export function acceptedLines(treatment: TreatmentView, words: Words, show: Show): RecordLine[] {
  return treatment.acceptedCautions.map(({ code, values }) => ({
    label: show.time(treatment.weighedAt),
    value: words.dayBook.accepted(words.cautions[code](values, show).title),
  }));
}
