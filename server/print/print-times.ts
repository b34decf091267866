/** A day and time as a label writes it, such as "Tue 14 Apr 2026 11:40", in the farm's time zone (an IANA name) and a locale. */
export function labelTime(wallMs: number, timeZone: string, locale = 'en-GB'): string {
  return new Intl.DateTimeFormat(locale, {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
    timeZone,
  })
    .format(new Date(wallMs))
    .replaceAll(',', '');
}
