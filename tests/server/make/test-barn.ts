import type { Animal } from '../../../core/herd/animal.ts';
import { newcomer } from '../../../core/herd/herd-animal.ts';
import { grams, kilograms } from '../../../core/quantity/mass.ts';
import { mgPerMl } from '../../../core/quantity/strength.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import type { Reading } from '../../../core/weighing/reading.ts';
import { type Barn, createBarn } from '../../../server/barn/barn.ts';
import type { BarnContext } from '../../../server/barn/barn-context.ts';
import type { Clock } from '../../../server/barn/clock.ts';
import { NO_DISK } from '../../../server/barn/disk.ts';
import { defaultSettings, loadMemory } from '../../../server/barn/memory.ts';
import { KioskConfig } from '../../../server/config/kiosk-config.ts';
import { type MedicinesFile, NOTHING_OWN } from '../../../server/formulary/own-medicines.ts';
import { createHerdFile } from '../../../server/herd/herd-file.ts';
import { createPhotos } from '../../../server/herd/photos.ts';
import { createWeatherImport } from '../../../server/season/weather-import.ts';
import { createStore, type Store } from '../../../server/store/store.ts';
import { NO_FARM } from '../../../server/sync/farm.ts';
import type { Intent } from '../../../shared/intent.ts';
import type { LinkStatus } from '../../../shared/shed.ts';
import { makeScaleCheck } from '../../core/make/scale-check.ts';
import { closedNetwork } from './closed-network.ts';

/** A clock moved by hand, starting at noon of a spring day. */
export class HandClock implements Clock {
  uptimeMs = 1_000_000;
  wallMs = Date.UTC(2027, 3, 12, 12, 0, 0);
  trusted = true;
  now() {
    return { uptimeMs: this.uptimeMs, wallMs: this.wallMs };
  }
  isTrusted() {
    return this.trusted;
  }
  builtAtMs = Date.UTC(2026, 0, 1);
  floorMs() {
    return this.builtAtMs;
  }
  isSetByServer() {
    return false;
  }
  sawRecordAt() {}
  sawStartAt() {}
  tell() {}
  wasSet() {
    return null;
  }
  remember() {
    return () => {};
  }
  /** Lets both clocks run. */
  pass(ms: number) {
    this.uptimeMs += ms;
    this.wallMs += ms;
  }
}

/** An intent that need not name its id. */
export type Wish = Intent extends infer I
  ? I extends Intent
    ? Omit<I, 'id'> & { id?: string }
    : never
  : never;

/** A barn on a real database with hands on its clock and links. */
export interface TestBarn {
  readonly barn: Barn;
  readonly clock: HandClock;
  readonly store: Store;
  readonly links: Record<'platform' | 'bench' | 'wand', LinkStatus>;
  /** Failures the barn reported. */
  readonly failures: string[];
  /** Sends an intent without having to name its id. */
  send(intent: Wish): ReturnType<Barn['handle']>;
  /** Feeds the platform for a while at 10 Hz. */
  weigh(weight: number, ms: number): void;
}

let ids = 0;

/** Where a test that enters no medicine of its own keeps them. */
const noMedicinesFile: MedicinesFile = {
  read: () => NOTHING_OWN,
  append: () => {
    throw new Error('this barn has no data folder');
  },
};

/**
 * A barn over a database file (or `:memory:`), with one goat, one jug, an approval and two syringes unless it exists.
 *
 * `extra` puts parts of its surroundings in place of the plain ones.
 */
export function testBarn(
  path = ':memory:',
  prepare: (store: Store) => void = furnish,
  extra: Partial<BarnContext> = {},
): TestBarn {
  const store = createStore(path);
  if (store.animals.all().length === 0) prepare(store);
  const clock = new HandClock();
  const links: TestBarn['links'] = { platform: 'ready', bench: 'ready', wand: 'ready' };
  const failures: string[] = [];
  const config = KioskConfig.parse({ people: ['Wren', 'Finch'] });
  const barn = createBarn(
    {
      memory: loadMemory(store, defaultSettings(config)),
      store,
      clock,
      disk: NO_DISK,
      config,
      newId: () => `made-${++ids}`,
      linkOf: (role) => links[role],
      zero: () => 'no-command',
      medicines: noMedicinesFile,
      photos: createPhotos(null, () => `made-${++ids}`),
      herdFile: createHerdFile({
        folder: null,
        now: () => clock.wallMs,
        newId: () => `made-${++ids}`,
        changed: () => {},
        log: (message) => failures.push(message),
      }),
      weatherImport: createWeatherImport({
        folder: null,
        now: () => clock.wallMs,
        newId: () => `made-${++ids}`,
        changed: () => {},
        log: (message) => failures.push(message),
      }),
      setup: 'not-in-demo',
      network: closedNetwork(),
      backUpNow: () => false,
      farm: NO_FARM,
      tryVoice: () => {},
      wipeRecordings: () => {},
      settle: null,
      tray: null,
      leaveDemo: null,
      beginPractice: null,
      endPractice: null,
      ...extra,
    },
    (message) => failures.push(message),
  );
  return {
    barn,
    clock,
    store,
    links,
    failures,
    send: (intent) => barn.handle({ id: `sent-${++ids}`, ...intent } as Intent),
    weigh(weight, ms) {
      for (let passed = 0; passed < ms; passed += 100) {
        clock.pass(100);
        barn.read(platformReading(weight, clock.uptimeMs));
      }
    },
  };
}

function platformReading(weight: number, at: number): Reading {
  return {
    role: 'platform',
    mass: grams(weight),
    division: grams(50),
    stability: 'stable',
    net: false,
    zero: weight === 0,
    at,
  };
}

/** The goat every test barn keeps. */
export const GOAT: Animal = {
  id: 'goat-1',
  name: 'Teasel',
  species: 'goat',
  class: 'female',
  tag: '998000000000777',
  inMilk: false,
  bornAtMs: null,
  bredAtMs: null,
  malesRemovedAtMs: null,
  lastWeight: { mass: kilograms(15), atMs: Date.UTC(2027, 2, 1) },
};

function furnish(store: Store): void {
  store.whole(() => {
    store.animals.add(newcomer(GOAT), 'Wren');
    store.animals.add(newcomer({ ...GOAT, id: 'goat-2', name: 'Campion', tag: null }), 'Wren');
  });
  furnishShed(store);
}

/** Puts a jug, an approval, two syringes and a checked platform into a store: all but the animals. */
export function furnishShed(store: Store): void {
  store.whole(() => {
    store.jugs.add({
      id: 'jug-1',
      number: 1,
      medicineId: 'levamisole',
      packetId: 'levamisole-52g',
      strength: mgPerMl(49.453),
      relative: 0.005,
      volume: millilitres(946),
      mixedAtMs: Date.UTC(2027, 3, 12, 10),
      useByMs: Date.UTC(2027, 3, 12, 22),
      by: 'Wren',
      clockTrusted: true,
      discardedAtMs: null,
      weighed: null,
      stock: null,
      drawn: millilitres(0),
      drawnDoubt: millilitres(0),
      draws: 0,
    });
    store.approvals.approve({
      regimenId: 'levamisole-goat',
      by: 'Wren',
      direction: 'veterinarian',
      atMs: Date.UTC(2027, 0, 1),
      figures: null,
      vet: null,
      targetMgPerKg: null,
      meat: null,
      milk: null,
    });
    store.settings.write('syringeIds', ['syringe-6-by-0.1', 'syringe-3-by-0.1']);
    store.scaleChecks.add(makeScaleCheck(20_000, { atMs: Date.UTC(2027, 3, 11, 12), by: 'Wren' }));
  });
}

/** Brings a test barn to the point where a dose is offered to the goat, and returns the offer's id. */
export function bringToOffer(test: TestBarn, weight = 15_400): string {
  const { phase } = test.barn.context.memory.round;
  if (phase.step === 'no-jug') {
    test.send({ type: 'take-jug', jugId: 'jug-1' });
    test.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
  }
  test.weigh(0, 1000);
  test.send({ type: 'read-tag', tag: GOAT.tag ?? '' });
  test.weigh(weight, 4000);
  return standingOffer(test).id;
}

/** The offer that stands now; throws where none does. */
export function standingOffer(test: TestBarn) {
  const { phase } = test.barn.context.memory.round;
  if (phase.step !== 'offered') throw new Error(`no offer stands: ${phase.step}`);
  return phase.offer;
}
