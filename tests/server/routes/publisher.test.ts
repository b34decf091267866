import { expect, test } from 'vitest';
import { Publisher } from '../../../server/routes/publisher.ts';
import { stateView } from '../../../server/view/state-view.ts';
import type { ServerMessage } from '../../../shared/message.ts';
import { quietStanding } from '../make/quiet.ts';
import { testBarn } from '../make/test-barn.ts';

function publishing() {
  const test_ = testBarn();
  const standing = quietStanding(test_.barn.context);
  const publisher = new Publisher(() => stateView(test_.barn.context, standing), test_.barn.revision);
  const subscriber = {
    backlog: 0,
    received: [] as ServerMessage[],
    send(text: string) {
      this.received.push(JSON.parse(text));
    },
  };
  publisher.add(subscriber);
  return { test_, publisher, subscriber };
}

test('a new subscriber gets the whole state', () => {
  const { subscriber } = publishing();
  expect(subscriber.received).toMatchObject([{ type: 'snapshot', state: { bootId: 'boot' } }]);
});

test('a change is told as the parts that changed and nothing else', () => {
  const { test_, publisher, subscriber } = publishing();
  publisher.flush(0);
  test_.send({ type: 'set-face', face: 'glare' });
  publisher.flush(1);
  const last = subscriber.received.at(-1);
  expect(last).toMatchObject({ type: 'patch', changes: { face: 'glare' } });
  expect(last?.type === 'patch' && Object.keys(last.changes).sort()).toEqual(['face', 'now']);
});

test('nothing is told while nothing changes, but the clock once a second', () => {
  const { publisher, subscriber } = publishing();
  publisher.flush(0);
  const before = subscriber.received.length;
  publisher.flush(500);
  expect(subscriber.received).toHaveLength(before);
  publisher.flush(1100);
  expect(subscriber.received).toHaveLength(before + 1);
});

test('a slow subscriber gets nothing while it is behind, and then the whole state', () => {
  const { test_, publisher, subscriber } = publishing();
  publisher.flush(0);
  const before = subscriber.received.length;
  subscriber.backlog = 10_000_000;
  test_.send({ type: 'set-face', face: 'glare' });
  publisher.flush(10);
  expect(subscriber.received).toHaveLength(before);
  subscriber.backlog = 0;
  test_.send({ type: 'set-weight-unit', unit: 'lb' });
  publisher.flush(20);
  expect(subscriber.received.at(-1)).toMatchObject({
    type: 'snapshot',
    state: { face: 'glare', weightUnit: 'lb' },
  });
});
