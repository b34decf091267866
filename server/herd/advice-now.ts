import type { EarlierDose } from '../../core/dosing/repeats.ts';
import { type DailyGain, gainBetween } from '../../core/growth/gain.ts';
import { type AgainstMob, eachAgainstMob } from '../../core/growth/mob.ts';
import type { Weighing } from '../../core/growth/weighing.ts';
import type { HerdAnimal } from '../../core/herd/herd-animal.ts';
import type { Formulary } from '../../core/medicine/formulary.ts';
import { isWormer } from '../../core/medicine/medicine.ts';
import { DAY_MS } from '../../core/moment.ts';
import { rulesInForce } from '../../core/worms/farm-rules.ts';
import { type Refugia, refugiaOf } from '../../core/worms/refugia.ts';
import { latestScores } from '../../core/worms/scores.ts';
import type { TreatRules } from '../../core/worms/treat-rules.ts';
import { adviseTreatment, type TreatAdvice } from '../../core/worms/who-to-treat.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import type { Memory } from '../barn/memory.ts';
import type { Store } from '../store/store.ts';
import { eggsNow } from '../worms/eggs-now.ts';
import { weighingsOf } from './history.ts';

/** Whom to treat, for the whole herd. */
export interface HerdAdvice {
  readonly byAnimal: ReadonlyMap<string, TreatAdvice>;
  readonly mob: ReadonlyMap<string, { readonly own: DailyGain; readonly against: AgainstMob }>;
  /** Animals with at least one score that still counts. */
  readonly scored: ReadonlySet<string>;
  /** Of those scored. */
  readonly refugia: Refugia | null;
}

/** Gains are held against each other over at most this many days, from weights at least a week apart (our own guard). */
const GAIN_DAYS = 42;
const LEAST_DAYS = 7;
/** Time alone changes advice slowly: it is looked at anew this often. */
const ANEW_MS = 10 * 60_000;

interface Kept {
  readonly of: readonly unknown[];
  readonly advice: HerdAdvice;
}
const kept = new WeakMap<BarnContext, Kept>();

/** Whom to treat now; worked out anew only where something it rests on has changed. */
export function adviceNow(barn: BarnContext): HerdAdvice {
  const { memory } = barn;
  const { wallMs } = barn.clock.now();
  const { wormSeason, eggsPerGram } = memory.settings;
  const slice = Math.floor(wallMs / ANEW_MS);
  const of = [
    memory.animals,
    memory.earlier,
    memory.formulary,
    memory.scores,
    memory.wormRules,
    memory.eggCounts,
    wormSeason,
    eggsPerGram,
    slice,
  ];
  const before = kept.get(barn);
  if (before?.of.every((part, i) => part === of[i]) === true) return before.advice;
  const advice = adviceFor(barn, wallMs);
  kept.set(barn, { of, advice });
  return advice;
}

function adviceFor({ memory, store }: BarnContext, wallMs: number): HerdAdvice {
  const { settings, animals, earlier, scores } = memory;
  const rules = rulesInForce(memory.wormRules);
  const since = wallMs - rules.scoresLastDays.value * DAY_MS;
  const mob = gains(memory, rules, (animal) => gainOf(believedOf(animal, store), wallMs));
  const lastDose = lastWormed(earlier, memory.formulary);
  const byAnimal = new Map<string, TreatAdvice>();
  const scored = new Set<string>();
  for (const animal of animals) {
    const latest = latestScores(scores.get(animal.id) ?? [], since);
    if (latest !== null) scored.add(animal.id);
    const gain = mob.get(animal.id)?.against ?? null;
    const signs = { animal, scores: latest, gain, lastDoseAtMs: lastDose.get(animal.id) ?? null };
    byAnimal.set(animal.id, adviseTreatment(signs, rules, settings.wormSeason, wallMs));
  }
  const judged = [...byAnimal.values()].filter(({ animalId }) => scored.has(animalId));
  return { byAnimal, mob, scored, refugia: refugiaOf(judged, eggsNow(memory, wallMs)) };
}

/** By animal, when it last had a wormer: a vitamin brings no lid its colour back. */
function lastWormed(earlier: readonly EarlierDose[], formulary: Formulary): Map<string, number> {
  const wormers = new Set(formulary.filter(({ group }) => isWormer(group)).map(({ id }) => id));
  const last = new Map<string, number>();
  for (const { animalId, medicineId, givenAtMs } of earlier) {
    if (wormers.has(medicineId)) last.set(animalId, Math.max(givenAtMs, last.get(animalId) ?? givenAtMs));
  }
  return last;
}

/** The weights of an animal that are believed, read once: an animal is replaced whenever one is added or corrected. */
const believed = new WeakMap<HerdAnimal, readonly Weighing[]>();

function believedOf(animal: HerdAnimal, store: Store): readonly Weighing[] {
  const known = believed.get(animal);
  if (known !== undefined) return known;
  const read = weighingsOf(animal, store).flatMap(({ doubt, weighing }) =>
    doubt === null ? [weighing] : [],
  );
  believed.set(animal, read);
  return read;
}

function gainOf(weighings: readonly Weighing[], wallMs: number): DailyGain | null {
  const first = weighings.find(({ atMs }) => atMs >= wallMs - GAIN_DAYS * DAY_MS);
  const last = weighings.at(-1);
  if (first === undefined || last === undefined) return null;
  return last.atMs - first.atMs < LEAST_DAYS * DAY_MS ? null : gainBetween(first, last);
}

/** Each animal's gain against those of its species and class. */
function gains(
  { animals, settings }: Memory,
  rules: TreatRules,
  gainOf: (animal: HerdAnimal) => DailyGain | null,
): Map<string, { own: DailyGain; against: AgainstMob }> {
  const mobs = new Map<string, { animal: HerdAnimal; own: DailyGain }[]>();
  for (const animal of animals) {
    const own = gainOf(animal);
    if (own === null) continue;
    const kind = `${animal.species} ${animal.class}`;
    const mob = mobs.get(kind) ?? [];
    mob.push({ animal, own });
    mobs.set(kind, mob);
  }
  const found = new Map<string, { own: DailyGain; against: AgainstMob }>();
  for (const mob of mobs.values()) {
    const { class: its } = mob[0]?.animal ?? { class: 'female' };
    const share = rules.byClass[settings.wormSeason][its].gainShare.value;
    const held = eachAgainstMob(
      mob.map(({ own }) => own),
      share,
    );
    mob.forEach(({ animal, own }, i) => {
      const against = held[i] ?? null;
      if (against !== null) found.set(animal.id, { own, against });
    });
  }
  return found;
}
