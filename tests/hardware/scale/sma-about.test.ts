import { describe, expect, it } from 'vitest';
import { smaDialogueHeard, startSmaDialogue } from '../../../hardware/scale/sma-about.ts';

/** Runs a dialogue against these answers, in order; gives what was asked and what was learned. */
function run(which: 'about' | 'information', answers: readonly string[]) {
  const asked: string[] = [];
  let dialogue = startSmaDialogue(which);
  for (const answer of answers) {
    if (dialogue.ask !== null) asked.push(Buffer.from(dialogue.ask).toString());
    dialogue = smaDialogueHeard(dialogue, answer);
  }
  return { asked, about: dialogue.about, over: dialogue.ask === null };
}

describe('what a polled scale says of itself', () => {
  // Both dialogues as printed in published manuals (facts §1.1).
  it('is learned line by line until it says that this is the end', () => {
    const { asked, about, over } = run('about', [
      'SMA:1/1.0',
      'MFG:none',
      'MOD:A1',
      'REV:01.01.9',
      'SN :148388723',
      'END:',
    ]);
    expect(asked).toEqual(['\nA\r', '\nB\r', '\nB\r', '\nB\r', '\nB\r', '\nB\r']);
    expect(over).toBe(true);
    expect(about).toMatchObject({
      protocol: '1/1.0',
      maker: 'none',
      model: 'A1',
      revision: '01.01.9',
      serial: '148388723',
    });
  });

  it('includes capacity, division and commands on the second level', () => {
    const { asked, about, over } = run('information', [
      'SMA:2/1.0',
      'TYP:S',
      'CAP:kg :6000:1:0',
      'CMD:HPTMCR',
      'END:',
    ]);
    expect(asked).toEqual(['\nI\r', '\nN\r', '\nN\r', '\nN\r', '\nN\r']);
    expect(over).toBe(true);
    expect(about).toMatchObject({
      protocol: '2/1.0',
      type: 'S',
      commands: 'HPTMCR',
      ranges: [
        { unit: 'kg', capacity: { unit: 'g', value: 6_000_000 }, division: { unit: 'g', value: 1000 } },
      ],
    });
  });

  it('ends where a scale stops early and refuses the next question', () => {
    const { about, over } = run('about', ['SMA:1/1.0', 'MFG:none', 'REV:1', '?']);
    expect(over).toBe(true);
    expect(about).toMatchObject({ revision: '1', serial: null });
  });

  it('holds several ranges, and leaves a capacity open whose decimals are not told', () => {
    const { about } = run('information', ['CAP:kg_:3000:5:1', 'CAP:lb :60.0:2:1', 'END:']);
    expect(about.ranges).toEqual([
      { unit: 'kg', capacity: null, division: { unit: 'g', value: 500 } },
      {
        unit: 'lb',
        capacity: { unit: 'g', value: 60 * 453.59237 },
        division: { unit: 'g', value: 0.2 * 453.59237 },
      },
    ]);
  });

  it.each(['CAP:kg :6000:0:0', 'CAP:t  :6:1:0', 'CAP:kg :six:1:0', 'CAP:kg :6000:1:9', 'CAP:'])(
    'learns nothing from the broken line %j',
    (line) => {
      expect(run('information', [line, 'END:']).about.ranges).toEqual([]);
    },
  );

  it('passes over a weight between the lines without asking anew', () => {
    const dialogue = startSmaDialogue('about');
    const after = smaDialogueHeard(dialogue, ' 1G         943g  ');
    expect(after.ask).toBe(dialogue.ask);
    expect(after.about).toEqual(dialogue.about);
  });

  it('ends by itself with a scale that never ends, and stays ended', () => {
    let dialogue = startSmaDialogue('about');
    for (let line = 0; line < 24; line += 1) dialogue = smaDialogueHeard(dialogue, 'MOD:again');
    expect(dialogue.ask).toBeNull();
    expect(smaDialogueHeard(dialogue, 'MOD:other')).toBe(dialogue);
  });
});
