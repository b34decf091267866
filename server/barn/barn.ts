import { createHash } from 'node:crypto';
import { scaleInCheck } from '../../core/checking/scale-check-state.ts';
import type { Event } from '../../core/hub/event.ts';
import type { Holder } from '../../core/hub/exchange.ts';
import { grams } from '../../core/quantity/mass.ts';
import { deckEvents } from '../../core/round/deck-events.ts';
import { BLANK_BENCH, feedBench } from '../../core/weighing/bench.ts';
import { BLANK_DECK, type Deck, feedDeck } from '../../core/weighing/deck.ts';
import type { Reading, ScaleRole, ScaleSpec } from '../../core/weighing/reading.ts';
import type { WandRead } from '../../hardware/wand/wand-driver.ts';
import type { Answer, Intent, Refusal } from '../../shared/intent.ts';
import type { ScreenLanguage } from '../../shared/language.ts';
import type { DeviceRole } from '../../shared/tray.ts';
import { NotReceived } from '../store/receive.ts';
import { readLongUnread, readUnread, takeIn } from '../sync/take-in.ts';
import type { BarnContext } from './barn-context.ts';
import { type AskedBy, carryOut } from './carry-out.ts';
import { heedClockSet } from './clock-intents.ts';
import { diskTroubleOf } from './disk.ts';
import { needAtHand } from './need-at-hand.ts';
import { refusalDetail } from './refusal-detail.ts';
import { refusalWords } from './refusal-words.ts';
import { runScaleCheck } from './run-check.ts';
import { runMixing } from './run-mixing.ts';
import { runRound } from './run-round.ts';
import { runSyringeCheck } from './run-syringe-check.ts';

/** The most a scale is believed to carry where nothing is configured, in grams. */
const USUAL_CAPACITY: Readonly<Record<ScaleRole, number>> = { platform: 300_000, bench: 30_000 };
/** How many answers are remembered for repeats within one run. */
const REMEMBERED = 2000;

/** The one owner of the state: everything that happens passes through here, one thing at a time. */
export interface Barn {
  readonly context: BarnContext;
  /**
   * Handles an intent once; its id again gets the first answer. Never throws. `by` is how the person asked, `person` who
   * asked where it is not who works at the kiosk.
   */
  handle(intent: Intent, by?: AskedBy, person?: string | null): Answer;
  /** Takes a reading of a scale whose link is ready. */
  read(reading: Reading): void;
  /** Takes what the wand read; it becomes an intent like any other. */
  wandRead(read: WandRead): void;
  /** Hears of a link: one that is not ready makes everything its scale said worth nothing. */
  linkChanged(role: DeviceRole, ready: boolean): void;
  /**
   * Takes in what other kiosks told, all or nothing; answers which life does not follow what is held here. `more` is to come.
   * Throws when the disk refuses.
   */
  receive(events: readonly Event[], more: boolean): ReturnType<Holder['take']>;
  /** Tells events of a life after a sequence anew. Throws when the disk refuses. */
  retell(life: string, sequence: number): void;
  /** Lets time pass: offers and weights run out. */
  tick(): void;
  /** Hears that something changed which is shown but not kept here, such as the setting up of a device. */
  changed(): void;
  /** Grows with every change, so that whoever shows the state knows when to look. */
  revision(): number;
  /** Has somebody told after every change; the function it comes to ends that. */
  watch(watcher: () => void): () => void;
}

/** Who listens to the barn. */
export interface BarnListener {
  /** After every change, whatever it was. */
  changed(): void;
  /** After an intent was handled for the first time. */
  answered(intent: Intent, answer: Answer): void;
}

/** Makes the barn around a context. `log` hears of failures a person should be able to look up. */
export function createBarn(
  context: BarnContext,
  log: (message: string, error: unknown) => void,
  listener?: BarnListener,
): Barn {
  const answers = new Map<string, { digest: string; answer: Answer }>();
  const watchers = new Set<() => void>();
  let revision = 0;
  let keeping = context.disk.trouble() === null;
  const changed = () => {
    revision += 1;
    listener?.changed();
    for (const watcher of watchers) watcher();
  };

  /** A damaged file is left as it was found: nothing that happens is let near it. */
  const damaged = () => context.disk.trouble() === 'damaged';

  function specOf(role: ScaleRole): ScaleSpec {
    const device = context.config.devices[role];
    return {
      capacity: grams(device?.capacityGrams ?? USUAL_CAPACITY[role]),
      division: device?.divisionGrams === undefined ? null : grams(device.divisionGrams),
    };
  }

  /** Runs a change of memory and disk together: if the disk refuses, memory is as it was. */
  function whole<T>(change: () => T): T {
    const before = context.memory;
    const putClockBack = context.clock.remember();
    try {
      return context.store.whole(change);
    } catch (error) {
      context.memory = before;
      putClockBack();
      context.disk.failed(error);
      throw error;
    }
  }

  function fromDevice(change: () => void): void {
    try {
      whole(change);
    } catch (error) {
      // The disk told of itself; it would be told again at every tick.
      if (diskTroubleOf(error) === null) log('an event of a device could not be written', error);
    }
    changed();
  }

  function setDeck(deck: Deck): void {
    const before = context.memory.deck;
    context.memory = { ...context.memory, deck };
    const events = deckEvents(before, deck);
    if (events.length === 0) changed();
    else fromDevice(() => events.forEach((event) => void runRound(context, event)));
  }

  /** A scale that went away: what it said is worth nothing, and a check of it begins again. */
  function endsReadings(role: ScaleRole): void {
    if (role === 'bench') {
      context.memory = { ...context.memory, bench: BLANK_BENCH };
      runMixing(context, { type: 'weighed' });
    } else context.memory = { ...context.memory, deadWeight: BLANK_BENCH };
    runScaleCheck(context, { type: 'link-lost', role });
    if (role === 'bench') runSyringeCheck(context, { type: 'link-lost' });
  }

  /** Has all that a change writes stand in a person's name; who works at the kiosk stays who it was. */
  function inTheNameOf<T>(person: string | null, change: () => T): T {
    if (person === null) return change();
    const { person: atKiosk } = context.memory.settings;
    const named = (name: string) => {
      context.memory = { ...context.memory, settings: { ...context.memory.settings, person: name } };
    };
    named(person);
    const done = change();
    named(atKiosk);
    return done;
  }

  function firstTime(intent: Intent, digest: string, by: AskedBy, person: string | null): Answer {
    try {
      const refused = whole(() => {
        readUnread(context);
        const writes = context.store.handled.writes();
        const why = inTheNameOf(person, () => carryOut(context, intent, by));
        const at = Math.round(context.clock.now().wallMs);
        if (why === null && context.store.handled.writes() > writes)
          context.store.handled.add(intent.id, digest, at);
        return why;
      });
      if (refused === null) return { ok: true, id: intent.id, repeated: false };
      const { language } = context.memory.settings;
      return refusal(intent.id, refused, {
        language,
        detail: refusalDetail(intent, refused, context.memory),
      });
    } catch (error) {
      log(`intent ${intent.type} could not be written`, error);
      return refusal(intent.id, 'not-written', context.memory.settings);
    }
  }

  function handle(intent: Intent, by: AskedBy = 'screen', person: string | null = null): Answer {
    if (damaged()) return refusal(intent.id, 'not-written', context.memory.settings);
    const digest = createHash('sha256').update(JSON.stringify(intent)).digest('base64');
    const known = answers.get(intent.id);
    const onDisk = known === undefined ? context.store.handled.digestOf(intent.id) : undefined;
    const before = known?.digest ?? onDisk;
    if (before !== undefined && before !== digest)
      return refusal(intent.id, 'id-reused', context.memory.settings);
    if (known !== undefined) return { ...known.answer, repeated: true };
    if (onDisk !== undefined) return { ok: true, id: intent.id, repeated: true };
    const answer = firstTime(intent, digest, by, person);
    // A record the disk refused may be tried again under the same id: it was not handled.
    if (answer.ok || answer.code !== 'not-written') answers.set(intent.id, { digest, answer });
    const [oldest] = answers.keys();
    if (answers.size > REMEMBERED && oldest !== undefined) answers.delete(oldest);
    changed();
    listener?.answered(intent, answer);
    return answer;
  }

  return {
    context,
    handle,
    read(reading) {
      if (damaged()) return;
      const { memory } = context;
      if (reading.role === 'platform' && scaleInCheck(memory.check) === 'platform') {
        const deadWeight = feedBench(memory.deadWeight, reading, specOf('platform'));
        context.memory = { ...memory, deadWeight };
        return changed();
      }
      if (reading.role === 'platform')
        return setDeck(feedDeck(memory.deck, reading, specOf('platform'), needAtHand(memory)));
      context.memory = { ...memory, bench: feedBench(memory.bench, reading, specOf('bench')) };
      runMixing(context, { type: 'weighed' });
      changed();
    },
    wandRead(read) {
      if (read.kind === 'tag') handle({ type: 'read-tag', id: context.newId(), tag: read.tag });
    },
    linkChanged(role, ready) {
      if (damaged()) return;
      if (!ready && role !== 'wand') endsReadings(role);
      if (role === 'platform' && !ready) return setDeck(BLANK_DECK);
      changed();
    },
    receive(events, more) {
      if (damaged()) throw new Error('the file is damaged: nothing is taken in');
      try {
        whole(() => takeIn(context, events, more));
        return null;
      } catch (error) {
        if (error instanceof NotReceived) return { why: error.why, life: error.life };
        throw error;
      } finally {
        changed();
      }
    },
    retell: (life, sequence) => whole(() => context.store.events.retell(life, sequence)),
    tick() {
      if (damaged()) return;
      context.disk.look(context.clock.now().uptimeMs);
      const keepsNow = context.disk.trouble() === null;
      fromDevice(() => {
        heedClockSet(context);
        readLongUnread(context);
        if (keepsNow !== keeping) runRound(context, { type: 'world-changed', what: 'disk' });
        runScaleCheck(context, { type: 'tick' });
        runSyringeCheck(context, { type: 'tick' });
        runRound(context, { type: 'tick' });
      });
      keeping = keepsNow;
    },
    changed,
    revision: () => revision,
    watch(watcher) {
      watchers.add(watcher);
      return () => void watchers.delete(watcher);
    },
  };
}

/** The answer to an intent that was not carried out, in words of the screen's language. */
export function refusal(
  id: string | null,
  code: Refusal,
  { language = 'en', detail }: { language?: ScreenLanguage; detail?: string | undefined } = {},
): Answer {
  const words = refusalWords(code, language);
  return {
    ok: false,
    id,
    repeated: false,
    code,
    message: detail === undefined ? words : `${words} (${detail})`,
  };
}
