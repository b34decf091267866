import { sayCautionsEs } from './say-cautions-es.ts';
import { antesDe, cargas } from './say-parts-es.ts';
import { doseFirst, type SayWords, TRY_OUT } from './say-words.ts';
import type { NotDone, RefusedAloud } from './saying.ts';
import { spokenName } from './spoken-name.ts';
import { spokenNumber, spokenTag } from './spoken-number.ts';
import { spokenQuantity, spokenSurely } from './spoken-quantity.ts';

const refused: Readonly<Record<RefusedAloud, string>> = {
  'offer-ended': 'Esta dosis ya terminó. Pese otra vez.',
  'not-this-jug': 'Esa jarra no es. Mire el número.',
  'needs-held-press': 'Mire la pantalla y mantenga el botón.',
  'platform-not-ready': 'No. La plataforma no muestra peso.',
  'cannot-pass-stop': 'No. Esto es un alto.',
  'no-such-tag': 'Ese arete no es de ningún animal.',
  'tag-refused': 'Eso no es un arete de animal.',
  'jug-out-of-life': 'No. Esta jarra ya no sirve.',
  'jug-weighs-otherwise': 'No. Ese no es el peso de esta jarra.',
  'jugs-weigh-alike': 'Dos jarras pesan igual. Lea el número.',
  'bench-not-ready': 'La báscula de mesa no muestra nada.',
  'bench-moving': 'Deje quieta la báscula de mesa.',
  'not-written': 'No anotado. El disco no lo aceptó. Pulse otra vez.',
};

const notDone: Readonly<Record<NotDone, string>> = {
  'nothing-offered': 'No anotado. No hay dosis que dar.',
  'no-animal': 'Diga primero el arete.',
  'undo-over': 'Ya es tarde para eso. Corrija en el libro.',
  'moved-on': 'No. Algo cambió mientras hablaba.',
  'not-by-voice': 'No anotado. Pulse el botón.',
  'nothing-said': 'No hay nada que repetir.',
  other: 'No se hizo. Mire la pantalla.',
};

/** Spanish sayings, as a herd owner is spoken to. The point is said "punto", as it stands on the screen. */
export const sayEs: SayWords = {
  animal: ({ name }) => spokenName(name, 'es'),
  called: ({ name, number }) =>
    [spokenName(name, 'es'), ...(number === null ? [] : [`arete ${spokenTag(number, 'es')}`])].join(', '),
  weight: ({ weight }) => spokenSurely(weight, 'es'),
  who: () => '¿Quién es?',
  'which-animal': () => '¿Cuál animal es? Mire y toque.',
  dose: ({ total, marks, syringe }) =>
    doseFirst(spokenSurely(total, 'es'), [
      ...(marks.length > 1 ? [cargas(marks)] : []),
      `jeringa de ${spokenQuantity(syringe, 'es')}`,
    ]),
  agitate: ({ how }) => (how === 'shake' ? 'Agítelo primero.' : 'Revuélvalo primero.'),
  caution: ({ code, strength }) => {
    const say = sayCautionsEs[code];
    return { stop: `Alto. ${say}`, ask: `Mire primero. ${say}`, note: `Nota. ${say}` }[strength];
  },
  'jug-in-hand': ({ number }) => `¿Es la jarra ${spokenNumber(number, 'es')}?`,
  logged: ({ name, outcome }) => {
    const what = { whole: '', part: ' Parte de la dosis.', 'spat-out': ' La escupió.' }[outcome];
    return `Anotado, ${spokenName(name, 'es')}.${what}`;
  },
  clear: ({ of, from }) => {
    const subject = of === 'milk' ? 'Leche' : 'Carne';
    if (from === 'unknown') return `${subject}: plazo desconocido. Pregunte al veterinario.`;
    if (from === 'not-for-people') return `${subject} no apta para personas.`;
    if (from === 'provisional') return `${subject}: plazo desconocido. El reloj no está puesto.`;
    return `${subject} no antes ${antesDe(from)}.`;
  },
  undone: ({ how }) =>
    ({
      'not-given': 'Retirado. No se dio.',
      'wrong-animal': 'Corregido al otro animal.',
      'wrong-volume': 'Volumen corregido.',
    })[how],
  skipped: () => 'Saltado.',
  unanswered: ({ name }) => `¿Se dio la dosis de ${spokenName(name, 'es')}? Responda en la pantalla.`,
  deck: ({ trouble }) =>
    ({
      fault: 'La báscula avisa una falla.',
      net: 'La báscula está en neto. Póngala en bruto.',
      'not-zeroed': 'No está en cero. Despeje la plataforma.',
      leaning: 'Algo se apoya en la plataforma.',
      'two-animals': '¿Hay dos? Uno a la vez.',
    })[trouble],
  pour: ({ call }) =>
    ({
      slow: 'Despacio.',
      stop: 'Alto.',
      over: 'Se pasó. Está bien, las dosis lo siguen.',
      'jug-lifted': 'Ponga la jarra en su lugar.',
      'scale-moved': 'Tocaron la báscula.',
      'scale-tared': 'Se tocó la tara. Mire la pantalla.',
    })[call],
  powder: ({ call }) =>
    ({
      whole: 'Todo el polvo está dentro.',
      part: 'Solo una parte del polvo.',
      'too-much': 'Demasiado polvo. Mezcle de nuevo.',
      'jug-lifted': 'Ponga la jarra en su lugar.',
      'jug-changed': 'La jarra cambió. Mezcle de nuevo.',
    })[call],
  link: ({ role, now }) => {
    const device = { platform: 'Plataforma', bench: 'Báscula de mesa', wand: 'Lector' }[role];
    const state = {
      lost: 'sin conexión. Revise el cable.',
      silent: 'en silencio.',
      back: 'de vuelta.',
    }[now];
    return `${device} ${state}`;
  },
  'tag-unknown': ({ tag }) => `Arete desconocido, termina en ${spokenTag(tag.slice(-6), 'es')}.`,
  refused: ({ why }) => refused[why],
  'wrong-number': ({ heard, wanted }) =>
    `No anotado. Oí ${spokenSurely(heard, 'es')}. La dosis es ${spokenSurely(wanted, 'es')}.`,
  'not-done': ({ why }) => notDone[why],
  'not-understood': () => 'Dígalo otra vez.',
  'try-out': () => sayEs.dose(TRY_OUT),
};
