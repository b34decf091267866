import { z } from 'zod';
import { KEEPINGS, TECHNIQUES } from './care.ts';
import { Figure, isKnown, Line } from './figure.ts';
import { Presentation } from './presentation.ts';
import { sameDose } from './printed.ts';
import { Regimen } from './regimen.ts';
import { Watch } from './watch.ts';

/** The chemical groups; two medicines of one group are not two different remedies. */
export const Group = z.enum([
  'imidazothiazole',
  'benzimidazole',
  'macrocyclic-lactone',
  'vitamin',
  'organophosphate',
  'other',
]);
/** One of the chemical groups. */
export type Group = z.infer<typeof Group>;

/** Groups given against worms of the gut. An organophosphate may be a dip as well, so it is not one of them. */
const WORMERS: readonly Group[] = ['imidazothiazole', 'benzimidazole', 'macrocyclic-lactone'];

/** Whether the medicines of a group are given against worms. */
export function isWormer(group: Group): boolean {
  return WORMERS.includes(group);
}

/** Groups whose medicines may be for several doses a day: twice the dose of a drench within one has killed. */
const SEVERAL_A_DAY: readonly Group[] = ['vitamin', 'other'];
/** The shortest wait between two doses that a rule may state (our own guard). */
const SOONEST_DAYS = 1 / 24;

/** One active ingredient: its presentations, its rules and its hazards. Generic names only. */
export const Medicine = z
  .strictObject({
    id: z.string().min(1).max(64),
    /** Name on the screen. */
    name: z.string().min(1).max(40),
    /** Name of the active as it is logged; medicines of the same active are the same medicine to the cautions. */
    active: z.string().min(1).max(60),
    group: Group,
    presentations: z.array(Presentation),
    regimens: z.array(Regimen).min(1),
    /** What to do with jug or bottle before each draw. */
    agitate: z.strictObject({ how: z.enum(['swirl', 'shake']), line: Line }),
    /** How it is given, one line; the screen has its own words for what it can name. */
    technique: z.strictObject({ how: z.enum(TECHNIQUES), line: Line }),
    /** What the person handling it must know. */
    handling: z.array(Line).min(1),
    /** How it is kept, a line each; the screen has its own words for what it can name. */
    storage: z.array(z.strictObject({ keep: z.enum(KEEPINGS), line: Line })),
    /** Whether jug or bottle belongs in the refrigerator between rounds. */
    refrigerate: z.boolean(),
    /** Groups that may not have been given within so many days. */
    conflicts: z.array(z.strictObject({ group: Group, days: Figure })),
    /** What else may be due in the same visit: another medicine by its id. */
    extras: z.array(z.strictObject({ medicineId: z.string(), line: Line })),
    /** What to watch for afterwards; `null` where no source read gives signs and times. */
    watch: Watch.nullable(),
  })
  .check(({ value: medicine, issues }) => {
    const { presentations, regimens } = medicine;
    const refuse = (path: (string | number)[], message: string): void => {
      issues.push({ code: 'custom', path, message, input: medicine });
    };
    const ids = [...presentations, ...regimens].map(({ id }) => id);
    if (new Set(ids).size < ids.length) refuse([], 'two presentations or rules share an id');
    regimens.forEach(({ target, printed, presentationIds, repeatAfterDays }, i) => {
      if (repeatAfterDays.value < 1 && !SEVERAL_A_DAY.includes(medicine.group))
        refuse(
          ['regimens', i, 'repeatAfterDays'],
          'only what supports is given again within a day, never a drench',
        );
      if (repeatAfterDays.value < SOONEST_DAYS)
        refuse(['regimens', i, 'repeatAfterDays'], 'no rule is for more than one dose an hour');
      const known = (id: string) => presentations.find((presentation) => presentation.id === id);
      if (presentationIds?.some((id) => known(id) === undefined))
        refuse(['regimens', i, 'presentationIds'], 'no such presentation');
      printed.forEach((dose, j) => {
        const of = known(dose.presentationId);
        const path = ['regimens', i, 'printed', j];
        if (of === undefined) {
          refuse(path, 'no such presentation');
          return;
        }
        const strength =
          of.form === 'liquid' ? of.strength.value : (1000 * of.activeGrams.value) / of.madeUpToMl.value;
        if (isKnown(target) && !sameDose(dose, strength, target.value))
          refuse(path, 'the volume printed for a weight is not what rate and strength come to');
      });
    });
  });
/** One active ingredient with its presentations and rules. */
export type Medicine = z.infer<typeof Medicine>;
