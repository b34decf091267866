/** A small generator of repeatable random numbers in [0, 1): the same seed gives the same animal. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** How an animal moves, as shares of its weight. Engineering assumptions, no source. */
const GRADES = {
  /** Breathing, and a little shifting of weight. */
  calm: { breath: 0.003, shift: 0.004, step: 0, stepsPerSecond: 0 },
  /** Shifting, and now and then a step. */
  restless: { breath: 0.005, shift: 0.015, step: 0.06, stepsPerSecond: 0.4 },
  /** Stepping all the time. */
  violent: { breath: 0.005, shift: 0.03, step: 0.15, stepsPerSecond: 2 },
} as const;
export type Grade = keyof typeof GRADES;

/** The load an animal puts on a deck over time: its weight, breathing 0.4 Hz, shifting 0.7 Hz, steps of 0.3 s. */
export function animalSignal(weightGrams: number, grade: Grade, seed: number): (ms: number) => number {
  const random = seeded(seed);
  const { breath, shift, step, stepsPerSecond } = GRADES[grade];
  const [phaseA, phaseB] = [random() * 2 * Math.PI, random() * 2 * Math.PI];
  const [hzA, hzB] = [0.3 + random() * 0.3, 0.5 + random() * 0.4];
  const steps: { at: number; size: number }[] = [];
  for (let at = 0; stepsPerSecond > 0 && at < 30_000; at += (random() * 2000) / stepsPerSecond) {
    steps.push({ at, size: (random() * 2 - 1) * step });
  }
  return (ms) => {
    const s = ms / 1000;
    const slow =
      breath * Math.sin(2 * Math.PI * hzA * s + phaseA) + shift * Math.sin(2 * Math.PI * hzB * s + phaseB);
    let fast = 0;
    for (const { at, size } of steps) {
      if (at > ms) break;
      if (ms < at + 300) fast += size * Math.sin((Math.PI * (ms - at)) / 150);
    }
    return weightGrams * (1 + slow + fast);
  };
}
