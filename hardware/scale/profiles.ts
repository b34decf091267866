import { blankUnit } from './blank-unit.ts';
import { commandSet, commandSetRepeating } from './command-set.ts';
import { HEADER_COMMA } from './header-comma.ts';
import { patternFormat } from './pattern.ts';
import { compilePattern } from './pattern-check.ts';
import type { PatternRefusal } from './pattern-syntax.ts';
import type { ScaleProfile } from './profile.ts';
import type { ScaleSettings } from './settings.ts';
import { overSevenBits } from './seven-bit-profile.ts';
import { SMA, SMA_HIGH } from './sma.ts';
import { ST_GS } from './st-gs.ts';
import { STABILITY_LINE } from './stability-line.ts';
import { statusWords } from './status-words.ts';
import { stxEtxLong, stxEtxShort } from './stx-etx.ts';
import { stxWeight } from './stx-weight.ts';
import { VALUE_UNIT } from './value-unit.ts';
import { weightStatus } from './weight-status.ts';

type Maker = (settings: ScaleSettings) => ScaleProfile;

const MAKERS: readonly Maker[] = [
  () => SMA,
  () => SMA_HIGH,
  () => ST_GS,
  weightStatus('one'),
  weightStatus('zero'),
  stxWeight,
  () => HEADER_COMMA,
  () => VALUE_UNIT,
  () => STABILITY_LINE,
  blankUnit,
  stxEtxShort,
  stxEtxLong,
  commandSet,
  commandSetRepeating,
  statusWords,
  patternFormat,
];

const BY_ID: ReadonlyMap<string, Maker> = new Map(MAKERS.map((make) => [make({}).id, make]));

/** The ids a configuration may name. */
export const SCALE_PROFILE_IDS: readonly string[] = [...BY_ID.keys()];

/**
 * The profile of this id with these settings, or `undefined` where none is known.
 *
 * Settings that are missing or wrong make a profile that refuses frames by name: `settingsTrouble` tells beforehand.
 */
export function scaleProfile(id: string, settings: ScaleSettings = {}): ScaleProfile | undefined {
  const profile = BY_ID.get(id)?.(settings);
  return profile !== undefined && settings.line === '7e1' ? overSevenBits(profile) : profile;
}

/** A setting without which a profile reads nothing, and what is wrong with it. */
export interface SettingsTrouble {
  readonly setting: keyof ScaleSettings;
  readonly why: 'missing' | 'not-used' | PatternRefusal;
}

/** What is wrong with these settings for this format; empty where all is well, or where no such format is known. */
export function settingsTrouble(id: string, settings: ScaleSettings): SettingsTrouble[] {
  const profile = scaleProfile(id, settings);
  if (profile === undefined) return [];
  const { pattern } = settings;
  const named = new Set<string>(['line', ...profile.settings.map((note) => note.name)]);
  const compiled = pattern === undefined || !named.has('pattern') ? null : compilePattern(pattern);
  return [
    ...profile.settings
      .filter((note) => note.required && settings[note.name] === undefined)
      .map((note) => ({ setting: note.name, why: 'missing' as const })),
    ...(Object.keys(settings) as (keyof ScaleSettings)[])
      .filter((name) => settings[name] !== undefined && !named.has(name))
      .map((setting) => ({ setting, why: 'not-used' as const })),
    ...(compiled === null || compiled.ok ? [] : [{ setting: 'pattern' as const, why: compiled.why }]),
  ];
}
