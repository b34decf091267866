import type { Figure } from '../medicine/figure.ts';
import { packetsOf } from '../medicine/formulary.ts';
import type { Medicine } from '../medicine/medicine.ts';
import { Liquid, Packet, type Presentation } from '../medicine/presentation.ts';
import { type NamedVolume, namedMl } from '../medicine/printed.ts';
import { JUG_LIFE_GUARD, LABEL_LIQUID } from './common.ts';
import { type CannotKeep, type EnteredBy, enteredSource, keptAs } from './entered.ts';

/** A packet as its label is read off: what the label does not print is `null`. */
export interface EnteredPacket {
  readonly form: 'powder';
  readonly grossGrams: number;
  readonly activeGrams: number;
  readonly madeUpTo: NamedVolume;
  /** The strength printed for the mix. */
  readonly printedMgPerMl: number | null;
  readonly jugLifeHours: number | null;
}

/** A ready liquid as its label is read off: its strength in one unit, or in both. */
export interface EnteredLiquid {
  readonly form: 'liquid';
  readonly mgPerMl: number | null;
  readonly percent: number | null;
  readonly bottleMl: number;
  readonly openLifeDays: number | null;
}

/** A packet or a bottle as its label is read off. */
export type EnteredPresentation = EnteredPacket | EnteredLiquid;

/** What a gram of a powder adds to its water where nothing was read of this one. */
const ANY_POWDER: Packet['volumePerGram'] = {
  value: 0.75,
  low: 0.5,
  high: 1,
  evidence: 'own-guard',
  source: 'Set by this project, wide on purpose: nothing was read of what this powder adds to its water',
};
/** How well the mass of active is known where the label states no tolerance. */
const LABEL_MASS: Figure = {
  ...LABEL_LIQUID.strengthUncertainty,
  source: 'Labelled mass taken as right within 5 %, rectangular; the label states no tolerance',
};

/** The presentation a person entered, under an id of its own, or why it cannot be kept. */
export function presentationFrom(
  medicine: Medicine,
  entered: EnteredPresentation,
  id: string,
  who: EnteredBy,
): Presentation | CannotKeep {
  const source = enteredSource(who, 'label');
  const figure = (value: number): Figure => ({ value, evidence: 'entered', source });
  if (entered.form === 'powder') {
    const [sibling] = packetsOf(medicine);
    return keptAs(Packet, {
      form: 'powder',
      id,
      grossGrams: figure(entered.grossGrams),
      activeGrams: figure(entered.activeGrams),
      // The same powder in another packet takes up the same room.
      volumePerGram: sibling?.volumePerGram ?? ANY_POWDER,
      madeUpToMl: { ...figure(namedMl(entered.madeUpTo)), named: entered.madeUpTo },
      ...(entered.printedMgPerMl === null ? {} : { printedMgPerMl: entered.printedMgPerMl }),
      activeUncertainty: sibling?.activeUncertainty ?? LABEL_MASS,
      jugLifeHours: entered.jugLifeHours === null ? JUG_LIFE_GUARD : figure(entered.jugLifeHours),
    });
  }
  const { mgPerMl, percent, bottleMl, openLifeDays } = entered;
  return keptAs(Liquid, {
    ...LABEL_LIQUID,
    id,
    strength: {
      ...figure(mgPerMl ?? 10 * (percent ?? 0)),
      ...(percent === null ? {} : { percent }),
    },
    bottlesMl: [bottleMl],
    openLifeDays: openLifeDays === null ? LABEL_LIQUID.openLifeDays : figure(openLifeDays),
  });
}

/** Whether a presentation is among others already: a packet by its masses and volume, a bottle by its strength and size. */
export function hasPresentation(there: readonly Presentation[], entered: Presentation): boolean {
  return there.some((each) => {
    if (each.form === 'powder')
      return (
        entered.form === 'powder' &&
        each.grossGrams.value === entered.grossGrams.value &&
        each.activeGrams.value === entered.activeGrams.value &&
        Math.round(each.madeUpToMl.value) === Math.round(entered.madeUpToMl.value)
      );
    return (
      entered.form === 'liquid' &&
      each.strength.value === entered.strength.value &&
      entered.bottlesMl.every((ml) => each.bottlesMl.includes(ml))
    );
  });
}
