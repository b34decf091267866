import { serialize } from 'node:v8';
import { grams, kilograms } from '../../../core/quantity/mass.ts';
import { BLANK_DECK, type Deck, feedDeck } from '../../../core/weighing/deck.ts';
import { type Figure, ratePerSecond } from '../table.ts';
import { REPORT } from './parameters.ts';
import { makeVisit } from './visit.ts';

const SPEC = { capacity: kilograms(400), division: null };

function feedVisit(
  samples: readonly { readonly at: number; readonly grams: number }[],
  division: number,
): Deck {
  return samples.reduce(
    (deck, sample) =>
      feedDeck(
        deck,
        {
          role: 'platform',
          mass: grams(sample.grams),
          division: grams(division),
          stability: 'moving',
          net: false,
          zero: sample.grams === 0,
          at: sample.at,
        },
        SPEC,
      ),
    BLANK_DECK,
  );
}

/** What a reading costs the deck, in time and in memory kept. */
export function deckSpeedFigures(): Figure[] {
  const visit = makeVisit(REPORT, 'restless', REPORT.firstSeed - 1);
  const rate = visit.samples.length * ratePerSecond(() => void feedVisit(visit.samples, visit.division), 3);
  const standing = visit.samples.filter(({ at }) => at < visit.lastFootOn + 1000 * visit.stands);
  const kept = serialize(feedVisit(standing, visit.division)).byteLength;
  const hour = hourOfStanding(visit.division);
  return [
    {
      what: 'deck: readings taken in, one core',
      ratio: rate / 50,
      against: 'a scale of 50 readings a second',
      raw: `${Math.round(1e9 / rate).toLocaleString('en-US')} ns a reading`,
    },
    {
      what: 'deck: state kept after an hour at 50 Hz',
      ratio: hour / kept,
      against: 'the same of one visit: 1 or so means it does not grow',
      raw: `${hour.toLocaleString('en-US')} bytes against ${kept.toLocaleString('en-US')}`,
    },
  ];
}

/** The size of the deck after an hour of an animal that never leaves, in serialised bytes. */
function hourOfStanding(division: number): number {
  const readings = Array.from({ length: 50 * 3600 }, (_, i) => ({
    at: 20 * i,
    grams: i < 50 ? 0 : Math.round((40_000 + 400 * Math.sin(i / 17)) / division) * division,
  }));
  return serialize(feedVisit(readings, division)).byteLength;
}
