import type { SyringeCheckRecordView } from '../../shared/syringe-check.ts';

/** English words of the syringe check. */
export const enSyringeCheck = {
  door: 'Check a syringe',
  which: 'Which syringe?',
  none: 'No syringe is on hand',
  never: 'not checked',
  mark: 'Fill it to which mark?',
  markHint: 'Ten draws to one mark, into a cup.',
  needs: (step: string) => `needs steps of ${step}`,
  benchCounts: (step: string) => `Bench steps now: ${step}.`,
  water: 'How warm is the water?',
  cup: 'Put a cup on the bench',
  cupHint: 'Half full is best. Leave it there to the end.',
  cupOn: 'It stands there',
  draw: (volume: string) => `Draw ${volume}, empty it into the cup`,
  count: (done: number, of: number) => `${done + 1} of ${of}`,
  leftOut: (count: number) => (count === 0 ? '' : `${count} left out.`),
  sinceLast: 'since the last one',
  delivered: 'It is in',
  leaveOut: 'Went wrong',
  cancel: 'Hold to stop',
  resting: 'Let it rest…',
  verdict: { within: 'GOOD', unclear: 'UNSURE', outside: 'OFF' } satisfies Record<
    SyringeCheckRecordView['verdict'],
    string
  >,
  advice: {
    within: 'It measures as its standard asks.',
    unclear: 'Some draws pass the limit. A steadier hand or a finer scale may help.',
    outside: 'It is off by more than its standard allows. Better use another.',
  } satisfies Record<SyringeCheckRecordView['verdict'], string>,
  short: {
    within: (day: string) => `Good ${day}`,
    unclear: (day: string) => `Unsure ${day}`,
    outside: (day: string) => `Off ${day}`,
  } satisfies Record<SyringeCheckRecordView['verdict'], (day: string) => string>,
  bias: 'On average',
  tooMuch: (volume: string, share: string) => `${volume} (${share} %) too much`,
  tooLittle: (volume: string, share: string) => `${volume} (${share} %) too little`,
  doubt: 'Known to',
  spread: 'One draw varies',
  plusMinus: (volume: string) => `± ${volume}`,
  allowed: 'Its standard allows',
  atMark: (volume: string) => `at ${volume}`,
  done: 'Done',
  forget: 'Forget this',
};
