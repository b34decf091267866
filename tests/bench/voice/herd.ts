import { type AnimalPhrases, animalPhrases, type Callable } from '../../../core/speech/animal-phrases.ts';

const NAMES = ['Thistle', 'Bramble', 'Juniper', 'Clover', 'Burdock', 'Sorrel', 'Nettle', 'Yarrow', 'Heather'];

/** Sixty animals with visual tags of two, three and four digits, some of them with names. */
export const BENCH_HERD: readonly Callable[] = Array.from({ length: 60 }, (_, i) => ({
  id: `animal-${i}`,
  name: NAMES[i] ?? tagOf(i),
  tag: null,
  visualTags: [tagOf(i)],
}));

function tagOf(i: number): string {
  if (i < 15) return String(11 + 6 * i);
  if (i < 45) return String(101 + ((137 * i) % 899));
  return String(1000 + ((1733 * i) % 9000));
}

/** How they are called. */
export const BENCH_CALLS: AnimalPhrases = animalPhrases(BENCH_HERD);
