import { z } from 'zod';
import { isTimeZone } from '../../core/dosing/local-time.ts';
import type { EventKind } from '../../core/hub/event.ts';
import { AnimalNote } from '../../shared/animal.ts';
import { SampleMethodView } from '../../shared/egg-count.ts';
import { AnimalColumns } from './animals.ts';
import { StoredJugLot, StoredWeighed } from './stored-quantity.ts';
import { TreatmentRecord } from './treatment-record.ts';

const id = z.string().min(1).max(100);
const ms = z.int();
const by = z.string().max(100);
/** A time that every calendar holds: dates are counted from it. */
const time = z.int().min(0).max(Date.UTC(9999, 0));
const sinceMs = z.number().nonnegative().max(Date.UTC(2070, 0));
const positive = z.number().positive();

/** Text that is JSON of a form. */
const jsonText = (form: z.ZodType) =>
  z.string().refine(
    (text) => {
      try {
        return form.safeParse(JSON.parse(text)).success;
      } catch {
        return false;
      }
    },
    { message: 'no JSON of the form it should have' },
  );
const changes = jsonText(AnimalColumns.partial());
const fields = AnimalColumns.partial();
const over = z.partialRecord(z.string(), z.array(id));

/**
 * What each kind of event tells, as it is taken in from another kiosk. Names are those of the columns.
 *
 * Whatever is not of this form is not taken in: a record that cannot be read would stop every page that shows it.
 */
export const TOLD_BODIES = {
  animal: z.strictObject({ animal: id, fields: AnimalColumns, over }),
  'animal-change': z.strictObject({ animal: id, at_ms: ms, by, fields, over }),
  'animal-merge': z.strictObject({
    kind: z.enum(['merged', 'parted']),
    at_ms: ms,
    by,
    before: changes,
    after: changes,
    kept: id,
    gone: id,
  }),
  jug: z.strictObject({
    id,
    number: z.int(),
    medicine_id: id,
    packet_id: id,
    strength_mg_per_ml: positive,
    strength_uncertainty: z.number().nonnegative(),
    volume_ml: positive,
    mixed_at_ms: ms,
    use_by_ms: ms,
    mixed_by: by,
    clock_trusted: z.literal([0, 1]),
    weighed: jsonText(StoredWeighed).nullable(),
    stock: jsonText(StoredJugLot).nullable(),
    board_start: id.nullable().default(null),
    board_since_ms: sinceMs.nullable().default(null),
  }),
  'jug-discarded': z.strictObject({ id, discarded_at_ms: ms }),
  treatment: TreatmentRecord,
  correction: z.strictObject({
    id,
    treatment_id: id,
    kind: z.enum(['not-given', 'wrong-animal', 'wrong-volume', 'vet-time']),
    animal_id: id.nullable(),
    volume_ml: positive.nullable(),
    meat_hours: z.int().nullable(),
    meat_days: z.int().nullable(),
    milk_hours: z.int().nullable(),
    milk_days: z.int().nullable(),
    at_ms: ms,
    by,
    after: z.array(id),
  }),
  untreated: z.strictObject({
    id,
    kind: z.enum(['skipped', 'lapsed', 'not-given']),
    animal_id: id.nullable(),
    offer_id: id.nullable(),
    reason: z.string().nullable(),
    weight_g: positive.nullable(),
    at_ms: ms,
    by,
    clock_trusted: z.literal([0, 1]).nullable(),
  }),
  weighing: z.strictObject({
    animal: id,
    at_ms: ms,
    mass_g: positive,
    uncertainty_g: z.number().nonnegative().nullable(),
    method: z.enum(['scale', 'girth', 'guess', 'imported']),
    hours_off_feed: z.number().nonnegative().nullable(),
    by,
  }),
  'weight-word': z.strictObject({
    animal: id,
    weighing: z.string().max(100),
    said: z.enum(['true', 'wrong']).nullable(),
    hours_off_feed: z.number().nonnegative().nullable(),
    at_ms: ms,
    by,
  }),
  score: z.strictObject({
    animal: id,
    at_ms: ms,
    by,
    eyelid: z.int().nullable(),
    body: z.number().nullable(),
    soiling: z.int().nullable(),
    jaw: z.enum(['none', 'swollen']).nullable(),
    coat: z.enum(['smooth', 'rough']).nullable(),
  }),
  'score-taken-back': z.strictObject({ animal: id, scored_at_ms: ms, at_ms: ms, by }),
  note: z.strictObject({ animal: id, at_ms: ms, by, note: AnimalNote }),
  'reduction-test': z.strictObject({
    id,
    medicine_id: id,
    species: AnimalColumns.shape.species,
    design: z.enum(['paired', 'unpaired']),
    protocol: z.enum(['clinical', 'research']),
    method: jsonText(SampleMethodView),
    planned_at_ms: ms,
    by,
    animals: z.array(z.strictObject({ animal: id, treatment_id: id.nullable() })),
  }),
  'reduction-test-end': z.strictObject({ test: id, how: z.enum(['judged', 'given-up']), at_ms: ms, by }),
  'egg-count': z.strictObject({
    id,
    eggs: z.int(),
    dung_g: positive.nullable(),
    suspension_ml: positive.nullable(),
    counted_ml: positive.nullable(),
    told_factor: positive.nullable(),
    purpose: z.enum(['herd', 'ill', 'bought-in', 'test']),
    stage: z.enum(['before', 'after']).nullable(),
    taken_at_ms: ms,
    logged_at_ms: ms,
    by,
    test: id.nullable(),
    animals: z.array(id),
  }),
  'egg-count-correction': z.strictObject({
    id,
    count_id: id,
    kind: z.enum(['taken-back', 'other-number']),
    eggs: z.int().nullable(),
    at_ms: ms,
    by,
  }),
  'clock-correction': z.strictObject({
    id,
    board_start: id,
    board_since_ms: sinceMs,
    was_ms: ms.nullable(),
    is_ms: time,
    told: z.enum(['person', 'server', 'board']),
    by,
    time_zone: z.string().refine(isTimeZone, { message: 'no time zone that is known here' }),
    treatments_before: z.int(),
    jugs_before: z.int(),
    after: z.array(id),
    ahead: z.array(id),
  }),
} as const satisfies Record<EventKind, z.ZodType>;

/** What an event of a kind tells. */
export type ToldBody<K extends EventKind> = z.infer<(typeof TOLD_BODIES)[K]>;
