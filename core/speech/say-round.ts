import type { Earcon } from './earcon.ts';
import type { Part, SayMemory } from './say-changes.ts';
import type { SayScene } from './say-scene.ts';
import type { DeckTrouble, SaidClear, Saying } from './saying.ts';
import { spokenTime } from './spoken-day.ts';
import type { SayKey } from './utterance.ts';

/** What belongs to one visit and is over with it. */
const OF_A_VISIT: readonly SayKey[] = ['animal', 'weight', 'dose', 'agitate', 'caution', 'note', 'deck'];
const TROUBLES: readonly string[] = ['fault', 'net', 'not-zeroed', 'leaning', 'two-animals'];

/** The round: who, how heavy, what to look at, how much, and that it is written down. */
export function sayRound(before: SayMemory, scene: SayScene): Part {
  const was = before.scene;
  const parts = [
    sayJug(was, scene),
    sayDeck(before, scene),
    sayVisit(was, scene),
    sayCaution(was, scene),
    sayOffer(before, scene),
    sayLogged(was, scene),
    sayRest(was, scene),
  ];
  return {
    sayings: parts.flatMap(({ sayings }) => sayings ?? []),
    earcons: parts.flatMap(({ earcons }) => earcons ?? []),
    hush: parts.flatMap(({ hush }) => hush ?? []),
    memory: Object.assign({}, ...parts.map(({ memory }) => memory ?? {})),
  };
}

function sayJug(was: SayScene, is: SayScene): Part {
  const asked =
    is.step === 'prove-jug' && is.jug !== null && (was.step !== 'prove-jug' || was.jug !== is.jug);
  return {
    sayings: asked && is.jug !== null ? [{ what: 'jug-in-hand', number: is.jug }] : [],
    hush: was.step === 'prove-jug' && is.step !== 'prove-jug' ? ['jug'] : [],
    ...(is.step === 'no-jug' || is.step === 'prove-jug' ? { memory: { notesTold: [] } } : {}),
  };
}

function sayDeck({ scene: was, deckTold }: SayMemory, is: SayScene): Part {
  if (is.deck === 'empty' || is.deck === 'held' || is.deck === 'blank') return { memory: { deckTold: [] } };
  const working = is.step !== 'no-jug' && is.step !== 'prove-jug';
  const trouble = troubleOf(is);
  if (working && trouble !== null && !deckTold.includes(trouble)) {
    return {
      sayings: [{ what: 'deck', trouble }],
      earcons: trouble === 'fault' ? ['fault'] : [],
      memory: { deckTold: [...deckTold, trouble] },
    };
  }
  return { earcons: working && is.deck === 'settling' && was.deck === 'stepping-on' ? ['settle'] : [] };
}

function troubleOf({ deck }: SayScene): DeckTrouble | null {
  return TROUBLES.includes(deck) ? (deck as DeckTrouble) : null;
}

function sayVisit(was: SayScene, is: SayScene): Part {
  const sayings: Saying[] = [];
  const earcons: Earcon[] = [];
  if (is.animal !== null && is.animal.id !== was.animal?.id && !is.animal.called) {
    sayings.push({ what: 'animal', name: is.animal.name });
  }
  if (is.weight !== null && is.weight !== was.weight) {
    sayings.push({ what: 'weight', weight: is.weight });
    earcons.push('held');
    if (is.animal === null) sayings.push({ what: 'who' });
  }
  if (is.step === 'which-animal' && was.step !== 'which-animal') sayings.push({ what: 'which-animal' });
  const over = was.animal !== null && is.animal === null;
  const anew = was.weight !== null && is.weight === null;
  return { sayings, earcons, hush: over || anew ? OF_A_VISIT : [] };
}

/** The caution that waits for the keeper: a stop, else the first ask not yet accepted. */
function waiting({ step, cautions, accepted }: SayScene) {
  if (step !== 'cautions') return null;
  const stop = cautions.find(({ strength }) => strength === 'stop');
  return (
    stop ?? cautions.find(({ code, strength }) => strength === 'ask' && !accepted.includes(code)) ?? null
  );
}

function sayCaution(was: SayScene, is: SayScene): Part {
  const [last, next] = [waiting(was), waiting(is)];
  if (next === null) return { hush: last === null ? [] : ['caution'] };
  const same = last?.code === next.code && was.animal?.id === is.animal?.id && was.weight === is.weight;
  return { sayings: same ? [] : [{ what: 'caution', ...next }] };
}

function sayOffer({ scene: was, notesTold }: SayMemory, is: SayScene): Part {
  const { offer } = is;
  if (offer === null) return { hush: was.offer === null ? [] : OF_A_VISIT };
  if (offer.id === was.offer?.id) return {};
  const { total, marks, syringe, agitate } = offer;
  const notes = is.cautions.filter(({ code, strength }) => strength === 'note' && !notesTold.includes(code));
  return {
    sayings: [
      { what: 'dose', total, marks, syringe },
      { what: 'agitate', how: agitate },
      ...notes.map((note): Saying => ({ what: 'caution', ...note })),
    ],
    memory: { notesTold: [...notesTold, ...notes.map(({ code }) => code)] },
  };
}

function sayLogged(was: SayScene, is: SayScene): Part {
  const { logged } = is;
  if (logged === null || logged.id === was.logged?.id) return {};
  const { name, outcome } = logged;
  // Who gives milk must know of the milk; of the others the meat is what is used first.
  const of = logged.inMilk ? 'milk' : 'meat';
  return {
    sayings: [
      { what: 'logged', name, outcome },
      { what: 'clear', of, from: saidClear(logged, of, is) },
    ],
    earcons: ['logged'],
  };
}

function saidClear(
  logged: NonNullable<SayScene['logged']>,
  of: 'milk' | 'meat',
  { nowMs, timeZone }: SayScene,
): SaidClear {
  const clear = logged[of];
  if (clear.kind !== 'at') return clear.kind;
  return logged.provisional ? 'provisional' : spokenTime(clear.atMs, nowMs, timeZone);
}

function sayRest(was: SayScene, is: SayScene): Part {
  const sayings: Saying[] = [];
  const { correction } = is;
  // An older one comes to the front where newer rows leave memory: that is no correction made now.
  const made = correction !== null && correction.atMs > (was.correction?.atMs ?? 0);
  if (made && correction.kind !== 'vet-time') sayings.push({ what: 'undone', how: correction.kind });
  const { name } = is.unanswered;
  if (is.unanswered.count > was.unanswered.count && name !== null) sayings.push({ what: 'unanswered', name });
  if (is.unknownTag !== null && is.unknownTag.at !== was.unknownTag?.at) {
    sayings.push({ what: 'tag-unknown', tag: is.unknownTag.tag });
  }
  return { sayings, hush: made ? ['clear-milk', 'clear-meat'] : [] };
}
