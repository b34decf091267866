import { gainBetween, trendOf } from '../../core/growth/gain.ts';
import type { JudgedWeighing } from '../../core/growth/weighing.ts';
import type { HerdAnimal } from '../../core/herd/herd-animal.ts';
import { DAY_MS } from '../../core/moment.ts';
import type { TreatAdvice } from '../../core/worms/who-to-treat.ts';
import type { AdviceView, AnimalPage, GrowthView, WhomView } from '../../shared/animal-page.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import type { Memory } from '../barn/memory.ts';
import { adviceNow, type HerdAdvice } from '../herd/advice-now.ts';
import { weighingsOf } from '../herd/history.ts';
import { eggsNow } from '../worms/eggs-now.ts';
import { animalView } from './animal-view.ts';
import { dayBookView } from './dose-view.ts';
import { eggCountsOf, herdMeanView } from './egg-view.ts';
import { rfc3339 } from './times.ts';

/** How much of an animal's history its page shows. */
const SHOWN = { weighings: 60, scores: 12, notes: 12, treatments: 12, eggCounts: 12 } as const;

/** Everything the page of one animal shows, whether it is on the farm or has left; `null` for an unknown id. */
export function animalPage(barn: BarnContext, animalId: string): AnimalPage | null {
  const { memory, store } = barn;
  const animal = [...memory.animals, ...memory.gone].find(({ id }) => id === animalId);
  if (animal === undefined) return null;
  const herd = adviceNow(barn);
  const advice = herd.byAnimal.get(animalId);
  const judged = weighingsOf(animal, store);
  const names = [...memory.animals, ...memory.gone];
  return {
    animal: animalView(animal, herd, memory),
    life: animal.life.kind,
    leftAt: animal.life.kind === 'present' ? null : rfc3339(animal.life.atMs),
    formerTags: animal.formerTags.map(({ number }) => number),
    mergedInto: mergedInto(animal, memory),
    merged: memory.gone.flatMap(({ id, name, life }) =>
      life.kind === 'merged' && life.intoId === animalId
        ? [{ id, name, at: rfc3339(life.atMs), by: life.by }]
        : [],
    ),
    weighings: judged
      .slice(-SHOWN.weighings)
      .reverse()
      .map(({ weighing, doubt, said }) => ({
        id: weighing.id,
        said,
        hoursOffFeed: weighing.hoursOffFeed,
        grams: weighing.mass.value,
        uncertaintyGrams: weighing.uncertainty?.value ?? null,
        at: rfc3339(weighing.atMs),
        method: weighing.method,
        doubt,
      })),
    growth: growthOf(judged, herd.mob.get(animalId)),
    scores: store.scores
      .newest(animalId, SHOWN.scores)
      .map(({ atMs, by, eyelid, body, soiling, jaw, coat }) => ({
        at: rfc3339(atMs),
        by,
        eyelid,
        body,
        soiling,
        jaw,
        coat,
      })),
    notes: store.notes
      .newest(animalId, SHOWN.notes)
      .map(({ atMs, by, note }) => ({ at: rfc3339(atMs), by, note })),
    treatments: dayBookView(store.dayBook.ofAnimal(animalId, SHOWN.treatments), names, memory.formulary),
    eggCounts: eggCountsOf(animalId, memory, SHOWN.eggCounts),
    advice: advice === undefined ? null : adviceView(advice),
  };
}

function mergedInto({ life }: HerdAnimal, { animals }: Memory): AnimalPage['mergedInto'] {
  const into = life.kind === 'merged' ? animals.find(({ id }) => id === life.intoId) : undefined;
  return into === undefined ? null : { id: into.id, name: into.name };
}

function growthOf(judged: readonly JudgedWeighing[], mob: ReturnType<HerdAdvice['mob']['get']>): GrowthView {
  const believed = judged.flatMap(({ weighing, doubt }) => (doubt === null ? [weighing] : []));
  const last = believed.at(-1);
  const before = believed.findLast(({ atMs }) => last !== undefined && last.atMs - atMs >= DAY_MS);
  const lastGain = last === undefined || before === undefined ? null : gainBetween(before, last);
  const trend = trendOf(judged);
  return {
    lastGain: lastGain?.value ?? null,
    trend:
      trend === null
        ? null
        : {
            gain: trend.gain.value,
            low: trend.limits.lower,
            high: trend.limits.upper,
            direction: trend.direction,
            used: trend.used,
            doubted: trend.doubted,
            unlikeFeed: trend.unlikeFeed,
          },
    mob:
      mob === undefined
        ? null
        : {
            own: mob.own.value,
            mean: mob.against.mobMean,
            others: mob.against.others,
            standing: mob.against.standing,
          },
  };
}

function adviceView({ animalId, advice, reasons, lookAgainAtMs }: TreatAdvice): AdviceView {
  return {
    animal: animalId,
    advice,
    reasons: reasons.map((reason) => ({ ...reason })),
    lookAgainAt: rfc3339(lookAgainAtMs),
  };
}

const ORDER = { treat: 0, 'look-again': 1, leave: 2 } as const;

/** Whom to treat today: the scored animals, those to treat first. */
export function whomView(barn: BarnContext): WhomView {
  const { memory } = barn;
  const { byAnimal, scored, refugia } = adviceNow(barn);
  const { wallMs } = barn.clock.now();
  const rows = memory.animals.flatMap(({ id }) => {
    const advice = scored.has(id) ? byAnimal.get(id) : undefined;
    return advice === undefined ? [] : [adviceView(advice)];
  });
  return {
    season: memory.settings.wormSeason,
    eggsPerGram: eggsNow(memory, wallMs),
    eggsEntered: memory.settings.eggsPerGram !== null,
    counted: herdMeanView(memory, wallMs),
    rows: rows.sort((a, b) => ORDER[a.advice] - ORDER[b.advice]),
    left: refugia === null ? null : { ...refugia, couldLeave: [...refugia.couldLeave] },
    notScored: memory.animals.length - scored.size,
  };
}
