import type { WeighingView } from '../../shared/animal-page.ts';

/** A weight on the chart, in the chart's own units. */
export interface Dot {
  readonly x: number;
  readonly y: number;
  /** Ends of the bar of 95 %, or both `y` where its doubt is not known. */
  readonly top: number;
  readonly bottom: number;
  readonly doubted: boolean;
}

/** What a chart of an animal's weights draws. */
export interface GrowthChart {
  readonly dots: readonly Dot[];
  /** The line through the believed weights, as points of an SVG polyline. */
  readonly line: string;
  /** Where a dose was given, along x. */
  readonly doses: readonly number[];
  /** The weights, in grams, of the lowest and the highest line. */
  readonly lowGrams: number;
  readonly highGrams: number;
  readonly fromMs: number;
  readonly toMs: number;
}

/** The area the chart is drawn in, in its own units. */
export interface ChartArea {
  readonly width: number;
  readonly height: number;
}

/** A bar reaches so many standard uncertainties either way. */
const COVER = 2;

/** Lays the weights and doses of an animal out; `null` where it has no weight. */
export function growthChart(
  weighings: readonly WeighingView[],
  givenAt: readonly string[],
  { width, height }: ChartArea,
): GrowthChart | null {
  if (weighings.length === 0) return null;
  const oldestFirst = [...weighings].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
  const times = oldestFirst.map(({ at }) => Date.parse(at));
  const fromMs = Math.min(...times);
  const toMs = Math.max(...times);
  // A doubted weight must not press the others flat: it is drawn at the edge it lies beyond.
  const believed = oldestFirst.filter(({ doubt }) => doubt === null);
  const ends = (believed.length > 0 ? believed : oldestFirst).flatMap(({ grams, uncertaintyGrams }) => {
    const reach = COVER * (uncertaintyGrams ?? 0);
    return [grams - reach, grams + reach];
  });
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  // One weight, or many alike, still wants some height to stand in.
  const margin = Math.max((high - low) * 0.08, high * 0.02);
  const [lowGrams, highGrams] = [low - margin, high + margin];
  const xOf = (ms: number): number =>
    toMs === fromMs ? width / 2 : ((ms - fromMs) / (toMs - fromMs)) * width;
  const yOf = (grams: number): number => {
    const share = (grams - lowGrams) / (highGrams - lowGrams);
    return height - Math.min(1, Math.max(0, share)) * height;
  };
  const dots = oldestFirst.map(({ at, grams, uncertaintyGrams, doubt }) => {
    const reach = COVER * (uncertaintyGrams ?? 0);
    return {
      x: xOf(Date.parse(at)),
      y: yOf(grams),
      top: yOf(grams + reach),
      bottom: yOf(grams - reach),
      doubted: doubt !== null,
    };
  });
  const within = givenAt.map((at) => Date.parse(at)).filter((ms) => ms >= fromMs && ms <= toMs);
  return {
    dots,
    line: dots
      .filter(({ doubted }) => !doubted)
      .map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`)
      .join(' '),
    doses: within.map(xOf),
    lowGrams,
    highGrams,
    fromMs,
    toMs,
  };
}
