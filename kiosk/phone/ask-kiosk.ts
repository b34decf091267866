import type { LetIn } from '../../shared/network.ts';

/** Asks the kiosk to take a code or a PIN; `null` where it did not answer. */
export async function askKiosk(path: string, body: object): Promise<LetIn | null> {
  try {
    const response = await fetch(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    const answer: unknown = await response.json();
    return typeof answer === 'object' && answer !== null && 'ok' in answer ? (answer as LetIn) : null;
  } catch {
    return null;
  }
}
