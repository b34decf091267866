import { z } from 'zod';
import { DeviceRole } from './tray.ts';

/** The units a scale may show. */
const unit = z.enum(['kg', 'g', 'lb', 'oz']);

/** A port something may be plugged into. */
export const PortView = z.strictObject({
  /** The lasting name: what `device-listen` takes and the configuration keeps. */
  path: z.string(),
  /** What the name stands for now, such as `/dev/ttyUSB0`. */
  device: z.string(),
  /** The role that uses this device, or `null`. */
  usedBy: DeviceRole.nullable(),
  /** Plugged in since the list was opened. */
  fresh: z.boolean(),
});
/** A port something may be plugged into. */
export type PortView = z.infer<typeof PortView>;

/** A way to read what is plugged in; the keeper chooses. */
export const ProposalView = z.strictObject({
  profile: z.string(),
  /** The format in words. */
  title: z.string(),
  baud: z.number().int(),
  /** `null` where neither the lines nor anyone has said it, and for a wand. */
  unit: unit.nullable(),
  /** Whether the lines name the unit; otherwise it is a guess that a known weight must prove. */
  unitKnown: z.boolean(),
  /** 0 to 1; `null` where nothing was heard that could speak for it. */
  confidence: z.number().nullable(),
  /** One line as it was heard, control characters spelled out; empty where none was. */
  sample: z.string(),
});
/** A way to read what is plugged in. */
export type ProposalView = z.infer<typeof ProposalView>;

/** What a known weight said of a scale on trial. */
export const ProofView = z.strictObject({
  verdict: z.enum(['right', 'other-unit', 'never-still', 'wrong']),
  knownGrams: z.number(),
  shownGrams: z.number(),
  /** The unit the number seems to be in, with `other-unit`. */
  is: unit.nullable(),
  /** The proposal that would read it so, or `null` where the scale itself must be set otherwise. */
  instead: z.number().int().nullable(),
});
/** What a known weight said of a scale on trial. */
export type ProofView = z.infer<typeof ProofView>;

/** What a scale on trial carries and in which steps it counts, as far as it or the keeper has said. */
export const FactsView = z.strictObject({
  /** `null` where the scale does not tell. */
  capacityGrams: z.number().nullable(),
  /** `null` until the scale or the keeper has told it. */
  divisionGrams: z.number().nullable(),
  /** Who told the division. */
  by: z.enum(['scale', 'keeper']).nullable(),
  /** How many different values were shown, up to as many as tell the step. */
  valuesSeen: z.number().int(),
  /** The steps the keeper may choose from, in last digits shown. */
  choices: z.array(
    z.strictObject({
      lastDigits: z.number().int(),
      grams: z.number(),
      /** Whether every value shown so far lies on them. */
      fits: z.boolean(),
      /** Whether the values shown speak for them. */
      likely: z.boolean(),
    }),
  ),
});
/** What a scale on trial carries and in which steps it counts. */
export type FactsView = z.infer<typeof FactsView>;

/** What keeping a device on trial still takes, besides a ready link. */
export const NeedsView = z.strictObject({
  /** A known weight that proves right, or a tag read. */
  proof: z.boolean(),
  /** The keeper's word that nobody ever takes a tare on it. */
  noTare: z.boolean(),
  /** A format that tells gross from net: in this one the scale cannot weigh animals. */
  otherFormat: z.boolean(),
});
/** What keeping a device on trial still takes. */
export type NeedsView = z.infer<typeof NeedsView>;

const of = { role: DeviceRole, path: z.string() };

/** The setting up of a device, one step at a time; nothing weighs or doses from it before it is kept. */
export const SetupView = z.discriminatedUnion('step', [
  /** Not to be had: in the demo, or where the environment sets the devices. */
  z.strictObject({ step: z.literal('closed'), why: z.enum(['not-in-demo', 'set-by-environment']) }),
  z.strictObject({ step: z.literal('idle') }),
  z.strictObject({ step: z.literal('ports'), ports: z.array(PortView) }),
  z.strictObject({
    step: z.literal('listening'),
    ...of,
    /** First it only listens, then it asks for a weight. */
    asking: z.boolean(),
    baud: z.number().int(),
    /** How many tries are done, and how many there are at most. */
    done: z.number().int(),
    most: z.number().int(),
  }),
  z.strictObject({
    step: z.literal('proposals'),
    ...of,
    proposals: z.array(ProposalView),
    /** Whether its lines can be shown, to read them by an expression. */
    lines: z.boolean(),
  }),
  /** The lines of a scale of an unknown format, as they come. */
  z.strictObject({
    step: z.literal('lines'),
    ...of,
    baud: z.number().int(),
    link: z.enum(['opening', 'settling', 'ready', 'silent', 'lost']),
    /** The newest at the end. */
    lines: z.array(z.string()),
    /** How many expressions may read them. */
    guesses: z.number().int(),
  }),
  /** The port did not open; `trouble` says what to do. */
  z.strictObject({ step: z.literal('failed'), ...of, trouble: z.string() }),
  z.strictObject({
    step: z.literal('trial'),
    ...of,
    proposals: z.array(ProposalView),
    lines: z.boolean(),
    index: z.number().int(),
    link: z.enum(['opening', 'settling', 'ready', 'silent', 'lost']),
    /** What the scale shows now, in grams; `null` whenever that is not current. */
    live: z.number().nullable(),
    division: z.number().nullable(),
    still: z.boolean(),
    net: z.boolean(),
    /** The last tag of a wand on trial. */
    tag: z.string().nullable(),
    /** Something comes that this proposal cannot read. */
    garbled: z.boolean(),
    proof: ProofView.nullable(),
    /** `null` for a wand. */
    facts: FactsView.nullable(),
    needs: NeedsView,
  }),
]);
/** The setting up of a device, one step at a time. */
export type SetupView = z.infer<typeof SetupView>;
