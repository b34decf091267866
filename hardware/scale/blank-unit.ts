import { LineSplitter } from '../serial/line-splitter.ts';
import { type Decoded, readingOf, refuse, type Seen } from './decoded.ts';
import { type ScaleProfile, STREAMED } from './profile.ts';
import { type ScaleSettings, UNIT_WHILE_MOVING } from './settings.ts';
import { isMassUnit, shownMass } from './shown-mass.ts';

/** Sign, blank, eight of weight, blank, three of unit. */
const WIDTH = 14;
const LINE = /^([+ -]) (.{8}) (.{3})$/;
/** One letter alone: H above the range, L below it, C while the scale adjusts itself. */
const SPECIAL = /^ *([HLC]) *$/;
const ERROR = /^Err *\d{2,3} *$/;

/**
 * Lines of 16 bytes (`+    12.34 g  `) whose unit stays blank while the weight moves.
 *
 * The unit of a moving weight is the one set; without it such lines are refused, and a steady line in another unit
 * always is. No word tells gross from net, so such a scale stands on the bench only. Source: published manuals for
 * the fields; that a blank unit means motion is common knowledge (facts §1.3).
 */
export function blankUnit(settings: ScaleSettings): ScaleProfile {
  return {
    ...STREAMED,
    id: 'blank-unit',
    title: 'Lines of 16 bytes, unit blank in motion (+    12.34 g  )',
    width: 'fixed',
    settings: [UNIT_WHILE_MOVING],
    createFramer: () => new LineSplitter({ maxLength: 24, synchronised: false }),
    decode: (text, role, atMs) => decode({ text, role, atMs }, settings),
  };
}

function decode(seen: Seen, settings: ScaleSettings): Decoded {
  const { text } = seen;
  const none = { shown: null, moving: false, net: null, unit: null } as const;
  if (text.length !== WIDTH) return refuse('bad-width', text);
  const special = SPECIAL.exec(text)?.[1];
  if (special !== undefined) {
    const fault = special === 'H' ? 'over' : special === 'L' ? 'under' : 'not-displayed';
    return readingOf({ ...none, fault }, seen);
  }
  if (ERROR.test(text)) return readingOf({ ...none, fault: 'not-displayed' }, seen);
  const match = LINE.exec(text);
  if (match === null) return refuse('bad-header', text);
  const [, sign = '', field = '', unitField = ''] = match;
  const named = unitField.trimEnd();
  if (named !== '' && !isMassUnit(named)) return refuse('unknown-unit', text);
  if (named !== '' && settings.unit !== undefined && named !== settings.unit) {
    return refuse('unit-mismatch', text);
  }
  const unit = named === '' ? settings.unit : named;
  if (unit === undefined) return refuse('unit-not-set', text);
  const shown = shownMass(field.trimStart(), sign === '-', unit);
  return readingOf({ ...none, shown, moving: named === '', unit: named === '' ? null : named }, seen);
}
