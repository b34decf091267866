import type { ScaleFault, ScaleRole } from '../../core/weighing/reading.ts';
import { LineSplitter } from '../serial/line-splitter.ts';
import { type Decoded, readingOf, refuse } from './decoded.ts';
import { polled, type ScaleProfile, wire } from './profile.ts';
import { isMassUnit, shownMass } from './shown-mass.ts';

/** The command echoed, a blank that some scales leave away, the mark, a blank, sign, nine of weight, a blank, unit. */
const LINE = /^(S {2}|SI |SU |SUI) ?([ ?^v]) ([ -])(.{9}) (.{3})$/;
const WIDTHS: readonly number[] = [19, 20];
/** Answers about a command instead of a weight: carried out, not now, out of range, no steady weight in time. */
const ANSWER = /^[A-Z][A-Z0-9]{0,2}(?:_| {1,2})([AIDE^v])$/;

const ANSWER_FAULTS: Readonly<Record<string, ScaleFault>> = {
  E: 'unstable-timeout',
  '^': 'over',
  v: 'under',
};

/**
 * Lines with the command echoed and a mark for stability (`SI ? -    12.34 g  `), asked with `SI` CR LF.
 *
 * Marks: blank stable, `?` moving, `^` over, `v` under. 21 or 22 bytes with CR LF, always the same on one scale. No
 * word tells gross from net, so such a scale stands on the bench only. Source: published manuals (facts §1.3).
 */
export const STABILITY_LINE: ScaleProfile = {
  ...polled('SI\r\n'),
  id: 'stability-line',
  title: 'Lines with a stability mark (SI ?      12.34 g  )',
  commands: { zero: wire('Z\r\n'), tare: wire('T\r\n') },
  width: 'steady',
  createFramer: () => new LineSplitter({ maxLength: 32, synchronised: false }),
  decode,
};

function decode(text: string, role: ScaleRole, atMs: number): Decoded {
  const seen = { text, role, atMs };
  if (text === 'ES') return refuse('command-refused', text);
  const answer = ANSWER.exec(text)?.[1];
  if (answer !== undefined) {
    const fault = ANSWER_FAULTS[answer];
    if (fault !== undefined)
      return readingOf({ shown: null, moving: answer === 'E', net: null, fault, unit: null }, seen);
    return refuse(answer === 'I' ? 'command-refused' : 'not-a-weight', text);
  }
  if (!WIDTHS.includes(text.length)) return refuse('bad-width', text);
  const match = LINE.exec(text);
  if (match === null) return refuse('bad-header', text);
  const [, , mark = '', sign = '', field = '', unitField = ''] = match;
  const unit = unitField.trimEnd();
  if (!isMassUnit(unit)) return refuse('unknown-unit', text);
  const shown = shownMass(field.trimStart(), sign === '-', unit);
  const fault = mark === '^' ? 'over' : mark === 'v' ? 'under' : null;
  if (shown === null && fault === null) return refuse('bad-number', text);
  return readingOf({ shown, moving: mark === '?', net: null, fault, unit }, seen);
}
