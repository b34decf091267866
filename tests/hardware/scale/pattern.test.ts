import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patternFormat } from '../../../hardware/scale/pattern.ts';
import { compilePattern } from '../../../hardware/scale/pattern-check.ts';
import type { ScaleSettings } from '../../../hardware/scale/settings.ts';

/** A format of no known scale: `N 0012.34kg *` steady, `#` moving, `OVER` too heavy; N stands for net. */
const PATTERN =
  '(?<net>N)? *(?<value>-?\\d+(?:\\.\\d+)?) *(?<unit>kg|lb) (?:(?<stable>\\*)|(?<unstable>#))|(?<over>OVER)';

function read(
  text: string,
  settings: ScaleSettings = { pattern: PATTERN },
  role: 'bench' | 'platform' = 'platform',
) {
  const decoded = patternFormat(settings).decode(text, role, 7);
  if (decoded.kind === 'fault') return decoded.fault;
  return decoded.kind === 'reading' ? decoded.reading : decoded.kind;
}

describe('a format of the keeper', () => {
  it('reads value, unit, stability, net and overload by the names of its groups', () => {
    expect(read('  12.34kg *')).toMatchObject({
      mass: { value: 12340 },
      division: { value: 10 },
      stability: 'stable',
      net: false,
      at: 7,
    });
    expect(read('N 12.34kg #')).toMatchObject({ stability: 'moving', net: true });
    expect(read('  -5 lb *')).toMatchObject({ mass: { value: -5 * 453.59237 } });
    expect(read('OVER')).toMatchObject({ fault: 'over', mass: { value: 0 } });
  });

  it.each([
    ['12.34kg', 'bad-header'],
    ['12.34kg * ', 'bad-header'],
    ['x12.34kg *', 'bad-header'],
    [`${' '.repeat(60)}12.34kg *`, 'bad-width'],
  ])('refuses %j as %s', (text, fault) => {
    expect(read(text)).toBe(fault);
  });

  it('takes the unit from the settings where lines name none, and refuses another than the one set', () => {
    const pattern = '(?<stable>S|U) (?<value>[0-9]+\\.[0-9])(?<unit> [a-z]+)?(?<net>N)?';
    expect(read('S 12.5', { pattern })).toBe('unit-not-set');
    expect(read('S 12.5', { pattern, unit: 'kg' })).toMatchObject({ mass: { value: 12500 } });
    expect(read('S 12.5 kg', { pattern })).toMatchObject({ mass: { value: 12500 } });
    expect(read('S 12.5 lb', { pattern, unit: 'kg' })).toBe('unit-mismatch');
    expect(read('S 12.5 st', { pattern })).toBe('unknown-unit');
  });

  it('weighs no animal where the expression has no group for net, but on the word of the keeper', () => {
    const pattern = '(?<value>\\d+)(?<unit>kg)(?<unstable>\\?)?';
    expect(read('12kg', { pattern })).toBe('net-unknown');
    expect(read('12kg', { pattern, noTare: true })).toMatchObject({ net: false, mass: { value: 12000 } });
    expect(read('12kg?', { pattern }, 'bench')).toMatchObject({ stability: 'moving' });
  });

  it('finds its groups behind others without a name and behind brackets that open none', () => {
    const pattern = '(a|b)\\(([(?<x>]) *(?<value>\\d+) (?:k(?<stable>=))';
    expect(read('a(<  12 k=', { pattern, unit: 'kg' }, 'bench')).toMatchObject({
      mass: { value: 12000 },
      stability: 'stable',
    });
  });

  it('is moving unless all its groups for stability agree that it is not', () => {
    const pattern = '(?<value>\\d+)(?<unit>kg)(?<stable>=)?(?<unstable>~)?';
    expect(
      ['12kg', '12kg=', '12kg~', '12kg=~'].map((text) => read(text, { pattern }, 'bench')),
    ).toMatchObject([
      { stability: 'moving' },
      { stability: 'stable' },
      { stability: 'moving' },
      { stability: 'moving' },
    ]);
  });

  it('takes no value that is not a plain number', () => {
    const pattern = '(?<value>.{4})(?<unit>kg)(?<unstable>\\?)?';
    expect(read('1e03kg', { pattern }, 'bench')).toBe('bad-number');
    expect(read('1.2.kg', { pattern }, 'bench')).toBe('bad-number');
    expect(read('+1.2kg', { pattern }, 'bench')).toMatchObject({ mass: { value: 1200 } });
    expect(read('- 12kg', { pattern }, 'bench')).toMatchObject({ mass: { value: -12000 } });
  });
});

const GROUPS = '(?<value>\\d)(?<stable>=)';

describe('an expression', () => {
  it.each([
    ['', 'too-long'],
    ['a'.repeat(201), 'too-long'],
    ['(a+)+', 'nested-repeat'],
    ['(?:a*)*', 'nested-repeat'],
    ['(?:ab?){2}', 'nested-repeat'],
    ['(?:a?)?', 'nested-repeat'],
    ['(?:)*', 'nested-repeat'],
    ['(?=a)b', 'lookaround'],
    ['(?!a)b', 'lookaround'],
    ['(?<=a)b', 'lookaround'],
    ['(?<!a)b', 'lookaround'],
    ['(a)\\1', 'back-reference'],
    ['(?<value>a)\\k<value>', 'back-reference'],
    [`.*.*${GROUPS}`, 'ambiguous'],
    [` *[ 0-9]+${GROUPS}`, 'ambiguous'],
    [`(?:a|ab)${GROUPS}`, 'ambiguous'],
    [`(?:a|a)*${GROUPS}`, 'ambiguous'],
    [`a?a?a?aaa${GROUPS}`, 'ambiguous'],
    [`a{1,4}a${GROUPS}`, 'ambiguous'],
    [`(?:a|){2}${GROUPS}`, 'nested-repeat'],
    [`(?:|)${GROUPS}`, 'ambiguous'],
    [`.*${GROUPS}`, 'ambiguous'],
    ['(?<stable>=)', 'no-value'],
    ['(?<value>\\d)', 'no-stability'],
    [`${GROUPS}(?<other>x)`, 'unknown-group'],
    [`(?:${GROUPS}|x(?<value>y))`, 'unknown-group'],
    ['^a$', 'syntax'],
    ['a+?', 'syntax'],
    ['a**', 'syntax'],
    ['*a', 'syntax'],
    ['(a', 'syntax'],
    ['a)', 'syntax'],
    ['[a', 'syntax'],
    ['[]', 'syntax'],
    ['[z-a]', 'syntax'],
    ['a{0}', 'syntax'],
    ['a{3,2}', 'syntax'],
    ['a{99}', 'syntax'],
    ['a{x}', 'syntax'],
    ['\\b', 'syntax'],
    ['\\u0041', 'syntax'],
    ['(?i:a)', 'syntax'],
    ['a\\', 'syntax'],
    ['é', 'syntax'],
    ['a\tb', 'syntax'],
  ])('%j is refused: %s', (source, why) => {
    expect(compilePattern(source)).toEqual({ ok: false, why });
  });

  it.each([
    PATTERN,
    `(?:ST|US),(?:GS|NT),[+-] *${GROUPS}`,
    `[^=0-9]*${GROUPS}.*`,
    `(?:ab|cd){2,5}${GROUPS}`,
    `a{2,}${GROUPS}`,
    `x?y?z?${GROUPS}`,
    `\\(\\w{3}\\)\\s${GROUPS}[\\d.-]?`,
    '(?<value>\\d+(?:\\.\\d+)?)(?<stable>=|[!-])',
  ])('%j is taken', (source) => {
    expect(compilePattern(source)).toMatchObject({ ok: true });
  });

  it('has the groups it names', () => {
    const compiled = compilePattern(PATTERN);
    expect(compiled.ok && [...compiled.groups.keys()].sort()).toEqual([
      'net',
      'over',
      'stable',
      'unit',
      'unstable',
      'value',
    ]);
  });

  it('that is taken needs no time worth naming for any line, however it was made', () => {
    // Small alphabets and many repetitions: what is left after the check should be harmless, and what is not is refused.
    const atom = fc.constantFrom('a', 'b', '[ab]', '.', '(?:a|b)', '(?:ab|ba)', '(?:a|ab)', '(a)', ' ');
    const times = fc.constantFrom('', '', '?', '*', '+', '{2,8}', '{3}');
    const made = fc
      .array(fc.tuple(atom, times), { maxLength: 14 })
      .map((parts) => `${parts.map(([one, many]) => one + many).join('')}${GROUPS}`);
    let taken = 0;
    fc.assert(
      fc.property(
        made,
        fc.array(fc.constantFrom('a', 'b', ' '), { minLength: 64, maxLength: 64 }),
        (source, line) => {
          const compiled = compilePattern(source);
          if (!compiled.ok) return;
          taken += 1;
          const from = performance.now();
          compiled.expression.exec(line.join(''));
          expect(performance.now() - from).toBeLessThan(50);
        },
      ),
      { numRuns: 3000 },
    );
    expect(taken).toBeGreaterThan(100);
  });

  it('fits exactly the lines the engine says, for those that are taken', () => {
    const compiled = compilePattern(`(?:ab|cd){2,3}e*${GROUPS}`);
    const lines = ['abcd1=', 'ababab2=', 'abee3=', 'abcdeeee4=', 'abababab5=', 'abcd1'];
    expect(lines.map((line) => compiled.ok && compiled.expression.test(line))).toEqual([
      true,
      true,
      false,
      true,
      false,
      false,
    ]);
  });
});
