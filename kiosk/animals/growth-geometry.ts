import { ticks } from 'd3-array';
import { utcTicks } from 'd3-time';
import { type ExpectedBand, expectedBand } from '../../core/growth/expected.ts';
import { grams, type MassUnit, massFrom, massIn } from '../../core/quantity/mass.ts';
import type { AnimalPage, WeighingView } from '../../shared/animal-page.ts';

/** A weight on the chart, in the chart's own units. */
export interface Dot {
  readonly x: number;
  readonly y: number;
  /** Ends of the bar of 95 %, or both `y` where its doubt is not known. */
  readonly top: number;
  readonly bottom: number;
  readonly doubted: boolean;
}

/** A value or a day along an edge of the chart. */
export interface Tick {
  readonly at: number;
  readonly value: number;
}

/** What a chart of an animal's weights draws. */
export interface GrowthChart {
  /** Oldest first, one for each weight. */
  readonly dots: readonly Dot[];
  /** The line through the believed weights, as points of an SVG polyline. */
  readonly line: string;
  /** Round weights in the keeper's unit, and whole days, months or years. */
  readonly weightTicks: readonly Tick[];
  readonly dayTicks: readonly Tick[];
  /** Where it is expected, as points of an SVG polygon; `null` where nothing published fits. */
  readonly expected: { readonly band: ExpectedBand['band']; readonly points: string } | null;
  /** The place of a time along x. */
  readonly xOf: (ms: number) => number;
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

/** What is drawn, and in which unit of weight its edge counts. */
export interface ChartOf {
  readonly page: Pick<AnimalPage, 'weighings'> & { readonly animal: AnimalPage['animal'] };
  /** Other times that must lie on the chart, RFC 3339: those before the first weight are left out. */
  readonly also?: readonly string[];
  readonly unit: MassUnit;
}

/** A bar reaches so many standard uncertainties either way. */
const COVER = 2;
/** About so many round values stand along each edge: more could not be read at arm's length. */
const TICKS = 4;

/** Lays the weights of an animal out; `null` where it has none. */
export function growthChart(
  { page, also = [], unit }: ChartOf,
  { width, height }: ChartArea,
): GrowthChart | null {
  if (page.weighings.length === 0) return null;
  const oldestFirst = [...page.weighings].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
  const times = oldestFirst.map(({ at }) => Date.parse(at));
  const fromMs = Math.min(...times);
  const toMs = Math.max(...times, ...also.map((at) => Date.parse(at)));
  const expected = expectedOf(page.animal, oldestFirst, toMs);
  const [low, high] = endsOf(oldestFirst, expected);
  // One weight, or many alike, still wants some height to stand in.
  const margin = Math.max((high - low) * 0.08, high * 0.02);
  const [lowGrams, highGrams] = [low - margin, high + margin];
  const xOf = (ms: number): number =>
    toMs === fromMs ? width / 2 : ((ms - fromMs) / (toMs - fromMs)) * width;
  const yOf = (weight: number): number => {
    const share = (weight - lowGrams) / (highGrams - lowGrams);
    return height - Math.min(1, Math.max(0, share)) * height;
  };
  const point = (ms: number, weight: number): string => `${xOf(ms).toFixed(1)},${yOf(weight).toFixed(1)}`;
  const dots = oldestFirst.map(({ at, grams: weight, uncertaintyGrams, doubt }) => {
    const reach = COVER * (uncertaintyGrams ?? 0);
    return {
      x: xOf(Date.parse(at)),
      y: yOf(weight),
      top: yOf(weight + reach),
      bottom: yOf(weight - reach),
      doubted: doubt !== null,
    };
  });
  return {
    dots,
    line: dots
      .filter(({ doubted }) => !doubted)
      .map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`)
      .join(' '),
    weightTicks: ticks(massIn(grams(lowGrams), unit), massIn(grams(highGrams), unit), TICKS).map((value) => ({
      value,
      at: yOf(massFrom(value, unit).value),
    })),
    dayTicks: dayTicks(fromMs, toMs).map((ms) => ({ value: ms, at: xOf(ms) })),
    expected:
      expected === null
        ? null
        : {
            band: expected.band,
            points: [
              point(expected.from.atMs, expected.from.mass.value),
              point(expected.toMs, expected.high.value),
              point(expected.toMs, expected.low.value),
            ].join(' '),
          },
    xOf,
    lowGrams,
    highGrams,
    fromMs,
    toMs,
  };
}

function expectedOf(
  { species, class: kind, bornAt }: AnimalPage['animal'],
  oldestFirst: readonly WeighingView[],
  toMs: number,
): ExpectedBand | null {
  const first = oldestFirst.find(({ doubt }) => doubt === null);
  if (first === undefined) return null;
  const bornAtMs = bornAt === null ? null : Date.parse(bornAt);
  const from = { mass: grams(first.grams), atMs: Date.parse(first.at) };
  return expectedBand({ species, class: kind, bornAtMs }, from, toMs);
}

/** The lowest and highest weight shown. A doubted one must not press the others flat: it is drawn at the edge. */
function endsOf(oldestFirst: readonly WeighingView[], expected: ExpectedBand | null): [number, number] {
  const believed = oldestFirst.filter(({ doubt }) => doubt === null);
  const ends = (believed.length > 0 ? believed : oldestFirst).flatMap(
    ({ grams: weight, uncertaintyGrams }) => {
      const reach = COVER * (uncertaintyGrams ?? 0);
      return [weight - reach, weight + reach];
    },
  );
  if (expected !== null) ends.push(expected.low.value, expected.high.value);
  return [Math.min(...ends), Math.max(...ends)];
}

/** Whole days, months or years; of a time too short for any, its one day. */
function dayTicks(fromMs: number, toMs: number): number[] {
  const found = utcTicks(new Date(fromMs), new Date(toMs), TICKS).map((day) => day.getTime());
  const whole = found.filter((ms) => ms % 86_400_000 === 0);
  return whole.length > 0 ? whole : [fromMs];
}
