import { describe, expect, test } from 'vitest';
import { otherReadBacks } from '../../../core/speech/other-read-backs.ts';
import { DIGIT_WORDS, readBackWords } from '../../../core/speech/read-back.ts';

/** What a grammar as written here takes, as a pattern: its rules put in where they are named. */
function takenBy(jsgf: string): RegExp {
  const rules = new Map<string, string>();
  for (const [, name = '', body = ''] of jsgf.matchAll(/<(\w+)> = (.*);/g)) rules.set(name, body);
  const written = (body: string): string =>
    body
      .replaceAll(' | ', '|')
      .replace(/<(\w+)>/g, (_, name: string) => `(?:${written(rules.get(name) ?? '')})`);
  return new RegExp(`^(?:${written(rules.get('others') ?? '')})$`);
}

const NEAR = [3.3, 3.2, 33, 3, 0.8, 8, 0.5, 12, 13, 10.5, 0.25, 120];

describe('the other read-backs', () => {
  test.each([3.3, 0.8, 12, 10.5, 0.25])('of %d are all but it', (volumeMl) => {
    const words = readBackWords(volumeMl);
    const others = takenBy(otherReadBacks(words));
    expect(words.join(' ')).not.toMatch(others);
    for (const near of NEAR.filter((other) => other !== volumeMl)) {
      expect(readBackWords(near).join(' ')).toMatch(others);
    }
    expect('given thirteen mils').toMatch(others);
    expect('given thirty three point two mils').toMatch(others);
  });

  test('a digit more, a digit less and another digit at every place are among them', () => {
    const words = ['given', 'three', 'point', 'three', 'mils'];
    const others = takenBy(otherReadBacks(words));
    for (const digit of DIGIT_WORDS) {
      expect(`given ${digit} three point three mils`).toMatch(others);
      expect(`given three ${digit} mils`).toMatch(others);
      expect(`given three point three ${digit} mils`).toMatch(others);
      if (digit === 'three') continue;
      expect(`given three point ${digit} mils`).toMatch(others);
      expect(`given ${digit} point three mils`).toMatch(others);
    }
  });

  test.each([
    'given mils',
    'given three',
    'given three mils point',
    'taken three mils',
    'given home mils',
    '',
  ])('"%s" is none', (words) => {
    expect(() => otherReadBacks(words.split(' '))).toThrow(RangeError);
  });
});
