import { CAUTION_CODES } from '../../core/dosing/cautions.ts';
import type { KioskState } from '../../shared/state.ts';
import { acknowledged, type Ledger, type Sent, send } from './ledger.ts';

/** Kids small enough that a bottle lasts. */
const KIDS = ['Nettle', 'Sorrel', 'Thistle'];
/** A bottle with less left than this is followed by a new one, in millilitres. */
const LOW = 60;

/** The marks of a 3 mL syringe, in tenths. */
const MARKS = Array.from({ length: 30 }, (_, i) => i + 1);

/** What is noted of animals. */
export const NOTED = ['lame', 'scouring', 'off-feed'] as const;

/** A kid with the volume that its dose is. */
export interface Kid {
  readonly id: string;
  readonly volumeMl: number;
}

async function stateOf(base: string): Promise<KioskState> {
  return (await (await fetch(`${base}/api/state`)).json()) as KioskState;
}

/** Takes the bottle in hand, a new one where the old is low, and takes back what a killed round left given. */
export async function begin(base: string, ledger: Ledger): Promise<string> {
  let state = await stateOf(base);
  if (!state.jugs.some(({ remainingMl }) => remainingMl > LOW)) {
    const expiry = { year: new Date().getUTCFullYear() + 1, month: 12 };
    await send(base, ledger, {
      type: 'open-bottle',
      presentationId: 'fenbendazole-100',
      volumeMl: 1000,
      expiry,
    });
    state = await stateOf(base);
  }
  const jugId = state.jugs.find(({ remainingMl }) => remainingMl > LOW)?.id ?? '';
  await send(base, ledger, { type: 'take-jug', jugId });
  await send(base, ledger, { type: 'prove-jug', jugId, deliberate: true });
  for (const { id, corrections } of state.dayBook.slice(0, KIDS.length + 1))
    if (corrections.length === 0) await takeBack(base, ledger, id);
  return jugId;
}

function takeBack(base: string, ledger: Ledger, treatmentId: string): Promise<Sent> {
  return send(base, ledger, { type: 'correct', treatmentId, what: { kind: 'not-given' } });
}

/** Gives a kid its dose by the record of a group of one. */
export function give(base: string, ledger: Ledger, jugId: string, { id, volumeMl }: Kid): Promise<Sent> {
  return send(base, ledger, {
    type: 'give-group',
    jugId,
    animalIds: [id],
    animalId: id,
    volumeMl,
    accepted: [...CAUTION_CODES],
  });
}

/** Finds the volume each kid's dose is: the one mark of a syringe that the kiosk does not refuse. */
export async function learnKids(base: string, ledger: Ledger, jugId: string): Promise<Kid[]> {
  // One syringe alone, so that a dose is some number of its marks.
  await send(base, ledger, { type: 'set-syringes', syringeIds: ['syringe-3-by-0.1'] });
  const { animals } = await stateOf(base);
  const kids: Kid[] = [];
  for (const { id } of animals.filter(({ name }) => KIDS.includes(name))) {
    // The same mark may be one of two doubles, by which way it was worked out.
    for (const volumeMl of MARKS.flatMap((mark) => [...new Set([mark / 10, mark * 0.1])])) {
      const kid = { id, volumeMl };
      if ((await give(base, ledger, jugId, kid)).state !== 'acknowledged') continue;
      kids.push(kid);
      await takeBack(base, ledger, (await stateOf(base)).dayBook[0]?.id ?? '');
      break;
    }
  }
  if (kids.length < 2) throw new Error(`only ${kids.length} kids could be dosed`);
  return kids;
}

/**
 * Works until the kiosk answers no more: one page gives doses and takes them back, another writes notes, both as fast as
 * they are answered.
 */
export async function work(base: string, ledger: Ledger, jugId: string, kids: readonly Kid[]): Promise<void> {
  await Promise.all([doses(base, ledger, jugId, kids), notes(base, ledger, kids)]);
}

async function doses(base: string, ledger: Ledger, jugId: string, kids: readonly Kid[]): Promise<void> {
  for (let i = 0; ; i += 1) {
    const kid = kids[i % kids.length] as Kid;
    const given = await give(base, ledger, jugId, kid);
    if (given.state === 'unknown') return;
    if (given.state === 'refused')
      throw new Error(`a dose was refused after ${acknowledged(ledger, 'give-group').length}`);
    const state = await stateOf(base).catch(() => null);
    // A kiosk that is ending answers, but has no state to tell.
    if (state?.dayBook === undefined) return;
    const taken = await takeBack(base, ledger, state.dayBook[0]?.id ?? '');
    if (taken.state === 'unknown') return;
  }
}

async function notes(base: string, ledger: Ledger, kids: readonly Kid[]): Promise<void> {
  for (let i = 0; ; i += 1) {
    const noted = await send(base, ledger, {
      type: 'note-animal',
      animalId: kids[i % kids.length]?.id ?? '',
      note: NOTED[i % NOTED.length],
    });
    if (noted.state !== 'acknowledged') return;
  }
}
