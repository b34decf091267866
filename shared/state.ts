import { z } from 'zod';
import { FIRST_STEPS } from '../core/first-start/first-start.ts';
import { AnimalView } from './animal.ts';
import { BoardRowView } from './board.ts';
import { CheckView } from './check.ts';
import { OfferView, TreatmentView } from './dose.ts';
import { DoseCardView } from './dose-card.ts';
import { EarView } from './ear.ts';
import { FarmView } from './farm.ts';
import { JugView } from './jug.ts';
import { KeepingView } from './keeping.ts';
import { ScreenLanguage } from './language.ts';
import { MachineView } from './machine.ts';
import { MixingView } from './mixing.ts';
import { NetworkView } from './network.ts';
import { WormCheckView } from './reduction-test.ts';
import { RoundView } from './round.ts';
import { LinkStatus, ShedView } from './shed.ts';
import { StockView } from './stock.ts';
import { SyringeCheckView } from './syringe-check.ts';
import { VoiceView } from './voice.ts';

/** A panel: its size in pixels and how many of them make a millimetre. */
export const PanelView = z.strictObject({
  widthPx: z.number().int(),
  heightPx: z.number().int(),
  pxPerMm: z.number(),
});
/** A panel. */
export type PanelView = z.infer<typeof PanelView>;

/** Something that keeps the kiosk from working at all: shown large, with its remedy. */
export const ProblemView = z.strictObject({
  code: z.enum(['config-unreadable', 'config-invalid', 'store-unreadable', 'store-damaged']),
  /** The file it is about. */
  file: z.string(),
  /** The field, such as `devices.platform.baud`, or `null` where it is the whole file. */
  field: z.string().nullable(),
  detail: z.string(),
  remedy: z.string(),
});
/** Something that keeps the kiosk from working at all. */
export type ProblemView = z.infer<typeof ProblemView>;

/** All that a screen needs: what `GET /api/state` answers and the socket sends first. Masses in grams. */
export const KioskState = z.strictObject({
  /** A new one for each start of the server. */
  bootId: z.string(),
  /** The server's clock, RFC 3339. */
  now: z.string(),
  clockTrusted: z.boolean(),
  /** The newest date that is believed to be over, RFC 3339: whoever says it is earlier says that this date is wrong. */
  clockFloor: z.string(),
  demo: z.boolean(),
  /** Whether this is a practice round, of which nothing is kept; it is a demo too. */
  practice: z.boolean(),
  problem: ProblemView.nullable(),
  safetyRead: z.boolean(),
  /** What a new kiosk asks now; `null` once its first start is over. */
  firstStart: z.enum(FIRST_STEPS).nullable(),
  panel: PanelView,
  face: z.enum(['dim', 'glare']),
  /** The language of the screen. */
  language: ScreenLanguage,
  weightUnit: z.enum(['kg', 'lb']),
  /** The farm's zone of the IANA database, in which days are counted and times shown. */
  timeZone: z.string(),
  platform: z.strictObject({
    link: LinkStatus,
    /** What the platform shows now; `null` whenever that is not current or not usable. */
    live: z.number().nullable(),
    /** The weight held in this visit. */
    held: z.number().nullable(),
    /** Standard uncertainty of `held` (k = 1). */
    uncertainty: z.number().nullable(),
    verdict: z.enum([
      'blank',
      'fault',
      'net',
      'not-zeroed',
      'empty',
      'stepping-on',
      'settling',
      'held',
      'leaning',
      'two-animals',
      'stepping-off',
    ]),
    /** The step between two values the scale shows, or `null` while unknown. */
    division: z.number().nullable(),
  }),
  bench: z.strictObject({
    link: LinkStatus,
    live: z.number().nullable(),
    steady: z.boolean(),
    division: z.number().nullable(),
  }),
  wand: z.strictObject({ link: LinkStatus }),
  jug: MixingView,
  /** The check of a scale that is under way. */
  check: CheckView,
  /** The check of a syringe that is under way. */
  syringeCheck: SyringeCheckView,
  round: RoundView,
  offer: OfferView.nullable(),
  /** Why the dose on offer is what it is; `null` where none is on offer. */
  card: DoseCardView.nullable(),
  animals: z.array(AnimalView),
  /** Grows whenever the season, or the reading of a weather file, is to be asked for anew. */
  seasonRevision: z.number().int(),
  /** Grows whenever something is kept of an animal: what was asked of one before is stale then. */
  herdRevision: z.number().int(),
  /** Who may be milked and who may be sold, one row an animal. */
  board: z.array(BoardRowView),
  wormCheck: WormCheckView,
  jugs: z.array(JugView),
  /** The newest rows of the day book, newest first. */
  dayBook: z.array(TreatmentView),
  stock: StockView,
  keeping: KeepingView,
  /** The board under the kiosk. */
  machine: MachineView,
  network: NetworkView,
  farm: FarmView,
  shed: ShedView,
  voice: VoiceView,
  ear: EarView,
});
/** All that a screen needs. */
export type KioskState = z.infer<typeof KioskState>;
