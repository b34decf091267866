/** An intent with what was heard of it: `unknown` where the kiosk died before it answered. */
export interface Sent {
  readonly intent: Readonly<Record<string, unknown>> & { readonly id: string; readonly type: string };
  state: 'acknowledged' | 'refused' | 'unknown';
  /** Monotonic nanoseconds at which it was known to be acknowledged. */
  knownAt: bigint | null;
}

/** All that was sent, in the order it was sent. */
export type Ledger = Map<string, Sent>;

/** The acknowledged intents of a type. */
export function acknowledged(ledger: Ledger, type: string): Sent[] {
  return [...ledger.values()].filter(({ intent, state }) => intent.type === type && state === 'acknowledged');
}

let ids = 0;

/** Sends an intent and enters it; answers whether the kiosk lives. */
export async function send(
  base: string,
  ledger: Ledger,
  wish: Record<string, unknown> & { type: string },
): Promise<Sent> {
  ids += 1;
  const sent: Sent = {
    intent: { id: `fault-${process.pid}-${ids}`, ...wish },
    state: 'unknown',
    knownAt: null,
  };
  ledger.set(sent.intent.id, sent);
  await post(base, sent);
  return sent;
}

/** Posts an intent once more under its id, as a page does that heard no answer. */
export async function post(base: string, sent: Sent): Promise<{ ok: boolean; code?: string }> {
  try {
    const response = await fetch(`${base}/api/intents`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(sent.intent),
    });
    const answer = (await response.json()) as { ok?: boolean; code?: string };
    // A kiosk that is ending says so in the web server's own form: of the intent nothing is known.
    if (answer.ok === undefined) return { ok: false, code: 'ending' };
    sent.state = answer.ok ? 'acknowledged' : 'refused';
    if (answer.ok) sent.knownAt = process.hrtime.bigint();
    return { ...answer, ok: answer.ok };
  } catch {
    return { ok: false, code: 'no-answer' };
  }
}
