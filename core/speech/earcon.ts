/** Sounds that are no words: each is told by its rhythm and its pitch. */
export const EARCONS = ['settle', 'held', 'stop', 'logged', 'fault'] as const;
/** One of {@link EARCONS}. */
export type Earcon = (typeof EARCONS)[number];

/** Samples a second of every earcon. */
export const EARCON_RATE = 22_050;

interface Note {
  readonly hz: number;
  readonly ms: number;
  /** Silence after it. */
  readonly restMs: number;
}

/**
 * Between 500 and 2,000 Hz, where a small loudspeaker is loud, an animal's voice and machines are not loudest, and an
 * ageing ear still hears (common practice, no source).
 */
const SCORES: Readonly<Record<Earcon, readonly Note[]>> = {
  // One low soft note: it stands, wait.
  settle: [{ hz: 660, ms: 70, restMs: 0 }],
  // Two rising: the weight is there.
  held: [
    { hz: 880, ms: 90, restMs: 30 },
    { hz: 1320, ms: 170, restMs: 0 },
  ],
  // Four short high ones: hands off.
  stop: [
    { hz: 1760, ms: 70, restMs: 50 },
    { hz: 1760, ms: 70, restMs: 50 },
    { hz: 1760, ms: 70, restMs: 50 },
    { hz: 1760, ms: 70, restMs: 0 },
  ],
  // Three rising, the last one long: done.
  logged: [
    { hz: 784, ms: 90, restMs: 20 },
    { hz: 988, ms: 90, restMs: 20 },
    { hz: 1175, ms: 280, restMs: 0 },
  ],
  // Two long falling: something is wrong.
  fault: [
    { hz: 932, ms: 260, restMs: 70 },
    { hz: 587, ms: 420, restMs: 0 },
  ],
};

/** How long a note takes to rise and to fall: without it a loudspeaker clicks. */
const EDGE_MS = 8;
/** The loudest sample; half of full scale leaves room for what plays beside it. */
const PEAK = 0.5;

/** An earcon as samples between -1 and 1, at {@link EARCON_RATE}. */
export function renderEarcon(earcon: Earcon): Float32Array {
  const notes = SCORES[earcon];
  const samples = new Float32Array(notes.reduce((sum, note) => sum + samplesIn(note.ms + note.restMs), 0));
  let at = 0;
  for (const { hz, ms, restMs } of notes) {
    const length = samplesIn(ms);
    for (let i = 0; i < length; i += 1) {
      samples[at + i] = PEAK * edge(i, length) * Math.sin((2 * Math.PI * hz * i) / EARCON_RATE);
    }
    at += length + samplesIn(restMs);
  }
  return samples;
}

/** How long an earcon lasts, in milliseconds. */
export function earconMs(earcon: Earcon): number {
  return SCORES[earcon].reduce((sum, { ms, restMs }) => sum + ms + restMs, 0);
}

function samplesIn(ms: number): number {
  return Math.round((ms * EARCON_RATE) / 1000);
}

/** A raised cosine up at the start and down at the end. */
function edge(i: number, length: number): number {
  const width = samplesIn(EDGE_MS);
  const near = Math.min(i, length - 1 - i) / width;
  return near >= 1 ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * near);
}
