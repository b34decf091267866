/** One day or instant a keeper should be reminded of. */
export interface CalendarEvent {
  /** Unique for ever: the same event exported again replaces itself in the calendar. */
  readonly uid: string;
  readonly summary: string;
  readonly description: string | null;
  /** When it is, milliseconds since 1970: an instant, or with `allDay` any instant of that day in UTC. */
  readonly atMs: number;
  readonly allDay: boolean;
  /** Minutes before at which the calendar reminds; `null` for none. */
  readonly remindMinutesBefore: number | null;
}

/** Octets a line may have before it is folded, its line end left out: RFC 5545, 3.1. */
const LONGEST_LINE = 75;
const LINE_END = '\r\n';
const PRODUCT = '-//Byreside//Day book//EN';

/**
 * An iCalendar file (RFC 5545) of events, to be given to a calendar as it stands. `writtenAtMs` is now.
 *
 * Times are UTC. Text is escaped, controls in it are left out, and lines are folded at 75 octets, never inside a character.
 * Throws `RangeError` for a time no calendar has.
 */
export function calendarFile(events: readonly CalendarEvent[], writtenAtMs: number): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    `PRODID:${PRODUCT}`,
    'CALSCALE:GREGORIAN',
    ...events.flatMap((event) => eventLines(event, writtenAtMs)),
    'END:VCALENDAR',
  ];
  return lines.map((line) => fold(line) + LINE_END).join('');
}

function eventLines(event: CalendarEvent, writtenAtMs: number): string[] {
  const { uid, summary, description, atMs, allDay, remindMinutesBefore } = event;
  return [
    'BEGIN:VEVENT',
    `UID:${escaped(uid)}`,
    `DTSTAMP:${instant(writtenAtMs)}`,
    allDay ? `DTSTART;VALUE=DATE:${instant(atMs).slice(0, 8)}` : `DTSTART:${instant(atMs)}`,
    `SUMMARY:${escaped(summary)}`,
    ...(description === null ? [] : [`DESCRIPTION:${escaped(description)}`]),
    // A reminder takes up no time: nobody is busy by it.
    'TRANSP:TRANSPARENT',
    ...(remindMinutesBefore === null ? [] : alarmLines(summary, remindMinutesBefore)),
    'END:VEVENT',
  ];
}

function alarmLines(summary: string, minutes: number): string[] {
  if (!(Number.isInteger(minutes) && minutes >= 0)) {
    throw new RangeError(`a reminder is a whole number of minutes before, not ${minutes}`);
  }
  return [
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    `DESCRIPTION:${escaped(summary)}`,
    `TRIGGER:-PT${minutes}M`,
    'END:VALARM',
  ];
}

/** 20260502T140311Z. */
function instant(atMs: number): string {
  return new Date(Math.floor(atMs / 1000) * 1000).toISOString().replace(/[-:]|\.000/g, '');
}

/** RFC 5545, 3.3.11: backslash, semicolon, comma and line end are escaped, other controls cannot stand in a text. */
function escaped(text: string): string {
  return (
    text
      .replace(/[\\;,]/g, '\\$&')
      .replace(/\r\n?|\n/g, '\\n')
      // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is left out.
      .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '')
  );
}

/** Breaks a line into lines of at most 75 octets, each after the first begun with a blank. */
function fold(line: string): string {
  let folded = '';
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character);
    if (octets + size > LONGEST_LINE) {
      folded += `${LINE_END} `;
      octets = 1;
    }
    folded += character;
    octets += size;
  }
  return folded;
}

/** Octets of a character in UTF-8. */
function octetsOf(character: string): number {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  return code < 0x10000 ? 3 : 4;
}
