import { sayCautionsEn } from './say-cautions-en.ts';
import { spokenDay, spokenDraws } from './say-parts-en.ts';
import { doseFirst, type SayWords, TRY_OUT } from './say-words.ts';
import type { NotDone, RefusedAloud } from './saying.ts';
import { spokenName } from './spoken-name.ts';
import { spokenNumber, spokenTag } from './spoken-number.ts';
import { spokenAmount, spokenSurely } from './spoken-quantity.ts';

const refused: Readonly<Record<RefusedAloud, string>> = {
  'offer-ended': 'This dose has ended. Weigh again.',
  'not-this-jug': 'Not that jug. Look at the number.',
  'needs-held-press': 'Look at the screen, and hold the button.',
  'platform-not-ready': 'No. The platform shows no weight.',
  'cannot-pass-stop': 'No. This is a stop.',
  'no-such-tag': 'That tag belongs to no animal.',
  'tag-refused': 'That is not an animal tag.',
  'jug-out-of-life': 'No. This jug is no longer good.',
  'jug-weighs-otherwise': 'No. That is not the weight of this jug.',
  'jugs-weigh-alike': 'Two jugs weigh the same. Read the number on it.',
  'bench-not-ready': 'The bench scale shows nothing.',
  'bench-moving': 'Let the bench scale rest.',
  'not-written': 'Not logged. The disk did not take it. Press again.',
};

const notDone: Readonly<Record<NotDone, string>> = {
  'nothing-offered': 'Not logged. There is no dose to give.',
  'no-animal': 'Say the tag first.',
  'undo-over': 'Too late for that. Correct it in the day book.',
  'moved-on': 'No. Something changed while you spoke.',
  'not-by-voice': 'Not logged. Press the button.',
  'nothing-said': 'Nothing to say again.',
  other: 'Not done. Look at the screen.',
};

/** English sayings: short, the number first, whole words only, so that the engine spells nothing. */
export const sayEn: SayWords = {
  animal: ({ name }) => spokenName(name, 'en'),
  called: ({ name, number }) =>
    [spokenName(name, 'en'), ...(number === null ? [] : [`tag ${spokenTag(number, 'en')}`])].join(', '),
  weight: ({ weight }) => spokenSurely(weight, 'en'),
  who: () => 'Who is it?',
  'which-animal': () => 'Which animal is it? Look, then tap.',
  dose: ({ total, marks, syringe }) =>
    doseFirst(spokenSurely(total, 'en'), [
      ...(marks.length > 1 ? [spokenDraws(marks)] : []),
      `${spokenAmount(syringe, 'en')} mil syringe`,
    ]),
  agitate: ({ how }) => (how === 'shake' ? 'Shake it first.' : 'Swirl it first.'),
  caution: ({ code, strength }) => {
    const say = sayCautionsEn[code];
    return { stop: `Stop. ${say}`, ask: `Look first. ${say}`, note: `Note. ${say}` }[strength];
  },
  'jug-in-hand': ({ number }) => `Is it jug ${spokenNumber(number, 'en')}?`,
  logged: ({ name, outcome }) => {
    const what = { whole: '', part: ' Part of the dose.', 'spat-out': ' Spat out.' }[outcome];
    return `Logged, ${spokenName(name, 'en')}.${what}`;
  },
  clear: ({ of, from }) => {
    const subject = of === 'milk' ? 'Milk' : 'Meat';
    if (from === 'unknown') return `${subject} time not known. Ask the vet.`;
    if (from === 'not-for-people') return `${subject} not for people.`;
    if (from === 'provisional') return `${subject} time not known. The clock is not set.`;
    return `${subject} not before ${spokenDay(from)}.`;
  },
  undone: ({ how }) =>
    ({
      'not-given': 'Taken back. Not given.',
      'wrong-animal': 'Corrected to the other animal.',
      'wrong-volume': 'Volume corrected.',
    })[how],
  skipped: () => 'Skipped.',
  unanswered: ({ name }) => `Was the dose for ${spokenName(name, 'en')} given? Answer on the screen.`,
  deck: ({ trouble }) =>
    ({
      fault: 'The scale reports a fault.',
      net: 'The scale is in net. Set it to gross.',
      'not-zeroed': 'Not at zero. Clear the platform.',
      leaning: 'Something leans on the platform.',
      'two-animals': 'Two on it? One at a time.',
    })[trouble],
  pour: ({ call }) =>
    ({
      slow: 'Slow.',
      stop: 'Stop.',
      over: 'Over. That is fine, doses follow it.',
      'jug-lifted': 'Put the jug back.',
      'scale-moved': 'The scale was touched.',
      'scale-tared': 'The scale was tared. Look at the screen.',
    })[call],
  powder: ({ call }) =>
    ({
      whole: 'All the powder is in.',
      part: 'Only part of the powder.',
      'too-much': 'Too much powder. Mix afresh.',
      'jug-lifted': 'Put the jug back.',
      'jug-changed': 'The jug was changed. Mix afresh.',
    })[call],
  link: ({ role, now }) => {
    const device = { platform: 'Platform', bench: 'Bench scale', wand: 'Wand' }[role];
    return `${device} ${{ lost: 'lost. Check the cable.', silent: 'silent.', back: 'is back.' }[now]}`;
  },
  'tag-unknown': ({ tag }) => `Tag not known, ending ${spokenTag(tag.slice(-6), 'en')}.`,
  refused: ({ why }) => refused[why],
  'wrong-number': ({ heard, wanted }) =>
    `Not logged. I heard ${spokenSurely(heard, 'en')}. The dose is ${spokenSurely(wanted, 'en')}.`,
  'not-done': ({ why }) => notDone[why],
  'not-understood': () => 'Say it again.',
  'try-out': () => sayEn.dose(TRY_OUT),
};
