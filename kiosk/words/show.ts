import { getContext, setContext } from 'svelte';
import { keptIn } from '../../core/kept-in.ts';
import { grams, type MassUnit } from '../../core/quantity/mass.ts';
import { decimalsOf } from '../../core/quantity/round.ts';
import {
  showNumber,
  showRate,
  showStrength,
  showVolume,
  showWeight,
  USUAL_DIVISION,
} from '../../core/quantity/show.ts';
import { mgPerKg, mgPerMl } from '../../core/quantity/strength.ts';
import { millilitres } from '../../core/quantity/volume.ts';
import { minorDigits } from '../../core/stock/money.ts';

const KEY = Symbol('show');
/** What stands where there is no current value. */
export const DASH = '–';

/** Units of a duration, the largest first, with their seconds. */
const DURATIONS = [
  ['day', 86_400],
  ['hour', 3600],
] as const;

/** What the ways of showing depend on; each member is read anew at each use, so that a change of unit shows at once. */
export interface ShowSettings {
  readonly unit: MassUnit;
  /** The platform's step in grams, or `null` while unknown. */
  readonly division: number | null;
  readonly benchDivision: number | null;
  readonly locale: string;
  /** The farm's zone, in which times are shown; the browser's own where it is not known. */
  readonly timeZone?: string | undefined;
  /** Milliseconds since 1970: a date is left out of times of the same day. */
  readonly nowMs: number;
}

/** A point in time: RFC 3339, or milliseconds since 1970. */
export type Instant = string | number;

/** Every way in which a number or a time reaches the screen; what is missing becomes a dash. */
export class Show {
  readonly #settings: ShowSettings;

  constructor(settings: ShowSettings) {
    this.#settings = settings;
  }

  /** An animal's weight in the keeper's unit, from grams. */
  weight(value: number | null | undefined): string {
    if (value == null) return DASH;
    const { unit, division } = this.#settings;
    return this.#spaced(showWeight(grams(value), unit, grams(division ?? USUAL_DIVISION.value)));
  }

  /** What a scale shows, in the unit it shows it in. */
  inUnit(value: number | null, unit: MassUnit, division: number | null): string {
    return value === null
      ? DASH
      : this.#spaced(showWeight(grams(value), unit, grams(division ?? USUAL_DIVISION.value)));
  }

  /** What lies on the bench scale, in grams. */
  bench(value: number | null | undefined): string {
    if (value == null) return DASH;
    return this.#spaced(showWeight(grams(value), 'g', grams(this.#settings.benchDivision ?? 1)));
  }

  /** A volume on a syringe's mark, without its unit. */
  mark(ml: number, graduationMl: number): string {
    return this.#spaced(showNumber(ml, decimalsOf(graduationMl)));
  }

  /** The mass printed on a packet, in grams. */
  packet(value: number): string {
    return `${this.#spaced(showNumber(value, 1))} g`;
  }

  /** A mass as fine as a scale's step may be, in grams. */
  fine(value: number): string {
    return `${this.#spaced(showNumber(value, 3))} g`;
  }

  /** A volume on a syringe's mark, in mL. */
  dose(ml: number, graduationMl: number): string {
    return this.#spaced(showVolume(millilitres(ml), millilitres(graduationMl)));
  }

  /** A volume before it was rounded to a mark, in mL. */
  exact(ml: number): string {
    return `${this.#spaced(showNumber(ml, 3))} mL`;
  }

  /** A volume of a jug, to the nearest mL. */
  volume(ml: number | undefined): string {
    return ml === undefined ? DASH : `${this.#spaced(showNumber(ml, 0))} mL`;
  }

  /** A strength in mg/mL. */
  strength(value: number): string {
    return this.#spaced(showStrength(mgPerMl(value)));
  }

  /** A rate in mg/kg. */
  rate(value: number | undefined): string {
    return value === undefined ? DASH : this.#spaced(showRate(mgPerKg(value)));
  }

  /** A plain number with at most so many decimals. */
  number(value: number | undefined, decimals = 0): string {
    return value === undefined ? DASH : this.#spaced(showNumber(value, decimals));
  }

  /** How long something lasts, from seconds, in the largest unit that says it: "3 days", "5 hours", "20 minutes". */
  duration(seconds: number): string {
    const { locale } = this.#settings;
    const [unit, size] = DURATIONS.find(([, each]) => seconds >= 2 * each) ?? ['minute', 60];
    const format = new Intl.NumberFormat(locale, { style: 'unit', unit, unitDisplay: 'long' });
    return format.format(Math.floor(seconds / size));
  }

  /** Money, such as "€12.40"; a share of a minor unit is rounded. */
  money({ currency, minor }: { readonly currency: string; readonly minor: number }): string {
    const { locale } = this.#settings;
    const format = new Intl.NumberFormat(locale, { style: 'currency', currency });
    return this.#spaced(format.format(minor / 10 ** minorDigits(currency)));
  }

  /** A fraction as a percentage to a tenth, with its sign where it is below zero. */
  percent(share: number | undefined): string {
    if (share === undefined) return DASH;
    const tenths = Math.round(1000 * share);
    return `${tenths < 0 ? '−' : ''}${this.#spaced(showNumber(Math.abs(tenths) / 10, 1))} %`;
  }

  /** The time of day, such as "14:02". */
  time(at: Instant | undefined): string {
    return at === undefined ? DASH : this.#format(at, { hour: '2-digit', minute: '2-digit' });
  }

  /** The time of day in another zone. */
  timeIn(at: Instant, timeZone: string): string {
    return this.#format(at, { hour: '2-digit', minute: '2-digit', timeZone });
  }

  /** The day, such as "Tue 25 Nov". */
  day(at: Instant | undefined): string {
    if (at === undefined) return DASH;
    return this.#format(at, { weekday: 'short', day: 'numeric', month: 'short' }).replaceAll(',', '');
  }

  /** A day of any year, such as "30 Apr 2026". */
  date(at: Instant | undefined): string {
    if (at === undefined) return DASH;
    return this.#format(at, { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' });
  }

  /** Days of any year from one to another, such as "1 – 21 Jun 2026". */
  dates(from: Instant, to: Instant): string {
    const parts = { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' } as const;
    return new Intl.DateTimeFormat(this.#settings.locale, parts)
      .formatRange(new Date(from), new Date(to))
      .replaceAll(' de ', ' ');
  }

  /** The day of an instant on the farm with its year, such as "30 Apr 2026". */
  localDate(at: Instant | undefined): string {
    return at === undefined ? DASH : this.#format(at, { day: 'numeric', month: 'short', year: 'numeric' });
  }

  /** The day of an instant on the farm as a date such as "2026-04-30". */
  isoDay(at: Instant): string {
    const { timeZone } = this.#settings;
    // This locale writes dates as the wire does.
    return new Intl.DateTimeFormat('sv-SE', { timeZone }).format(new Date(at));
  }

  /** The month of a day, such as "Apr". */
  month(at: Instant): string {
    return this.#format(at, { month: 'short', timeZone: 'UTC' });
  }

  /** A day at the edge of a chart: a year where one begins, a month where one begins, else the day. */
  chartDay(at: Instant): string {
    const day = new Date(at);
    if (day.getUTCDate() !== 1) return this.#format(at, { day: 'numeric', month: 'short', timeZone: 'UTC' });
    return day.getUTCMonth() === 0 ? this.#format(at, { year: 'numeric', timeZone: 'UTC' }) : this.month(at);
  }

  /** A day with its weekday, such as "Thu 30 Apr 2026". */
  weekday(at: Instant): string {
    return this.#format(at, {
      weekday: 'short',
      day: 'numeric',
      month: 'short',
      year: 'numeric',
      timeZone: 'UTC',
    }).replaceAll(',', '');
  }

  /** A change, with its sign, to a whole number. */
  signed(value: number): string {
    const whole = Math.round(value);
    return whole < 0 ? `−${this.#spaced(showNumber(-whole, 0))}` : this.#spaced(showNumber(whole, 0));
  }

  /** How well a weight is known, in the keeper's unit with a digit more than the scale shows. */
  fineWeight(value: number): string {
    const { unit, division } = this.#settings;
    return this.#spaced(showWeight(grams(value), unit, grams((division ?? USUAL_DIVISION.value) / 10)));
  }

  /** The time, with its day unless that is today. */
  when(at: Instant | undefined): string {
    if (at === undefined) return DASH;
    return this.day(at) === this.day(this.#settings.nowMs)
      ? this.time(at)
      : `${this.day(at)} ${this.time(at)}`;
  }

  /** Whole minutes from now until then, never below zero, begun ones counted. */
  minutesUntil(at: Instant): number {
    return Math.max(0, Math.ceil((new Date(at).getTime() - this.#settings.nowMs) / 60_000));
  }

  /** Thousands apart by a space where a comma would be read as the decimal sign. */
  #spaced(shown: string): string {
    return this.#settings.locale.startsWith('es') ? shown.replaceAll(',', '\u00a0') : shown;
  }

  #format(at: Instant, parts: Intl.DateTimeFormatOptions): string {
    const { locale, timeZone } = this.#settings;
    return timeFormat(locale, { hourCycle: 'h23', timeZone, ...parts }).format(new Date(at));
  }
}

/** A formatter costs far more than what it formats, and a page shows few kinds of times many times over. */
const TIME_FORMATS = new Map<string, Intl.DateTimeFormat>();

function timeFormat(locale: string, parts: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${locale} ${JSON.stringify(parts)}`;
  return keptIn(TIME_FORMATS, key, () => new Intl.DateTimeFormat(locale, parts));
}

/** Puts a page's ways of showing in context. */
export function createShow(settings: ShowSettings): Show {
  return setContext(KEY, new Show(settings));
}

/** The page's ways of showing. */
export function useShow(): Show {
  return getContext<Show>(KEY);
}
