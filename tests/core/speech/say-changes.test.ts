import { describe, expect, test } from 'vitest';
import { type SayMemory, sayChanges } from '../../../core/speech/say-changes.ts';
import type { SayScene } from '../../../core/speech/say-scene.ts';
import { utter } from '../../../core/speech/utterance.ts';
import { AT_REST, CLOVER, DOSE, LOGGED } from './scene.ts';

/** Goes through scenes, each a change of the one before; the words of the last change, its sounds and what it hushes. */
function through(...changes: Partial<SayScene>[]) {
  let memory: SayMemory | null = null;
  let scene: SayScene = AT_REST;
  let said = sayChanges(null, scene);
  memory = said.memory;
  for (const change of changes) {
    scene = { ...scene, ...change };
    said = sayChanges(memory, scene);
    memory = said.memory;
  }
  return {
    words: said.sayings.map((saying) => utter(saying, 'en').text),
    earcons: said.earcons,
    hush: said.hush,
  };
}

const links = (platform: SayScene['links']['platform']) => ({
  links: { platform, bench: 'ready', wand: 'ready' } as const,
});
const STOPPED = { code: 'too-young', strength: 'stop' } as const;
const ASKED = { code: 'weight-changed', strength: 'ask' } as const;
const ASKED_TOO = { code: 'age-unknown', strength: 'ask' } as const;
const NOTED = { code: 'extra-label', strength: 'note' } as const;

describe('the round', () => {
  test('nothing is said of the first moment, and nothing while nothing changes', () => {
    expect(sayChanges(null, { ...AT_REST, offer: DOSE }).sayings).toEqual([]);
    expect(through({})).toEqual({ words: [], earcons: [], hush: [] });
  });

  test('a weight is said with its sound, and asks who it is where nobody was named', () => {
    const said = through({ deck: 'held', weight: '15.4 kg' });
    expect(said.words).toEqual(['fifteen point four kilograms, one five point four', 'Who is it?']);
    expect(said.earcons).toEqual(['held']);
  });

  test('a settling animal has a sound of its own', () => {
    expect(through({ deck: 'stepping-on' }, { deck: 'settling' }).earcons).toEqual(['settle']);
  });

  test('a dose is said with its syringe and what to do first', () => {
    const said = through(
      { animal: CLOVER, deck: 'held', weight: '13.6 kg' },
      { step: 'offered', offer: DOSE, cautions: [NOTED] },
    );
    expect(said.words).toEqual([
      'three point three millilitres, six mil syringe',
      'Swirl it first.',
      'Note. Given on the word of the vet.',
    ]);
  });

  test('a note heard once is not said at every dose, until another jug is taken', () => {
    const next = { step: 'offered', offer: { ...DOSE, id: 'offer-2' } } as const;
    const first = { step: 'offered', offer: DOSE, cautions: [NOTED] } as const;
    const between = { step: 'visit', offer: null } as const;
    expect(through(first, between, next).words).toHaveLength(2);
    expect(through(first, between, { step: 'no-jug' }, next).words).toHaveLength(3);
  });

  test('an offer that ends is said no more', () => {
    expect(through({ step: 'offered', offer: DOSE }, { step: 'visit', offer: null }).hush).toContain('dose');
  });

  test('a stop comes alone; asks come one after the other as they are accepted', () => {
    const step = 'cautions';
    expect(through({ step, animal: CLOVER, cautions: [STOPPED, ASKED] }).words).toEqual([
      'Clover',
      'Stop. It is too young.',
    ]);
    const asks = { step, cautions: [ASKED, ASKED_TOO, NOTED] } as const;
    expect(through(asks).words).toEqual(['Look first. The weight moved. Did someone lean on it?']);
    expect(through(asks, { accepted: ['weight-changed'] }).words).toEqual(['Look first. How old is it?']);
    expect(through(asks, { accepted: ['weight-changed', 'age-unknown'] })).toMatchObject({
      words: [],
      hush: ['caution'],
    });
  });

  test('logged, and until when the milk is kept back', () => {
    const said = through({ step: 'logged', logged: LOGGED });
    expect(said.words).toEqual(['Logged, Clover.', 'Milk not before Friday evening.']);
    expect(said.earcons).toEqual(['logged']);
  });

  test('of one that gives no milk the meat; without a clock neither', () => {
    const dry = { ...LOGGED, inMilk: false };
    expect(through({ logged: dry }).words[1]).toBe('Meat time not known. Ask the vet.');
    expect(through({ logged: { ...LOGGED, provisional: true } }).words[1]).toBe(
      'Milk time not known. The clock is not set.',
    );
  });

  test('what is taken back is said, and its clear time no more', () => {
    const said = through({ correction: { atMs: 5, kind: 'not-given' } });
    expect(said).toMatchObject({ words: ['Taken back. Not given.'], hush: ['clear-milk', 'clear-meat'] });
  });

  test('a trouble of the deck is told once until the deck was empty', () => {
    expect(through({ deck: 'leaning' }).words).toEqual(['Something leans on the platform.']);
    expect(through({ deck: 'leaning' }, { deck: 'settling' }, { deck: 'leaning' }).words).toEqual([]);
    expect(through({ deck: 'leaning' }, { deck: 'empty' }, { deck: 'leaning' }).words).toHaveLength(1);
  });

  test('a jug to be proved, an unknown tag, an unanswered dose', () => {
    expect(through({ step: 'no-jug' }, { step: 'prove-jug', jug: '8' }).words).toEqual(['Is it jug eight?']);
    expect(through({ unknownTag: { tag: '840003123456789', at: 5 } }).words).toEqual([
      'Tag not known, ending four five six, seven eight nine.',
    ]);
    expect(through({ unanswered: { count: 1, name: '417' } }).words).toEqual([
      'Was the dose for four one seven given? Answer on the screen.',
    ]);
  });
});

describe('links', () => {
  test('a loss is told once however often it is tried again, and so is the coming back', () => {
    expect(through(links('lost'))).toMatchObject({
      words: ['Platform lost. Check the cable.'],
      earcons: ['fault'],
    });
    expect(through(links('lost'), links('waking'), links('lost')).words).toEqual([]);
    expect(through(links('lost'), links('waking'), links('ready')).words).toEqual(['Platform is back.']);
  });

  test('silence that ends in a loss is told as both; a device never there as neither', () => {
    expect(through(links('silent')).words).toEqual(['Platform silent.']);
    expect(through(links('silent'), links('lost')).words).toHaveLength(1);
    expect(through(links('absent'), links('waking'), links('ready')).words).toEqual([]);
  });
});

describe('the jug', () => {
  test('slow, then stop with its sound; a trembling reading calls neither again', () => {
    expect(through({ pour: 'pour' }, { pour: 'slow' }).words).toEqual(['Slow.']);
    const stopped = through({ pour: 'pour' }, { pour: 'slow' }, { pour: 'stop' });
    expect(stopped).toMatchObject({ words: ['Stop.'], earcons: ['stop'] });
    expect(through({ pour: 'pour' }, { pour: 'slow' }, { pour: 'stop' }, { pour: 'slow' }).words).toEqual([]);
    expect(
      through({ pour: 'pour' }, { pour: 'slow' }, { pour: 'stop' }, { pour: 'slow' }, { pour: 'stop' }).words,
    ).toEqual([]);
    expect(through({ pour: 'stop' }, { pour: 'over' }).words).toHaveLength(1);
  });

  test('a lifted jug is called back each time', () => {
    const lifted = { pour: 'jug-lifted' } as const;
    expect(through({ pour: 'slow' }, lifted, { pour: 'slow' }, lifted).words).toEqual(['Put the jug back.']);
  });

  test('the powder, and the end of a pour', () => {
    expect(through({ powder: 'none' }, { powder: 'part' }).words).toEqual(['Only part of the powder.']);
    expect(through({ pour: 'slow' }, { pour: null }).hush).toEqual(['pour']);
  });
});
