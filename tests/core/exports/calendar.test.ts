import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { type CalendarEvent, calendarFile } from '../../../core/exports/calendar.ts';

const NOW = Date.UTC(2026, 4, 2, 14, 3, 11, 500);

function eventOf(change: Partial<CalendarEvent> = {}): CalendarEvent {
  return {
    uid: 'meat-anna@byreside',
    summary: 'Anna: meat clear',
    description: null,
    atMs: Date.UTC(2026, 4, 11, 14, 3, 11),
    allDay: false,
    remindMinutesBefore: null,
    ...change,
  };
}

/** The file as a program by others reads it. */
function readBack(events: readonly CalendarEvent[]) {
  const calendar = new ICAL.Component(ICAL.parse(calendarFile(events, NOW)));
  return calendar.getAllSubcomponents('vevent').map((component) => ({
    event: new ICAL.Event(component),
    stamp: String(component.getFirstPropertyValue('dtstamp')),
    alarm: component.getFirstSubcomponent('valarm')?.getFirstPropertyValue('trigger')?.toString() ?? null,
  }));
}

describe('a calendar file', () => {
  test('is what the standard shows, line by line', () => {
    expect(calendarFile([eventOf()], NOW)).toBe(
      [
        'BEGIN:VCALENDAR',
        'VERSION:2.0',
        'PRODID:-//Byreside//Day book//EN',
        'CALSCALE:GREGORIAN',
        'BEGIN:VEVENT',
        'UID:meat-anna@byreside',
        'DTSTAMP:20260502T140311Z',
        'DTSTART:20260511T140311Z',
        'SUMMARY:Anna: meat clear',
        'TRANSP:TRANSPARENT',
        'END:VEVENT',
        'END:VCALENDAR',
        '',
      ].join('\r\n'),
    );
  });

  test('is read by another program', () => {
    const [day, instant] = readBack([
      eventOf({ allDay: true, remindMinutesBefore: 720 }),
      eventOf({ uid: 'b', description: 'Line one\nline two; with, marks \\ and "quotes"' }),
    ]);
    expect(day?.event.startDate.toString()).toBe('2026-05-11');
    expect(day?.alarm).toBe('-PT720M');
    expect(day?.stamp).toBe('2026-05-02T14:03:11Z');
    expect(instant?.event.startDate.toString()).toBe('2026-05-11T14:03:11Z');
    expect(instant?.event.description).toBe('Line one\nline two; with, marks \\ and "quotes"');
  });

  test('without events is still a calendar', () => {
    expect(readBack([])).toEqual([]);
  });

  test('has no line over 75 octets, none cut inside a character, and no text lost', () => {
    const text = fc.string({ unit: 'grapheme', maxLength: 300 }).map((raw) => raw.replace(/\p{Cc}/gu, ''));
    fc.assert(
      fc.property(text, (summary) => {
        const file = calendarFile([eventOf({ summary })], NOW);
        for (const line of file.split('\r\n')) {
          expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
          expect(new TextDecoder().decode(new TextEncoder().encode(line))).toBe(line);
        }
        expect(readBack([eventOf({ summary })])[0]?.event.summary).toBe(summary);
      }),
    );
  });

  test('lets no text begin a line of its own', () => {
    const file = calendarFile([eventOf({ summary: 'x\r\nEND:VCALENDAR\u0007' })], NOW);
    expect(file.match(/^END:VCALENDAR$/gm)).toHaveLength(1);
    expect(file).toContain('SUMMARY:x\\nEND:VCALENDAR\r\n');
  });

  test('refuses a time that is none, and half a minute', () => {
    expect(() => calendarFile([eventOf({ atMs: Number.NaN })], NOW)).toThrow(RangeError);
    expect(() => calendarFile([eventOf({ remindMinutesBefore: 0.5 })], NOW)).toThrow(RangeError);
  });
});
