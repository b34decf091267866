import { hasRival, type Jug } from '../../core/mixing/jug.ts';
import { type BenchProof, proveOnBench } from '../../core/mixing/prove.ts';
import type { Moment } from '../../core/moment.ts';
import type { Phase } from '../../core/round/state.ts';
import type { JugProofView, RoundView } from '../../shared/round.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import { onBench } from '../barn/run-round.ts';

/** How the jug in hand may be proved now, as the wire carries it. */
export function proofView(
  barn: BarnContext,
  { jugId, visit }: Extract<Phase, { step: 'prove-jug' }>,
  now: Moment,
): Omit<Extract<RoundView, { step: 'prove-jug' }>, 'step' | 'unanswered'> {
  const { jugs, bench } = barn.memory;
  const trusted = barn.clock.isTrusted();
  const jug = jugs.find((candidate) => candidate.id === jugId);
  const rival = jug !== undefined && hasRival(jug, jugs, now.wallMs, trusted);
  const there = onBench(barn);
  const proof =
    jug === undefined || typeof there === 'string'
      ? null
      : proveOnBench(jug, jugs, there, now.wallMs, trusted);
  return {
    jugId,
    rival,
    animal: visit?.who?.animalId ?? null,
    bench: {
      verdict: verdictOf(jug, there, proof),
      nowGrams: bench.live?.value ?? null,
      expectedGrams: proof !== null && 'expected' in proof ? proof.expected.mass.value : null,
      otherNumber: proof !== null && 'other' in proof ? proof.other.number : null,
    },
  };
}

function verdictOf(
  jug: Jug | undefined,
  there: ReturnType<typeof onBench>,
  proof: BenchProof | null,
): JugProofView['verdict'] {
  if (jug === undefined || jug.weighed === null) return 'weight-unknown';
  if (typeof there === 'string') return there;
  return proof?.verdict ?? 'weight-unknown';
}
