import type { Packet } from '../medicine/presentation.ts';
import { type DilutionScore, type DilutionTask, scoreDilution } from './dilution-score.ts';
import { dilutionsFor } from './dilutions.ts';

/** What one dilution is preferred to another for. */
export type DilutionReason = 'measurable' | 'ceiling' | 'interval' | 'draws' | 'jugs' | 'printed' | 'own';

/** Widths of the interval this close, as shares of the target, are as good as each other. */
const AS_WIDE = 0.02;
/** Mean draws this close are as good as each other. */
const AS_MANY = 0.1;

/** A demand and those of some dilutions that meet it best. */
interface Sieve {
  readonly reason: DilutionReason;
  readonly best: (scores: readonly DilutionScore[], packet: Packet) => DilutionScore[];
}

function least(of: (score: DilutionScore, packet: Packet) => number, within = 0): Sieve['best'] {
  return (scores, packet) => {
    const bar = Math.min(...scores.map((score) => of(score, packet))) + within + 1e-9;
    return scores.filter((score) => of(score, packet) <= bar);
  };
}

/**
 * The demands in their order: every animal must be measurable; none past its ceiling; the widest interval narrow;
 * few draws; few jugs, since what is left of a mix is thrown away with its age; then what is printed, then the
 * packet's own volume.
 */
const SIEVES: readonly Sieve[] = [
  { reason: 'measurable', best: least(({ animals, measurable }) => animals - measurable) },
  { reason: 'ceiling', best: least(({ crossing }) => crossing) },
  { reason: 'interval', best: least(({ worst }) => worst ?? 0, AS_WIDE) },
  { reason: 'draws', best: least(({ draws }) => draws, AS_MANY) },
  { reason: 'jugs', best: least(({ jugs }) => jugs) },
  { reason: 'printed', best: least(({ dilution }) => (dilution.origin === 'printed' ? 0 : 1)) },
  {
    reason: 'own',
    best: least(({ dilution }, packet) =>
      Math.abs(Math.log(dilution.perPacket.value / packet.madeUpToMl.value)),
    ),
  },
];

function sieve(scores: readonly DilutionScore[], packet: Packet): DilutionScore | undefined {
  let left = [...scores];
  for (const { best } of SIEVES) if (left.length > 1) left = best(left, packet);
  return left[0];
}

/** Scores every dilution of a packet for a herd and its syringes, the one to recommend first, its runner-up next. */
export function scoreDilutions(task: DilutionTask): DilutionScore[] {
  let left = dilutionsFor(task.medicine.id, task.packet).map((dilution) => scoreDilution(task, dilution));
  const ranked: DilutionScore[] = [];
  for (let next = sieve(left, task.packet); next !== undefined; next = sieve(left, task.packet)) {
    const taken = next;
    ranked.push(taken);
    left = left.filter((score) => score !== taken);
  }
  return ranked;
}

/** What the better of two dilutions is preferred for: the first demand that tells them apart. */
export function reasonBetween(better: DilutionScore, other: DilutionScore, packet: Packet): DilutionReason {
  const telling = SIEVES.find(({ best }) => !best([better, other], packet).includes(other));
  return telling?.reason ?? 'own';
}
