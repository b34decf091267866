import type { CalendarEvent } from '../../core/exports/calendar.ts';
import { medicineById } from '../../core/medicine/formulary.ts';
import type { FarmRecords } from '../barn/barn-context.ts';
import type { CalendarWords } from '../exports/calendar-words.ts';
import { progressNow, testsNow } from './tests-now.ts';

/** The days of the second samples of every test that waits for them, as a source of the calendar. */
export function testReminders(barn: FarmRecords, words: CalendarWords): CalendarEvent[] {
  const { memory, clock } = barn;
  const { wallMs } = clock.now();
  return testsNow(barn).flatMap((now) => {
    const { step, missing } = progressNow(now, wallMs);
    if (step === 'done' || step === 'given-up' || missing.after.length === 0) return [];
    const { test, days, window } = now;
    if (days.untilMs < wallMs) return [];
    const medicine = words.shipped(medicineById(memory.formulary, test.medicineId)?.name ?? test.medicineId);
    const names = missing.after.flatMap(
      (id) => memory.animals.find((animal) => animal.id === id)?.name ?? [],
    );
    return [
      {
        uid: `retest-${test.id}@byreside`,
        summary: words.samples(medicine),
        description: words.samplesOf(names.join(', '), window.fromDay, window.untilDay),
        atMs: Math.max(days.fromMs, wallMs),
        allDay: true,
        remindMinutesBefore: null,
      },
    ];
  });
}
