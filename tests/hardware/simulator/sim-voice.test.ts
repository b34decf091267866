import { describe, expect, it } from 'vitest';
import { grams } from '../../../core/quantity/mass.ts';
import { smaDialogueHeard, startSmaDialogue } from '../../../hardware/scale/sma-about.ts';
import { BracketFramer } from '../../../hardware/serial/bracket-framer.ts';
import {
  SIM_VOICES,
  type SimFormat,
  type SimScaleBody,
  type SimVoice,
} from '../../../hardware/simulator/sim-voice.ts';
import { bytes } from '../bytes.ts';

const face = { unit: 'kg', division: grams(50) } as const;

/** A scale with 12.35 kg on it and a tare of 1 kg, that records which buttons were pressed. */
function setUp(format: SimFormat, willing = true) {
  const pressed: string[] = [];
  const body: SimScaleBody = {
    face,
    capacity: grams(150_000),
    shown: () => ({ steps: 247, moving: false, net: false, range: 'within' }),
    tare: () => ({ steps: 20, moving: false, net: false, range: 'within' }),
    press(button) {
      pressed.push(button);
      return willing;
    },
  };
  const voice: SimVoice = SIM_VOICES[format];
  const listen = voice.listen?.(body);
  const ask = (text: string) =>
    (listen?.(bytes(text)) ?? []).map((reply) => Buffer.from(reply()).toString('latin1'));
  return { ask, pressed };
}

describe('the voice of a simulated scale', () => {
  it('answers the polled protocol: weight, fine weight, tare, and what it does not know', () => {
    const { ask, pressed } = setUp('sma');
    expect(ask('\nW\r\nP\r')).toEqual(['\n 1G       12.35kg \r', '\n 1G       12.35kg \r']);
    expect(ask('\nH\r')).toEqual(['\n 1g      12.350kg \r']);
    expect(ask('\nM\r')).toEqual(['\n 1T        1.00kg \r']);
    expect(ask('\nT\r\nC\r\nZ\r')).toHaveLength(3);
    expect(pressed).toEqual(['tare', 'clear', 'zero']);
    expect(ask('\nL\r')).toEqual(['\n?\r']);
  });

  it('says with dashes that it refuses zero', () => {
    expect(setUp('sma', false).ask('\nZ\r')).toEqual(['\nE1GM ----------kg \r']);
  });

  it('holds both dialogues of the polled protocol to their end', () => {
    const { ask } = setUp('sma');
    const framer = new BracketFramer({ begin: 0x0a, end: 0x0d, maxFrame: 64 });
    for (const which of ['about', 'information'] as const) {
      let dialogue = startSmaDialogue(which);
      while (dialogue.ask !== null) {
        const [reply = ''] = ask(Buffer.from(dialogue.ask).toString());
        for (const one of framer.push(bytes(reply))) {
          if (one.kind === 'line') dialogue = smaDialogueHeard(dialogue, one.text);
        }
      }
      if (which === 'about') expect(dialogue.about).toMatchObject({ protocol: '2/1.0', revision: '1' });
      else {
        expect(dialogue.about).toMatchObject({ commands: 'HPTMC' });
        expect(dialogue.about.ranges[0]?.division.value).toBeCloseTo(50, 9);
        expect(dialogue.about.ranges[0]?.capacity?.value).toBe(150_000);
      }
    }
  });

  it.each([
    ['weight-status', 'W\r', ['\n  12.35kg\r\n0p0\r\x03']],
    ['weight-status', 'X\r', ['\n?\r\x03']],
    ['weight-status-inverse', 'W\r', ['\n   12.35KG\r3p0\x03']],
    ['stx-weight', 'W', ['\x02  12.35\r']],
    ['stx-weight', 'A', ['\x02?x\r']],
    ['stability-line', 'SI\r\n', ['SI         12.35 kg \r\n']],
    ['stability-line', 'XY\r\n', ['ES\r\n']],
    ['s-si', 'SI\r\nS\r\n', ['S S      12.35 kg\r\n', 'S S      12.35 kg\r\n']],
    ['s-si', 'toString\r\n', ['ES\r\n']],
  ] as const)('answers in %s to %j', (format, asked, replies) => {
    expect(setUp(format).ask(asked)).toEqual(replies);
  });

  it.each([
    ['s-si', 'Z\r\nT\r\nTAC\r\n', ['Z A\r\n', 'T S\r\n', 'TAC A\r\n'], ['zero', 'tare', 'clear']],
    ['stability-line', 'Z\r\nT\r\n', ['Z A\r\n', 'T A\r\n'], ['zero', 'tare']],
    ['weight-status', 'Z\r', ['\n  12.35kg\r\n0p0\r\x03'], ['zero']],
  ] as const)('does in %s what %j asks', (format, asked, replies, buttons) => {
    const { ask, pressed } = setUp(format);
    expect(ask(asked)).toEqual(replies);
    expect(pressed).toEqual(buttons);
  });

  it('hears a question that came in pieces', () => {
    for (const format of ['sma', 'weight-status', 's-si'] as const) {
      const { ask } = setUp(format);
      const question = format === 'sma' ? '\nW\r' : format === 's-si' ? 'SI\r\n' : 'W\r';
      const replies = [...question].flatMap((character) => ask(character));
      expect(replies).toHaveLength(1);
    }
  });
});
