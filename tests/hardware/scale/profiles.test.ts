import { describe, expect, it } from 'vitest';
import { SCALE_PROFILE_IDS, scaleProfile, settingsTrouble } from '../../../hardware/scale/profiles.ts';
import { bytes } from '../bytes.ts';

const PATTERN = '(?<stable>ST|US),(?<value>\\d+\\.\\d+)';

describe('the scale profiles', () => {
  it('are found by the ids that a configuration may name, each by its own', () => {
    expect(SCALE_PROFILE_IDS).toEqual([
      'sma',
      'sma-high',
      'st-gs',
      'weight-status',
      'weight-status-inverse',
      'stx-weight',
      'header-comma',
      'value-unit',
      'stability-line',
      'blank-unit',
      'stx-etx-short',
      'stx-etx-long',
      's-si',
      's-sir',
      'status-words',
      'pattern',
    ]);
    expect(SCALE_PROFILE_IDS.map((id) => scaleProfile(id)?.id)).toEqual(SCALE_PROFILE_IDS);
  });

  it('are undefined for any other id', () => {
    for (const id of ['wand-line', 'constructor', '', 'SMA']) expect(scaleProfile(id)).toBeUndefined();
  });

  it('start at 9600 bits a second, blank after a second of silence, and ask again before', () => {
    for (const id of SCALE_PROFILE_IDS) {
      const profile = scaleProfile(id);
      expect(profile).toMatchObject({ defaultBaud: 9600, silentAfterMs: 1000 });
      expect(2 * (profile?.poll?.replyWithinMs ?? 0)).toBeLessThan(1000);
    }
  });

  it('give a new framer for each connection', () => {
    for (const id of SCALE_PROFILE_IDS) {
      const profile = scaleProfile(id);
      expect(profile?.createFramer()).not.toBe(profile?.createFramer());
    }
  });

  it('ask for nothing but a weight by themselves', () => {
    const polls = SCALE_PROFILE_IDS.map((id) => scaleProfile(id)?.poll?.bytes).filter(
      (one) => one !== undefined,
    );
    expect(new Set(polls.map((one) => Buffer.from(one).toString()))).toEqual(
      new Set(['\nW\r', '\nH\r', 'W\r', 'W', 'SI\r\n', 'SIR\r\n']),
    );
  });

  it.each([
    ['sma', { zero: '\nZ\r', tare: '\nT\r', clearTare: '\nC\r' }],
    ['sma-high', { zero: '\nZ\r', tare: '\nT\r', clearTare: '\nC\r' }],
    ['weight-status', { zero: 'Z\r' }],
    ['stability-line', { zero: 'Z\r\n', tare: 'T\r\n' }],
    ['s-si', { zero: 'Z\r\n', tare: 'T\r\n', clearTare: 'TAC\r\n' }],
    ['s-sir', { zero: 'Z\r\n', tare: 'T\r\n', clearTare: 'TAC\r\n' }],
    ['st-gs', {}],
    ['status-words', {}],
  ])('know the commands of %s', (id, commands) => {
    const expected = Object.fromEntries(Object.entries(commands).map(([name, text]) => [name, bytes(text)]));
    expect(scaleProfile(id)?.commands).toEqual(expected);
  });

  it('ask for a proof where manuals contradict each other or the unit is the word of the keeper', () => {
    expect(SCALE_PROFILE_IDS.filter((id) => scaleProfile(id)?.needsProof)).toEqual([
      'weight-status',
      'weight-status-inverse',
      'stx-weight',
      'stx-etx-short',
      'status-words',
      'pattern',
    ]);
  });
});

describe('a format that does not tell gross from net', () => {
  const WEIGHTS: readonly (readonly [string, string, boolean])[] = [
    ['header-comma', 'ST,+00012.34 kg', false],
    ['value-unit', '      12.34 kg', false],
    ['stability-line', 'SI         12.34 kg ', false],
    ['blank-unit', '+    12.34 kg ', false],
    ['weight-status', '0012.34kg\r\n00\r', true],
    ['stx-weight', '012.34', true],
    ['stx-etx-short', '   12.34M', true],
    ['s-si', 'S S      12.34 kg', true],
  ];

  it.each(WEIGHTS)('weighs no animal (%s)', (id, text) => {
    const profile = scaleProfile(id, { unit: 'kg' });
    expect(profile?.decode(text, 'platform', 0)).toEqual({ kind: 'fault', fault: 'net-unknown', text });
    expect(profile?.decode(text, 'bench', 0)).toMatchObject({ kind: 'reading', reading: { net: false } });
  });

  it.each(WEIGHTS)(
    'weighs one on the word that no tare is ever taken, where it takes it (%s)',
    (id, text, takes) => {
      const decoded = scaleProfile(id, { unit: 'kg', noTare: true })?.decode(text, 'platform', 0);
      if (takes)
        expect(decoded).toMatchObject({ kind: 'reading', reading: { net: false, mass: { value: 12340 } } });
      else expect(decoded).toMatchObject({ kind: 'fault', fault: 'net-unknown' });
      const trouble = settingsTrouble(id, { unit: 'kg', noTare: true }).map((one) => one.setting);
      expect(trouble.includes('noTare')).toBe(!takes);
    },
  );

  it('does not count a weight as gross that says it is net, whatever the keeper vouched for', () => {
    const decoded = scaleProfile('stx-etx-short', { unit: 'kg', noTare: true })?.decode(
      '   12.34N',
      'platform',
      0,
    );
    expect(decoded).toMatchObject({ kind: 'reading', reading: { net: true } });
  });
});

describe('the settings of a scale', () => {
  it.each([
    ['sma', {}, []],
    ['sma', { line: '7e1' as const }, []],
    ['sma', { unit: 'kg' as const }, [{ setting: 'unit', why: 'not-used' }]],
    ['stx-weight', {}, [{ setting: 'unit', why: 'missing' }]],
    ['stx-weight', { unit: 'kg' as const, noTare: true }, []],
    ['blank-unit', {}, []],
    ['status-words', { unit: 'lb' as const }, []],
    ['pattern', {}, [{ setting: 'pattern', why: 'missing' }]],
    ['pattern', { pattern: PATTERN, unit: 'kg' as const }, []],
    ['pattern', { pattern: '(a+)+' }, [{ setting: 'pattern', why: 'nested-repeat' }]],
    ['pattern', { pattern: 'x' }, [{ setting: 'pattern', why: 'no-value' }]],
    ['no such format', { unit: 'kg' as const }, []],
  ])('of %s are checked: %j', (id, settings, trouble) => {
    expect(settingsTrouble(id, settings)).toEqual(trouble);
  });

  it('leave the frame refused by name where they are missing', () => {
    expect(scaleProfile('pattern')?.decode('ST,1.0', 'bench', 0)).toMatchObject({ fault: 'not-set-up' });
    expect(scaleProfile('stx-weight')?.decode('012.34', 'bench', 0)).toMatchObject({ fault: 'unit-not-set' });
  });

  it('put seven bits and parity under a format, its question and its commands', () => {
    const profile = scaleProfile('sma', { line: '7e1' });
    // Printable text with an odd number of ones in a byte gets the eighth bit: W, CR and Z have, LF has not.
    expect(profile?.poll?.bytes).toEqual(Uint8Array.of(0x0a, 0xd7, 0x8d));
    expect(profile?.commands.zero).toEqual(Uint8Array.of(0x0a, 0x5a, 0x8d));
    const framed = profile?.createFramer().push(Uint8Array.of(0x0a, 0x3f, 0x8d));
    expect(framed).toEqual([{ kind: 'line', text: '?' }]);
  });
});
