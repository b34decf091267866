/** A day and time as a label writes it, such as "Tue 14 Apr 2026 11:40", in the kiosk's own time zone. */
export function labelTime(wallMs: number): string {
  return new Intl.DateTimeFormat('en-GB', {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  })
    .format(new Date(wallMs))
    .replaceAll(',', '');
}
