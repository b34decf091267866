import { type LarvalRates, larvalRates } from './larval-rates.ts';
import { DAYS_AHEAD, evaporationOf, moistureOf, type WeatherRow } from './weather.ts';

/** Worms outside the animal at the beginning of a day; numbers in the unit of the eggs put in. */
export interface Larvae {
  readonly eggs: number;
  readonly early: number;
  /** Infective larvae in the dung, and on the pasture as a whole. */
  readonly inDung: number;
  readonly onPasture: number;
  /** Those of the pasture that sit on herbage. */
  readonly onHerbage: number;
}

/** Eggs that come down with the dung. */
export interface EggInput {
  /** There on the first day, and infective larvae on its herbage. */
  readonly eggsAtFirst: number;
  readonly onHerbageAtFirst: number;
  /** Eggs of each day, put down right after that day's numbers. */
  readonly daily: readonly number[];
}

/** Share of the eggs that do not dry out where there is less rain than evaporation. */
const DRY_SURVIVAL = 0.1;
/** Leaving the dung, a day: in 2 mm of rain or more, and in moist weather without. */
const LEAVE_IN_RAIN = 0.25;
const LEAVE_IN_MOISTURE = 0.051;
const WASHING_RAIN_MM = 2;
/** Steps a day of the fourth-order solver: at 24 the published run is met to 1e-5. */
const STEPS = 24;

/** Rates of one day with the leaving of dung. */
type DayRates = LarvalRates & { readonly leaveDung: number };

/**
 * Runs the larval model over days of weather: GLOWORM-FL (Rose et al. 2015), barber's pole worm.
 *
 * A guide and no forecast: pasture, dung and shade are not in it. The moisture of a day looks four days ahead, so the
 * last days stand on less rain than they need, unless the row ends with forecast rain. Throws `RangeError` unless there
 * is one number of eggs for each day.
 */
export function larvaeOver(weather: WeatherRow, input: EggInput): Larvae[] {
  const { days } = weather;
  if (input.daily.length !== days.length) {
    throw new RangeError(
      `${days.length} days of weather need as many numbers of eggs, not ${input.daily.length}`,
    );
  }
  const evaporated = evaporationOf(weather);
  const ahead = moistureOf(days, evaporated, 0, DAYS_AHEAD);
  const behind = moistureOf(days, evaporated, -DAYS_AHEAD, 0);
  const rates = days.map(
    ({ celsius, rainMm }, at): DayRates => ({
      ...larvalRates(celsius),
      leaveDung: leavingDung(rainMm, behind[at] ?? 0),
    }),
  );
  const survive = ahead.map((moisture) => (moisture < 1 ? DRY_SURVIVAL : 1));
  let state: State = [input.eggsAtFirst * (survive[0] ?? 1), 0, 0, onPastureAtFirst(input, rates[0])];
  const found: Larvae[] = [];
  for (const [at, today] of rates.entries()) {
    const [eggs, early, inDung, onPasture] = state;
    found.push({ eggs, early, inDung, onPasture, onHerbage: onPasture * today.onHerbage });
    const laid = (input.daily[at] ?? 0) * (survive[at] ?? 1);
    state = overDay([eggs + laid, early, inDung, onPasture], today, rates[at + 1] ?? today);
  }
  return found;
}

function onPastureAtFirst({ onHerbageAtFirst }: EggInput, first: DayRates | undefined): number {
  return first === undefined || onHerbageAtFirst === 0 ? 0 : onHerbageAtFirst / first.onHerbage;
}

function leavingDung(rainMm: number, moistureBehind: number): number {
  if (rainMm >= WASHING_RAIN_MM) return LEAVE_IN_RAIN;
  return moistureBehind >= 1 ? LEAVE_IN_MOISTURE : 0;
}

/** Eggs, early larvae, infective larvae in dung, and on pasture. */
type State = readonly [number, number, number, number];

/** From one day to the next by Runge and Kutta's method, the rates going over in a straight line. */
function overDay(start: State, today: DayRates, tomorrow: DayRates): State {
  const h = 1 / STEPS;
  let state = start;
  for (let step = 0; step < STEPS; step += 1) {
    const at = (part: number): DayRates => between(today, tomorrow, (step + part) * h);
    const k1 = slopeOf(state, at(0));
    const k2 = slopeOf(along(state, k1, h / 2), at(0.5));
    const k3 = slopeOf(along(state, k2, h / 2), at(0.5));
    const k4 = slopeOf(along(state, k3, h), at(1));
    state = along(along(along(along(state, k1, h / 6), k2, h / 3), k3, h / 3), k4, h / 6);
  }
  return state;
}

function slopeOf([eggs, early, inDung, onPasture]: State, rates: DayRates): State {
  const step = 2 * rates.development;
  const pastureDeath = rates.soilDeath * (1 - rates.onHerbage) + rates.dungDeath * rates.onHerbage;
  return [
    -(step + rates.eggDeath) * eggs,
    -(step + rates.earlyDeath) * early + step * eggs,
    -(rates.dungDeath + rates.leaveDung) * inDung + step * early,
    -pastureDeath * onPasture + rates.leaveDung * inDung,
  ];
}

function along(state: State, slope: State, by: number): State {
  return [
    state[0] + slope[0] * by,
    state[1] + slope[1] * by,
    state[2] + slope[2] * by,
    state[3] + slope[3] * by,
  ];
}

function between(a: DayRates, b: DayRates, part: number): DayRates {
  const mix = (from: number, to: number): number => from + (to - from) * part;
  return {
    development: mix(a.development, b.development),
    eggDeath: mix(a.eggDeath, b.eggDeath),
    earlyDeath: mix(a.earlyDeath, b.earlyDeath),
    dungDeath: mix(a.dungDeath, b.dungDeath),
    soilDeath: mix(a.soilDeath, b.soilDeath),
    onHerbage: mix(a.onHerbage, b.onHerbage),
    leaveDung: mix(a.leaveDung, b.leaveDung),
  };
}
