import { Pace } from '../security/pace.ts';
import type { Claim } from './credentials.ts';

/** What a kiosk may ask: it waits for news every second and a half, and pushes what waited batch by batch. */
const KIOSK = { perSecond: 30, burst: 300 } as const;
/** How often a machine may ask as somebody who is not let in. */
const STRANGER = { perSecond: 1, burst: 30 } as const;
const MOST_KNOWN = 20_000;

/**
 * How often anybody may ask the hub. Each kiosk has a pace of its own, by the machine it asks from too, so that nobody else
 * can use it up. A machine that is turned away too often waits, but for those it has for company that were let in: many
 * kiosks may stand behind one address.
 */
export class Doorkeeper {
  readonly #kiosks = new Pace(KIOSK.perSecond, KIOSK.burst, MOST_KNOWN);
  readonly #strangers = new Pace(STRANGER.perSecond, STRANGER.burst);
  readonly #letIn = new Set<string>();
  readonly #nowMs: () => number;

  constructor(nowMs: () => number = () => performance.now()) {
    this.#nowMs = nowMs;
  }

  /** Whether a machine may ask as who it says it is. */
  mayAsk(sender: string, claim: Claim | null): boolean {
    const nowMs = this.#nowMs();
    if (claim === null || !this.#letIn.has(nameOf(claim))) {
      if (!this.#strangers.wouldAllow(sender, nowMs)) return false;
      if (claim === null) return true;
    }
    return this.#kiosks.allows(`${sender} ${claim.farm} ${claim.credential}`, nowMs);
  }

  /** Somebody is who it says it is. */
  letIn(claim: Claim): void {
    if (this.#letIn.size >= MOST_KNOWN) this.#letIn.clear();
    this.#letIn.add(nameOf(claim));
  }

  /** Somebody at a machine is not let in. */
  turnedAway(sender: string): void {
    this.#strangers.allows(sender, this.#nowMs());
  }
}

/** With its key: whoever only knows the rest is no company. */
const nameOf = ({ farm, credential, key }: Claim) => `${farm} ${credential} ${key}`;
