import { Publisher } from '../../server/routes/publisher.ts';
import { stateView } from '../../server/view/state-view.ts';
import { quietStanding } from '../server/make/quiet.ts';
import { bringToOffer, testBarn } from '../server/make/test-barn.ts';
import { type Figure, ratePerSecond } from './table.ts';

/** How often a screen is told of a live weight, in milliseconds. */
const LEAST_MS = 20;

/** What it costs to tell a screen of one new weight, with a day book of sixty rows. */
export function publishFigures(): Figure[] {
  const test = testBarn();
  bringToOffer(test);
  const { context } = test.barn;
  const { phase } = context.memory.round;
  if (phase.step !== 'offered') throw new Error('no offer came, so nothing was measured');
  test.send({ type: 'give', offerId: phase.offer.id, outcome: 'whole' });
  const [entry] = context.memory.recent;
  if (entry === undefined) throw new Error('nothing was logged, so nothing was measured');
  context.memory = { ...context.memory, recent: Array.from({ length: 60 }, () => entry) };
  const standing = quietStanding(context);
  const publisher = new Publisher(() => stateView(context, standing), test.barn.revision);
  let bytes = 0;
  publisher.add({
    backlog: 0,
    send: (text) => {
      bytes += text.length;
    },
  });
  let weight = 0;
  const rate = ratePerSecond(() => {
    weight += 50;
    test.weigh(weight % 40_000, 100);
    publisher.flush(0);
  }, 20);
  if (bytes === 0) throw new Error('nothing was sent, so nothing was measured');
  return [
    {
      what: 'a reading to a patch on the wire, 60 rows',
      ratio: (LEAST_MS * rate) / 1000,
      against: `the ${LEAST_MS} ms between two of them`,
      raw: `${(1000 / rate).toFixed(2)} ms each`,
    },
  ];
}
