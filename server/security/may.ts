import type { Intent, Refusal } from '../../shared/intent.ts';
import type { DeviceRight } from '../../shared/network.ts';
import type { Visitor } from './visitor.ts';

/** What it takes: nothing, a paired device of this right or one that has more, or to stand at the board. */
type Takes = 'nothing' | DeviceRight | 'board';

const RANK: Readonly<Record<DeviceRight, number>> = { follow: 0, act: 1, 'set-up': 2 };

/**
 * Routes that take more or less than is usual: to read takes a device that follows, all else the board itself. The files
 * of the page and what is not there are no secret.
 */
const ROUTES: Readonly<Record<string, Takes>> = {
  'GET /': 'nothing',
  'GET /*': 'nothing',
  'POST /api/pair': 'nothing',
  'GET /api/session': 'nothing',
  'POST /api/session': 'act',
  'DELETE /api/session': 'act',
  'GET /api/network/pairing': 'board',
  // Each intent is judged by what it asks for.
  'POST /api/intents': 'follow',
  'POST /api/photos': 'act',
  'POST /api/exports/:name': 'act',
  'POST /api/import': 'set-up',
  'POST /api/weather-import': 'set-up',
};
/** Of these a person must be at work on the device: what they bring in stands in somebody's name. */
const BY_A_PERSON = ['POST /api/photos', 'POST /api/import', 'POST /api/weather-import'];

/**
 * Why a visitor may not ask for a route, or `null`. `route` is its pattern; one that nobody registered has none.
 */
export function whyNotRoute(visitor: Visitor, method: string, route: string | undefined): Refusal | null {
  const reads = method === 'GET' || method === 'HEAD';
  const name = `${method === 'HEAD' ? 'GET' : method} ${route}`;
  const takes = route === undefined ? 'nothing' : (ROUTES[name] ?? (reads ? 'follow' : 'board'));
  return whyNot(visitor, takes) ?? (BY_A_PERSON.includes(name) ? needsPerson(visitor) : null);
}

/** What each intent takes, by whomever it is sent and however it comes. */
const INTENTS: Readonly<Record<Intent['type'], Exclude<Takes, 'nothing' | 'follow'>>> = {
  'mix-start': 'act',
  'mix-amount': 'act',
  'mix-mode': 'act',
  'mix-dilution': 'act',
  'mix-look': 'act',
  'mix-water': 'act',
  'mix-jug-placed': 'act',
  'mix-jug-is-empty': 'act',
  'mix-lot': 'act',
  'mix-poured': 'act',
  'mix-powder-in': 'act',
  'mix-dissolved': 'act',
  'mix-in-service': 'act',
  'mix-cancel': 'act',
  'open-bottle': 'act',
  'jug-discard': 'act',
  'take-jug': 'act',
  'prove-jug': 'act',
  'prove-on-bench': 'act',
  'put-jug-down': 'act',
  'follow-up': 'act',
  'read-tag': 'act',
  'pick-animal': 'act',
  accept: 'act',
  give: 'act',
  'give-group': 'act',
  skip: 'act',
  answer: 'act',
  correct: 'act',
  next: 'act',
  enrol: 'act',
  'edit-animal': 'act',
  retag: 'act',
  'retag-visual': 'act',
  'leave-herd': 'act',
  score: 'act',
  'take-back-score': 'act',
  'say-weight': 'act',
  'weight-off-feed': 'act',
  'note-animal': 'act',
  'stock-receive': 'act',
  'stock-throw-away': 'act',
  'stock-count': 'act',
  'log-egg-count': 'act',
  'correct-egg-count': 'act',
  'set-egg-mean': 'act',
  'plan-test': 'act',
  'end-test': 'act',
  'check-start': 'act',
  'check-weight': 'act',
  'check-next': 'act',
  'check-skip': 'act',
  'check-cancel': 'act',
  'syringe-check-start': 'act',
  'syringe-check-next': 'act',
  'syringe-check-leave-out': 'act',
  'syringe-check-cancel': 'act',
  'syringe-check-forget': 'act',
  zero: 'act',
  tray: 'act',
  'set-paper': 'act',
  'merge-animals': 'set-up',
  'part-animals': 'set-up',
  'import-read': 'set-up',
  'import-judge': 'set-up',
  'import-accept': 'set-up',
  'import-drop': 'set-up',
  'weather-read': 'set-up',
  'weather-judge': 'set-up',
  'weather-accept': 'set-up',
  'weather-drop': 'set-up',
  'set-latitude': 'set-up',
  'set-worm-season': 'set-up',
  'set-worm-rule': 'set-up',
  'read-apart': 'act',
  'set-currency': 'set-up',
  approve: 'set-up',
  'withdraw-approval': 'set-up',
  'keep-presentation': 'set-up',
  'keep-rule': 'set-up',
  'retire-own': 'set-up',
  'set-syringes': 'set-up',
  'set-check-rule': 'set-up',
  'ports-look': 'set-up',
  'device-listen': 'set-up',
  'device-try': 'set-up',
  'device-lines': 'set-up',
  'device-patterns': 'set-up',
  'device-prove': 'set-up',
  'device-no-tare': 'set-up',
  'device-division': 'set-up',
  'device-keep': 'set-up',
  'device-drop': 'set-up',
  'device-remove': 'set-up',
  'set-time-zone': 'set-up',
  'set-language': 'set-up',
  'set-weight-unit': 'set-up',
  'set-voice': 'set-up',
  'try-voice': 'set-up',
  'back-up-now': 'set-up',
  // Who works here and who stands at the board, what it looks like there, and whether its microphone is recorded are the board's own.
  'add-person': 'board',
  'remove-person': 'board',
  'set-person': 'board',
  'set-panel': 'board',
  'set-clock': 'board',
  'set-face': 'board',
  'set-ear': 'board',
  'wipe-recordings': 'board',
  'safety-read': 'board',
  'first-start': 'board',
  'leave-demo': 'board',
  'practice-begin': 'board',
  'practice-end': 'board',
  'join-farm': 'board',
  'leave-farm': 'board',
  // Whoever is let in lets nobody else in.
  'set-network': 'board',
  'pair-device': 'board',
  'pair-stop': 'board',
  'revoke-device': 'board',
  'forget-pin': 'board',
};

/** Why a visitor may not have an intent carried out, or `null`. */
export function whyNotIntent(visitor: Visitor, type: Intent['type']): Refusal | null {
  return whyNot(visitor, INTENTS[type]) ?? needsPerson(visitor);
}

function whyNot(visitor: Visitor, takes: Takes): Refusal | null {
  if (takes === 'nothing' || visitor.kind === 'board') return null;
  if (visitor.kind === 'stranger') return 'not-paired';
  if (takes === 'board') return visitor.right === 'follow' ? 'follows-only' : 'board-only';
  if (RANK[visitor.right] >= RANK[takes]) return null;
  return visitor.right === 'follow' ? 'follows-only' : 'needs-set-up';
}

function needsPerson(visitor: Visitor): Refusal | null {
  return visitor.kind === 'device' && visitor.person === null ? 'needs-pin' : null;
}
