/** The parts of a time of day that are stepped, each with the minutes of one step. */
export const MINUTES_OF = { hour: 60, tens: 10, ones: 1 } as const;
/** A part of a time of day. */
export type TimePart = keyof typeof MINUTES_OF;

const DAY = 1440;

/** The minute of a day, 0 to 1,439, one step on or back; past midnight it goes on from the other end of the same day. */
export function steppedMinute(minute: number, part: TimePart, by: 1 | -1): number {
  return (minute + by * MINUTES_OF[part] + DAY) % DAY;
}

/** What stands in each part: the hour with two digits, then the two digits of the minute. */
export function timeParts(minute: number): Readonly<Record<TimePart, string>> {
  const [tens = '', ones = ''] = String(minute % 60).padStart(2, '0');
  return { hour: String(Math.floor(minute / 60)).padStart(2, '0'), tens, ones };
}

/** A time of day such as "14:05". */
export function clockText(minute: number): string {
  const { hour, tens, ones } = timeParts(minute);
  return `${hour}:${tens}${ones}`;
}
