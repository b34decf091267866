import { liquidById } from '../../core/medicine/formulary.ts';
import { expiresAt, openBottle } from '../../core/mixing/bottle.ts';
import { millilitres } from '../../core/quantity/volume.ts';
import { pieces } from '../../core/stock/pieces.ts';
import type { Intent, Refusal } from '../../shared/intent.ts';
import type { BarnContext } from './barn-context.ts';
import { runRound } from './run-round.ts';
import { takeFromStock } from './stock-intents.ts';

/** Puts a bottle in use beside the jugs. One past its printed month is refused, as far as the clock can tell. */
export function openNewBottle(
  barn: BarnContext,
  intent: Extract<Intent, { type: 'open-bottle' }>,
): Refusal | null {
  const { memory, clock, store, config } = barn;
  const found = liquidById(memory.formulary, intent.presentationId);
  if (found === undefined || memory.retiredIds.has(intent.presentationId)) return 'no-such-bottle';
  const lot = memory.stock.find(({ id }) => id === intent.lotId);
  if (intent.lotId != null && lot?.presentationId !== intent.presentationId) return 'no-such-lot';
  const now = clock.now();
  // What is printed on a lot was read when it came in.
  const { expiry } = lot ?? intent;
  if (clock.isTrusted() && expiresAt(expiry, config.timeZone) <= now.wallMs) return 'bottle-expired';
  const bottle = openBottle({
    ...found,
    id: barn.newId(),
    number: 1 + Math.max(0, ...memory.jugs.map((jug) => jug.number)),
    volume: lot?.holds ?? millilitres(intent.volumeMl),
    expiry,
    now: { ...now, wallMs: Math.round(now.wallMs) },
    timeZone: config.timeZone,
    by: memory.settings.person,
    clockTrusted: clock.isTrusted(),
    stock:
      lot === undefined
        ? null
        : { lotId: lot.id, lot: lot.lot, expiresAtMs: lot.expiresAtMs, pieces: pieces(1) },
  });
  store.jugs.add(bottle, now.board);
  if (bottle.clockTrusted) clock.sawRecordAt(bottle.mixedAtMs);
  barn.memory = { ...memory, jugs: store.jugs.atHand() };
  if (bottle.stock !== null) takeFromStock(barn, bottle.stock.lotId, bottle.stock.pieces, bottle.id);
  runRound(barn, { type: 'world-changed', what: 'jugs' });
  return null;
}
