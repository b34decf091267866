import { residentMb } from '../of-process.ts';
import type { Figure } from '../table.ts';
import type { RunningHub } from './machines.ts';
import { liveManyDay, MANY, type ManyDay } from './many-kiosks.ts';
import { restAll } from './waiting-kiosks.ts';

/** A busy day of a large farm lasts so long. */
const DAY_S = 12 * 3600;

/** So many of them then wait for news, each asking every second and a half. */
const RESTING = 200;

/** A day of many kiosks, then some of them at rest; answers the hub as it runs by then too. */
export async function manyFigures(first: RunningHub): Promise<{ hub: RunningHub; figures: Figure[] }> {
  const day = await liveManyDay(first);
  if (day.lost + day.doubled > 0 || day.anotherLife < day.putBack)
    throw new Error(
      `${day.lost} events are lost, ${day.doubled} doubled; of ${day.putBack} cards that were put back ${day.anotherLife} were noticed`,
    );
  const { hub, members } = day;
  const rest = await restAll(
    hub,
    members.slice(0, RESTING).map(({ invitation }) => invitation),
  );
  const at = (times: readonly number[], share: number) => times[Math.floor(share * times.length)] ?? 0;
  const figures = [
    ...dayFigures(day, at),
    {
      what: `work of hub and database, ${RESTING} kiosks waiting for news`,
      ratio: rest.share,
      against: 'a core',
      raw: `${((rest.share * 1000) / rest.pullsPerSecond).toFixed(2)} ms of a core a question, ${rest.pullsPerSecond.toFixed(0)} questions a second, each waiting 1.5 s; answers late by ${at(rest.late, 0.5).toFixed(0)} ms, 99 of 100 by ${at(rest.late, 0.99).toFixed(0)} ms, ${rest.failures} had none in time; hub ${residentMb(hub.pid).toFixed(0)} MB resident`,
    },
  ];
  return { hub, figures };
}

function dayFigures(day: ManyDay, at: (times: readonly number[], share: number) => number): Figure[] {
  const { events, seconds, meetings, back } = day;
  return [
    {
      what: `a tenth of a busy day of ${MANY.kiosks} kiosks`,
      ratio: DAY_S / 10 / seconds,
      against: 'a tenth of its 12 hours',
      raw: `${events} events in ${seconds.toFixed(0)} s, ${(events / seconds).toFixed(0)}/s; an exchange of twenty or more takes ${at(meetings, 0.5).toFixed(0)} ms, 99 of 100 ${at(meetings, 0.99).toFixed(0)} ms, 16 at once; ${day.cutOff} kiosks cut off for half of it, ${day.lostCalls} answers lost, ${day.wrongClocks} clocks wrong by up to ten years, the hub killed once and put back to two turns of six before once; 0 lost, 0 doubled`,
    },
    {
      what: 'cards put back without a word that were noticed',
      ratio: day.anotherLife / day.putBack,
      against: 'all of them',
      raw: `${day.anotherLife} of ${day.putBack}, two turns of six old`,
    },
    {
      what: 'a kiosk that returns after 90 days',
      ratio: back.events / back.seconds / (events / seconds),
      against: 'what all together exchange a second',
      raw: `${back.events} events in ${back.seconds.toFixed(1)} s`,
    },
  ];
}
