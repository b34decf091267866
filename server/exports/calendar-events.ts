import { ruleFor } from '../../core/dosing/decide.ts';
import type { CalendarEvent } from '../../core/exports/calendar.ts';
import { medicineById, regimensFor } from '../../core/medicine/formulary.ts';
import { jugLife } from '../../core/mixing/jug.ts';
import { DAY_MS } from '../../core/moment.ts';
import { holdsOf, useNow } from '../../core/round/clear-board.ts';
import type { FarmRecords } from '../barn/barn-context.ts';
import { testReminders } from '../worms/test-reminders.ts';
import { CALENDAR_WORDS, type CalendarWords } from './calendar-words.ts';

/** Minutes before a thing at which a calendar reminds of it: an hour for what ends, none for what may be done. */
const AN_HOUR = 60;
/** Uids end in this, so that they are no other program's. */
const HERE = '@byreside';

/** What adds days to the calendar; each is asked for what lies ahead of now. */
type Source = (barn: FarmRecords, words: CalendarWords) => readonly CalendarEvent[];

/** All sources; whoever keeps days of its own adds its source here. */
const SOURCES: readonly Source[] = [clearTimes, jugUseBys, scaleChecks, secondDoses, testReminders];

/** Everything ahead that a keeper should be reminded of. */
export function calendarEvents(barn: FarmRecords): CalendarEvent[] {
  const words = CALENDAR_WORDS[barn.memory.settings.language];
  return SOURCES.flatMap((source) => source(barn, words));
}

/** When milk and meat of each animal may be used again; what has no time, or an untrusted one, is no day. */
function clearTimes({ memory, config, clock }: FarmRecords, words: CalendarWords): CalendarEvent[] {
  const { wallMs } = clock.now();
  const trusted = clock.isTrusted();
  return memory.animals.flatMap((animal) => {
    const holds = holdsOf(memory.keepingBack.get(animal.id) ?? [], [animal], config.timeZone).get(animal.id);
    return (['milk', 'meat'] as const).flatMap((what) => {
      const use = useNow(holds?.[what], wallMs, trusted);
      if (holds === undefined || use.kind !== 'at' || holds[what].provisional || use.atMs <= wallMs)
        return [];
      if (what === 'milk' && animal.class !== 'female' && !animal.inMilk) return [];
      return [
        {
          uid: `clear-${what}-${animal.id}${HERE}`,
          summary: words.clear[what](animal.name),
          description: words.clearBy(holds[what].treatmentId),
          atMs: use.atMs,
          allDay: false,
          remindMinutesBefore: null,
        },
      ];
    });
  });
}

function jugUseBys({ memory, clock }: FarmRecords, words: CalendarWords): CalendarEvent[] {
  const { wallMs } = clock.now();
  return memory.jugs
    .filter((jug) => jug.clockTrusted && jugLife(jug, wallMs) === 'in-life')
    .map((jug) => ({
      uid: `use-by-${jug.id}${HERE}`,
      summary: words.useBy(jug.number),
      description: words.shipped(medicineById(memory.formulary, jug.medicineId)?.name ?? ''),
      atMs: jug.useByMs,
      allDay: false,
      remindMinutesBefore: AN_HOUR,
    }));
}

function scaleChecks({ memory, clock }: FarmRecords, words: CalendarWords): CalendarEvent[] {
  const { wallMs } = clock.now();
  return (['platform', 'bench'] as const).flatMap((role) => {
    const last = memory.scaleChecks[role];
    if (last === null || !last.clockTrusted) return [];
    const atMs = last.atMs + memory.settings.scaleCheckDays * DAY_MS;
    if (atMs <= wallMs) return [];
    return [
      {
        uid: `check-${role}${HERE}`,
        summary: words.check[role],
        description: null,
        atMs,
        allDay: true,
        remindMinutesBefore: null,
      },
    ];
  });
}

/** When what was given lately may be needed again, by its rule: one day a medicine, with the animals in it. */
function secondDoses({ memory, clock }: FarmRecords, words: CalendarWords): CalendarEvent[] {
  const { wallMs } = clock.now();
  const days = new Map<string, { medicine: string; atMs: number; names: Set<string> }>();
  for (const { animalId, medicineId, givenAtMs, clockTrusted } of memory.earlier) {
    const animal = memory.animals.find(({ id }) => id === animalId);
    const medicine = medicineById(memory.formulary, medicineId);
    if (animal === undefined || medicine === undefined || !clockTrusted) continue;
    const { rule } = ruleFor(regimensFor(medicine, animal.species), memory.approvals);
    const atMs = givenAtMs + (rule?.repeatAfterDays.value ?? 0) * DAY_MS;
    if (atMs <= wallMs) continue;
    const key = `again-${medicineId}-${new Date(atMs).toISOString().slice(0, 10)}`;
    const day = days.get(key) ?? { medicine: words.shipped(medicine.name), atMs, names: new Set<string>() };
    days.set(key, { ...day, names: day.names.add(animal.name) });
  }
  return [...days].map(([key, { medicine, atMs, names }]) => ({
    uid: `${key}${HERE}`,
    summary: words.again(medicine),
    description: [...names].join(', '),
    atMs,
    allDay: true,
    remindMinutesBefore: null,
  }));
}
