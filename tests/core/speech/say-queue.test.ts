import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reduceQueue, type SayQueue, SILENT } from '../../../core/speech/say-queue.ts';
import { PRIORITIES, type SayKey, type Utterance } from '../../../core/speech/utterance.ts';

function utterance(key: SayKey, priority: Utterance['priority'], text: string = key): Utterance {
  return { what: 'try-out', text, language: 'en', priority, key };
}
const DOSE = utterance('dose', 'important');
const WEIGHT = utterance('weight', 'plain');
const LOST = utterance('link-platform', 'urgent');

function say(queue: SayQueue, utterances: Utterance[], at = 0, hush: SayKey[] = []): SayQueue {
  return reduceQueue(queue, { type: 'say', utterances, hush }, at);
}
function over(queue: SayQueue, at = 0): SayQueue {
  return reduceQueue(queue, { type: 'ended', number: queue.speaking?.number ?? -1 }, at);
}
const heard = (queue: SayQueue) => queue.speaking?.utterance.text ?? null;

/** All that is said from here on. */
function rest(queue: SayQueue, at = 0): string[] {
  const texts: string[] = [];
  for (let now = queue; now.speaking !== null; now = over(now, at)) texts.push(now.speaking.utterance.text);
  return texts;
}

describe('the queue of what is to be said', () => {
  test('the most important goes first, and what came together stays in its order', () => {
    expect(rest(say(SILENT, [WEIGHT, DOSE, utterance('animal', 'plain')]))).toEqual([
      'dose',
      'weight',
      'animal',
    ]);
  });

  test('the later of equals goes first', () => {
    const queue = say(say(say(SILENT, [DOSE]), [WEIGHT]), [utterance('animal', 'plain')]);
    expect(rest(queue)).toEqual(['dose', 'animal', 'weight']);
  });

  test('a newer one takes the place of an older one with its key, even mid-word', () => {
    const queue = say(say(SILENT, [DOSE]), [utterance('dose', 'important', 'newer')]);
    expect(rest(queue)).toEqual(['newer']);
  });

  test('an urgent one cuts off a dose, which is then said again under a number of its own', () => {
    const before = say(SILENT, [DOSE]);
    const cut = say(before, [LOST]);
    expect(rest(cut)).toEqual(['link-platform', 'dose']);
    expect(over(cut).speaking?.number).not.toBe(before.speaking?.number);
    expect(rest(say(say(SILENT, [WEIGHT]), [LOST]))).toEqual(['link-platform']);
  });

  test('an important one waits for a plain one to end', () => {
    expect(rest(say(say(SILENT, [WEIGHT]), [DOSE]))).toEqual(['weight', 'dose']);
  });

  test('what is hushed is cut off and dropped', () => {
    const queue = say(say(SILENT, [WEIGHT]), [DOSE]);
    expect(rest(say(queue, [], 0, ['weight', 'dose']))).toEqual([]);
  });

  test('what waited too long is not worth saying', () => {
    const queue = say(say(SILENT, [DOSE]), [WEIGHT]);
    expect(heard(over(queue, 9_000))).toBe('weight');
    expect(heard(over(queue, 11_000))).toBeNull();
  });

  test('an end that comes late ends nothing else', () => {
    const first = say(SILENT, [WEIGHT]);
    const second = say(first, [LOST]);
    expect(reduceQueue(second, { type: 'ended', number: first.speaking?.number ?? -1 }, 0)).toBe(second);
  });

  test('whatever comes: numbers are never used twice, few wait, and the queue always runs dry', () => {
    const any = fc.record({
      key: fc.constantFrom<SayKey>('dose', 'weight', 'pour', 'log', 'link-bench', 'note'),
      priority: fc.constantFrom(...PRIORITIES),
      end: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(any, { maxLength: 40 }), (events) => {
        let queue = SILENT;
        const begun = new Map<number, string>();
        for (const { key, priority, end } of events) {
          queue = end ? over(queue) : say(queue, [utterance(key, priority, `${key} ${queue.count}`)]);
          expect(queue.waiting.length).toBeLessThanOrEqual(6);
          if (queue.speaking === null) continue;
          const { number, utterance: said } = queue.speaking;
          expect(begun.get(number) ?? said.text).toBe(said.text);
          begun.set(number, said.text);
        }
        expect(rest(queue).length).toBeLessThanOrEqual(7);
      }),
    );
  });
});
