import type { EventKind } from '../../core/hub/event.ts';
import { CHANGING_COLUMNS } from './animals.ts';

/** How one kind of event is read off its record. */
export interface ToldRecord {
  /** The table the record stands in. */
  readonly table: string;
  /** What happens to the record when it is told of: SQL of a trigger. */
  readonly when: string;
  /** SQL for what names the record among its kind; `r.` is its row. */
  readonly record: string;
  /** SQL for the order in which many are told, by a key of the table; that of `record` where it is missing. */
  readonly order?: string;
  /** SQL for the JSON that is told; `r.` is its row. */
  readonly body: string;
  /** Whether the body is kept with the event: of a record that may change, or that is small. */
  readonly kept: boolean;
  /** SQL for which rows are told of, where that is not all. */
  readonly only?: string;
  /** SQL for the id of the animal whose changes are merged field by field. */
  readonly animal?: string;
  /** The columns that are told as they stand. */
  readonly columns?: readonly string[];
}

/** The first life in a file is its own kiosk's: others are heard of later. */
export const OWN_KIOSK = '(SELECT kiosk FROM kiosk_lives ORDER BY number LIMIT 1)';

/** Records of this kiosk, of other starts than a word on the clock and written before it, that are dated later. */
const AHEAD_OF_WORD = `(SELECT json_group_array(id) FROM (
  SELECT id FROM treatments AS known
  WHERE known.sequence <= r.treatments_before AND known.given_at_ms > r.is_ms
    AND known.record ->> '$.clockTrusted' AND known.record ->> '$.board.start' IS NOT r.board_start
    AND ${OWN_KIOSK} = (SELECT kiosk FROM events JOIN kiosk_lives ON kiosk_lives.number = events.life
                        WHERE events.kind = 'treatment' AND events.record = known.sequence)
  UNION ALL
  SELECT id FROM jugs AS known
  WHERE known.number BETWEEN 1 AND r.jugs_before AND known.mixed_at_ms > r.is_ms
    AND known.clock_trusted = 1 AND known.board_start IS NOT r.board_start))`;

// What comes out of a subselect is text to some releases of SQLite and JSON to others: json() says which.
const animalId = (number: string) => `(SELECT id FROM animals WHERE number = ${number})`;
const jsonOf = (columns: readonly string[]) => columns.map((name) => `'${name}', r.${name}`).join(', ');
const INSERTED = 'AFTER INSERT';

/** Changes of one field of an animal known here that no other change known here took the place of. */
const NEWEST_OF_FIELD = `(SELECT coalesce(json_group_array(known.id), '[]') FROM events AS known
  WHERE known.animal = ${animalId('r.animal')} AND json_type(known.body, '$.fields.' || field.key) IS NOT NULL
    AND NOT EXISTS (SELECT 1 FROM events AS later, json_each(later.body, '$.over.' || field.key) AS replaced
                    WHERE later.animal = known.animal AND replaced.value = known.id))`;

const told = (table: string, record: string, columns: readonly string[], more = ''): ToldRecord => ({
  table,
  when: INSERTED,
  record: `r.${record}`,
  body: `json_object(${jsonOf(columns)}${more})`,
  kept: true,
  columns,
});
const ofAnimal = `, 'animal', ${animalId('r.animal')}`;

/**
 * The records that leave a kiosk, in an order in which nothing is told before what it names.
 *
 * What is not here stays: approvals, settings, checks of scales and syringes, stock and weather are of one shed.
 */
export const TOLD_RECORDS: Readonly<Record<EventKind, ToldRecord>> = {
  animal: {
    table: 'animals',
    when: INSERTED,
    record: 'r.number',
    animal: 'r.id',
    body: `json_object('animal', r.id, 'fields', json_object(${jsonOf(CHANGING_COLUMNS)}), 'over', json_object())`,
    kept: true,
  },
  'animal-change': {
    table: 'animal_changes',
    when: INSERTED,
    record: 'r.sequence',
    animal: animalId('r.animal'),
    body: `json_object('animal', ${animalId('r.animal')}, 'at_ms', r.at_ms, 'by', r.by, 'fields', json(r.after),
      'over', json((SELECT json_group_object(field.key, json(${NEWEST_OF_FIELD})) FROM json_each(r.after) AS field)))`,
    kept: true,
  },
  'animal-merge': told(
    'animal_merges',
    'sequence',
    ['kind', 'at_ms', 'by', 'before', 'after'],
    `, 'kept', ${animalId('r.kept')}, 'gone', ${animalId('r.gone')}`,
  ),
  jug: told('jugs', 'number', [
    'id',
    'number',
    'medicine_id',
    'packet_id',
    'strength_mg_per_ml',
    'strength_uncertainty',
    'volume_ml',
    'mixed_at_ms',
    'use_by_ms',
    'mixed_by',
    'clock_trusted',
    'weighed',
    'stock',
    'board_start',
    'board_since_ms',
  ]),
  'jug-discarded': {
    ...told('jugs', 'number', ['id', 'discarded_at_ms']),
    when: 'AFTER UPDATE OF discarded_at_ms',
    only: 'r.discarded_at_ms IS NOT NULL',
  },
  treatment: {
    table: 'treatments',
    when: INSERTED,
    record: 'r.sequence',
    body: 'r.record',
    kept: false,
  },
  correction: told(
    'corrections',
    'sequence',
    [
      'id',
      'treatment_id',
      'kind',
      'animal_id',
      'volume_ml',
      'meat_hours',
      'meat_days',
      'milk_hours',
      'milk_days',
      'at_ms',
      'by',
    ],
    `, 'after', json((SELECT json_group_array(known.id) FROM corrections AS known
         WHERE known.treatment_id = r.treatment_id AND known.sequence < r.sequence))`,
  ),
  untreated: told('untreated', 'sequence', [
    'id',
    'kind',
    'animal_id',
    'offer_id',
    'reason',
    'weight_g',
    'at_ms',
    'by',
    'clock_trusted',
  ]),
  weighing: {
    ...told(
      'weighings',
      'animal',
      ['at_ms', 'mass_g', 'uncertainty_g', 'method', 'hours_off_feed', 'by'],
      ofAnimal,
    ),
    record: "r.animal || ':' || r.at_ms || ':' || r.mass_g",
    order: 'r.animal, r.at_ms, r.mass_g',
  },
  'weight-word': told(
    'weight_words',
    'sequence',
    ['weighing', 'said', 'hours_off_feed', 'at_ms', 'by'],
    ofAnimal,
  ),
  score: told('scores', 'sequence', ['at_ms', 'by', 'eyelid', 'body', 'soiling', 'jaw', 'coat'], ofAnimal),
  'score-taken-back': told('scores_taken_back', 'sequence', ['scored_at_ms', 'at_ms', 'by'], ofAnimal),
  note: told('notes', 'sequence', ['at_ms', 'by', 'note'], ofAnimal),
  // The animals of a test and of a count are written after it, so what is told of them is read when it leaves.
  'reduction-test': {
    ...told(
      'reduction_tests',
      'number',
      ['id', 'medicine_id', 'species', 'design', 'protocol', 'method', 'planned_at_ms', 'by'],
      `, 'animals', json((SELECT json_group_array(json_object('animal', ${animalId('each.animal')},
           'treatment_id', each.treatment_id)) FROM reduction_test_animals AS each WHERE each.test = r.number))`,
    ),
    kept: false,
  },
  'reduction-test-end': told(
    'reduction_test_ends',
    'test',
    ['how', 'at_ms', 'by'],
    `, 'test', (SELECT id FROM reduction_tests WHERE number = r.test)`,
  ),
  'egg-count': {
    ...told(
      'egg_counts',
      'number',
      [
        'id',
        'eggs',
        'dung_g',
        'suspension_ml',
        'counted_ml',
        'told_factor',
        'purpose',
        'stage',
        'taken_at_ms',
        'logged_at_ms',
        'by',
      ],
      `, 'test', (SELECT id FROM reduction_tests WHERE number = r.test),
         'animals', json((SELECT json_group_array(${animalId('each.animal')}) FROM egg_count_animals AS each
           WHERE each.count = r.number))`,
    ),
    kept: false,
  },
  'egg-count-correction': told('egg_count_corrections', 'sequence', [
    'id',
    'count_id',
    'kind',
    'eggs',
    'at_ms',
    'by',
  ]),
  'clock-correction': told(
    'clock_corrections',
    'sequence',
    [
      'id',
      'board_start',
      'board_since_ms',
      'was_ms',
      'is_ms',
      'told',
      'by',
      'time_zone',
      'treatments_before',
      'jugs_before',
    ],
    `, 'after', json((SELECT json_group_array(known.id) FROM clock_corrections AS known
         WHERE known.board_start = r.board_start AND known.sequence < r.sequence)),
       'ahead', json(${AHEAD_OF_WORD})`,
  ),
};
