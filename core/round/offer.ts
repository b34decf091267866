import type { Caution } from '../dosing/cautions.ts';
import type { Dose } from '../dosing/dose.ts';
import type { Animal } from '../herd/animal.ts';
import type { Approval } from '../medicine/approval.ts';
import type { RegimenInForce } from '../medicine/in-force.ts';
import type { Jug } from '../mixing/jug.ts';
import type { Moment } from '../moment.ts';
import type { Mass } from '../quantity/mass.ts';
import type { Held } from '../weighing/settle.ts';
import type { Proof } from './proof.ts';

/** A weight held in this visit, with the wall time it was held at. */
export interface VisitWeight {
  readonly held: Held;
  /** Milliseconds since 1970. */
  readonly atMs: number;
}

/** What the dose of a group rests on: the weight of its heaviest, from the day book. */
export interface GroupBasis {
  readonly heaviestId: string;
  readonly heaviestName: string;
  readonly heaviest: Mass;
  /** Milliseconds since 1970 of that weight. */
  readonly weighedAtMs: number;
  /** How many animals the dose was for. */
  readonly members: number;
}

/** A dose held out to be given: bound to one animal, weight, jug, rule and syringe, and to nothing else. */
export interface Offer {
  readonly id: string;
  readonly animal: Animal;
  readonly jug: Jug;
  readonly regimen: RegimenInForce;
  readonly approval: Approval;
  readonly weight: VisitWeight;
  /** How the jug was proved to be the one in hand; `null` in records from before that was kept. */
  readonly proof: Proof | null;
  /** `null` for a dose by a weight held in its visit. Where set, `weight` is the animal's last one, and nothing was offered. */
  readonly group: GroupBasis | null;
  readonly dose: Dose;
  /** All cautions that applied; the asks among them were accepted by a held press. */
  readonly cautions: readonly Caution[];
  readonly accepted: readonly Caution[];
  /** Uptime in milliseconds at which it lapses. */
  readonly expiresAtUptimeMs: number;
  /** The same instant as wall time, milliseconds since 1970. */
  readonly expiresAtMs: number;
}

/** How long a weight may be dosed on after it was held: keepers weigh, draw up, then drench elsewhere. */
export const WEIGHT_LIFE_MS = 10 * 60_000;

/** Why an offer ended without an answer. */
export type LapseReason =
  | 'timed-out'
  | 'new-animal'
  | 'identity-doubted'
  | 'reweighed'
  | 'jug-changed'
  | 'syringes-changed'
  | 'rules-changed';

/** Whether an offer has run out. */
export function hasExpired(offer: Offer, now: Moment): boolean {
  return now.uptimeMs >= offer.expiresAtUptimeMs;
}
