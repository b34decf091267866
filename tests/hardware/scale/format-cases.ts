import type { MassUnit } from '../../../core/quantity/mass.ts';
import type { ScaleProfile } from '../../../hardware/scale/profile.ts';
import { scaleProfile } from '../../../hardware/scale/profiles.ts';
import type { ScaleSettings } from '../../../hardware/scale/settings.ts';
import { encodeCommandSet } from '../../../hardware/simulator/encode-command-set.ts';
import { encodeSma } from '../../../hardware/simulator/encode-sma.ts';
import { encodeStGs } from '../../../hardware/simulator/encode-st-gs.ts';
import { encodeStabilityLine } from '../../../hardware/simulator/encode-stability-line.ts';
import { encodeStxWeight } from '../../../hardware/simulator/encode-stx-weight.ts';
import { encodeWeightStatus, invertStatus } from '../../../hardware/simulator/encode-weight-status.ts';
import type { Face, Indication } from '../../../hardware/simulator/indication.ts';
import { SIM_VOICES, type SimFormat, type SimVoice } from '../../../hardware/simulator/sim-voice.ts';
import type { RefusedFrame, WeightFrame } from '../../oracles/serial-frames.ts';
import { SMA_BROKEN, SMA_FRAMES, SMA_OTHER } from '../../oracles/serial-frames.ts';
import {
  BLANK_UNIT_BROKEN,
  BLANK_UNIT_FRAMES,
  COMMAND_SET_BROKEN,
  COMMAND_SET_FRAMES,
  HEADER_COMMA_BROKEN,
  HEADER_COMMA_FRAMES,
  STABILITY_LINE_BROKEN,
  STABILITY_LINE_FRAMES,
  VALUE_UNIT_BROKEN,
  VALUE_UNIT_FRAMES,
} from '../../oracles/serial-frames-bench.ts';
import { ST_GS_BROKEN, ST_GS_FRAMES } from '../../oracles/serial-frames-lines.ts';
import {
  STATUS_WORDS_BROKEN,
  STATUS_WORDS_FRAMES,
  STX_ETX_LONG_BROKEN,
  STX_ETX_LONG_FRAMES,
  STX_ETX_SHORT_BROKEN,
  STX_ETX_SHORT_FRAMES,
  STX_WEIGHT_BROKEN,
  STX_WEIGHT_FRAMES,
  WEIGHT_STATUS_BROKEN,
  WEIGHT_STATUS_FRAMES,
  WEIGHT_STATUS_INVERSE_FRAMES,
} from '../../oracles/serial-frames-status.ts';

/** Everything the general tests need to know of one format. */
export interface FormatCase {
  /** The profile id, and the layout where there are several. */
  readonly name: string;
  readonly id: string;
  /** The profile where the scale shows this unit. */
  make(settings?: ScaleSettings): ScaleProfile;
  readonly frames: readonly WeightFrame[];
  readonly broken: readonly RefusedFrame[];
  readonly encode: (shown: Indication, face: Face) => Uint8Array;
  /** Units the format can name or be set to. */
  readonly units: readonly MassUnit[];
  /** Whether the unit must be set, as it is not sent or not believed. */
  readonly unitIsSet: boolean;
  /** Whether a frame in motion carries a number. */
  readonly weighsMoving: boolean;
  /** Whether frames tell net from gross: always, at rest only, or never. */
  readonly tellsNet: 'always' | 'at-rest' | 'never';
  /** What an encoder makes of a scale that hangs or is overloaded. */
  readonly tellsRange: boolean;
}

const ALL: readonly MassUnit[] = ['kg', 'g', 'lb', 'oz'];
const COMMON = {
  units: ALL,
  unitIsSet: false,
  weighsMoving: true,
  tellsNet: 'never',
  tellsRange: true,
} as const;

type Rest = Pick<FormatCase, 'frames' | 'broken' | 'encode'> & Partial<FormatCase>;

function formatCase(id: string, rest: Rest): FormatCase {
  return {
    ...COMMON,
    name: id,
    id,
    make(settings = {}) {
      const profile = scaleProfile(id, settings);
      if (profile === undefined) throw new Error(`no profile ${id}`);
      return profile;
    },
    ...rest,
  };
}

function streamOf(format: SimFormat): FormatCase['encode'] {
  const voice: SimVoice = SIM_VOICES[format];
  if (voice.stream === null) throw new Error(`${format} does not send by itself`);
  return voice.stream;
}

/** Every format with its layouts; `pattern` has tests of its own. */
export const FORMAT_CASES: readonly FormatCase[] = [
  formatCase('sma', {
    frames: SMA_FRAMES,
    broken: [...SMA_BROKEN, ...SMA_OTHER],
    encode: encodeSma,
    tellsNet: 'always',
  }),
  formatCase('st-gs', {
    name: 'st-gs, layout A',
    frames: ST_GS_FRAMES,
    broken: ST_GS_BROKEN,
    encode: (shown, face) => encodeStGs(shown, face, 'A'),
    tellsNet: 'always',
  }),
  formatCase('st-gs', {
    name: 'st-gs, layout B',
    frames: ST_GS_FRAMES,
    broken: ST_GS_BROKEN,
    encode: streamOf('st-gs'),
    tellsNet: 'always',
  }),
  formatCase('weight-status', {
    name: 'weight-status, layout A',
    frames: WEIGHT_STATUS_FRAMES,
    broken: WEIGHT_STATUS_BROKEN,
    encode: (shown, face) => encodeWeightStatus(shown, face, 'A'),
    tellsNet: 'always',
  }),
  formatCase('weight-status', {
    name: 'weight-status, layout B',
    frames: WEIGHT_STATUS_FRAMES,
    broken: WEIGHT_STATUS_BROKEN,
    encode: (shown, face) => encodeWeightStatus(shown, face, 'B'),
    weighsMoving: false,
    tellsNet: 'always',
  }),
  formatCase('weight-status', {
    name: 'weight-status, layout C',
    frames: WEIGHT_STATUS_FRAMES,
    broken: WEIGHT_STATUS_BROKEN,
    encode: (shown, face) => encodeWeightStatus(shown, face, 'C'),
    tellsNet: 'always',
  }),
  formatCase('weight-status-inverse', {
    frames: WEIGHT_STATUS_INVERSE_FRAMES,
    broken: WEIGHT_STATUS_BROKEN.filter((frame) => !frame.wire.startsWith('\nS')),
    encode: (shown, face) => invertStatus(encodeWeightStatus(shown, face, 'C')),
    tellsNet: 'always',
  }),
  formatCase('stx-weight', {
    frames: STX_WEIGHT_FRAMES,
    broken: STX_WEIGHT_BROKEN,
    encode: encodeStxWeight,
    unitIsSet: true,
    weighsMoving: false,
  }),
  formatCase('header-comma', {
    frames: HEADER_COMMA_FRAMES,
    broken: HEADER_COMMA_BROKEN,
    encode: streamOf('header-comma'),
  }),
  formatCase('value-unit', {
    frames: VALUE_UNIT_FRAMES,
    broken: VALUE_UNIT_BROKEN,
    encode: streamOf('value-unit'),
    tellsRange: false,
  }),
  formatCase('stability-line', {
    frames: STABILITY_LINE_FRAMES,
    broken: STABILITY_LINE_BROKEN,
    encode: encodeStabilityLine,
  }),
  formatCase('blank-unit', {
    frames: BLANK_UNIT_FRAMES,
    broken: BLANK_UNIT_BROKEN,
    encode: streamOf('blank-unit'),
    unitIsSet: true,
  }),
  formatCase('stx-etx-short', {
    frames: STX_ETX_SHORT_FRAMES,
    broken: STX_ETX_SHORT_BROKEN,
    encode: streamOf('stx-etx-short'),
    unitIsSet: true,
    tellsNet: 'at-rest',
  }),
  formatCase('stx-etx-long', {
    frames: STX_ETX_LONG_FRAMES,
    broken: STX_ETX_LONG_BROKEN,
    encode: streamOf('stx-etx-long'),
    unitIsSet: true,
    tellsNet: 'always',
  }),
  formatCase('s-si', {
    frames: COMMAND_SET_FRAMES,
    broken: COMMAND_SET_BROKEN,
    encode: encodeCommandSet,
  }),
  formatCase('status-words', {
    frames: STATUS_WORDS_FRAMES,
    broken: STATUS_WORDS_BROKEN,
    encode: streamOf('status-words'),
    units: ['kg', 'g', 'lb'],
    unitIsSet: true,
    tellsNet: 'always',
  }),
];

/** The settings under which a scale with this face is read. */
export function settingsFor(of: FormatCase, unit: MassUnit): ScaleSettings {
  return of.unitIsSet ? { unit } : {};
}
