import type { MassUnit } from '../../core/quantity/mass.ts';
import { withEvenParity } from '../serial/seven-bits.ts';
import type { ScaleProfile } from './profile.ts';
import { SCALE_PROFILE_IDS, scaleProfile } from './profiles.ts';
import type { ScaleSettings } from './settings.ts';

/** What was heard at one speed. */
export interface Capture {
  readonly baud: number;
  /** The question it may be an answer to; `null` for what came unasked. */
  readonly asked: Uint8Array | null;
  readonly bytes: Uint8Array;
}

/** A format that can read what was heard. The keeper chooses: nothing is set up from it by itself. */
export interface Proposal {
  readonly profileId: string;
  /** What must be set for the lines to be read so; the keeper adds what `unit: null` leaves open. */
  readonly settings: ScaleSettings;
  readonly baud: number;
  /** The unit the frames name or their bits agree with; `null` where they leave it open. */
  readonly unit: MassUnit | null;
  /** 0 (excluded) to 1 (excluded): the share of what was heard that the format explains, less for few frames. */
  readonly confidence: number;
  /** One frame of a weight, control characters spelled out. */
  readonly sample: string;
}

/** A format must explain this share of the bytes: a chance find in noise explains next to nothing. */
const LEAST_SHARE = 0.2;
/** A scale that must be asked may also be set to repeat by itself, but a format made for that fits better. */
const UNASKED = 0.8;
/** Stands in where a format names no unit: any one reads as well as another. */
const STAND_IN: MassUnit = 'kg';
/** The units that bits of a frame can be in agreement with. */
const CHECKED_UNITS: readonly MassUnit[] = ['kg', 'lb', 'g'];

/** Every format that can read what was heard, the likeliest first; those that explain it equally well stay side by side. */
export function proposalsFor(captures: readonly Capture[]): Proposal[] {
  const all = captures.flatMap((capture) =>
    SCALE_PROFILE_IDS.flatMap((id) => candidates(id, capture).flatMap((one) => judge(one, capture))),
  );
  return withoutRepeats(all.sort((a, b) => b.confidence - a.confidence));
}

interface Candidate {
  readonly profile: ScaleProfile;
  readonly settings: ScaleSettings;
  readonly weight: number;
}

function candidates(id: string, { asked, bytes }: Capture): Candidate[] {
  const units = id === 'status-words' ? CHECKED_UNITS : [undefined];
  // Noise has high bits too, so eight bits are tried in any case.
  const lines = bytes.some((byte) => byte > 0x7f) ? ([undefined, '7e1'] as const) : ([undefined] as const);
  return units.flatMap((unit) =>
    lines.flatMap((line) => {
      const settings = { ...(unit !== undefined && { unit }), ...(line !== undefined && { line }) };
      const profile = scaleProfile(id, { ...settings, unit: unit ?? STAND_IN });
      if (profile === undefined) return [];
      const question = profile.poll?.bytes ?? null;
      // A reply to another format's question proves nothing about this one.
      if (asked !== null && (question === null || !sameBytes(question, asked))) return [];
      return [{ profile, settings, weight: asked === null && question !== null ? UNASKED : 1 }];
    }),
  );
}

function judge({ profile, settings, weight }: Candidate, { baud, asked, bytes }: Capture): Proposal[] {
  const framer = profile.createFramer();
  // An answer begins with its first byte: a splitter of lines need not wait for the end of one.
  if (asked !== null) framer.push(ending(settings));
  const units = new Set<MassUnit | null>();
  let readings = 0;
  let explained = 0;
  let startUp = 0;
  let first = true;
  let sample = '';
  for (const framed of framer.push(bytes)) {
    if (framed.kind === 'discarded') {
      if (first) startUp += framed.bytes;
      first = false;
      continue;
    }
    first = false;
    const decoded = profile.decode(framed.text, 'bench', 0);
    if (decoded.kind !== 'reading') continue;
    explained += framed.text.length + 2;
    // A fault is told without a number: it explains bytes, but does not tell this format from its kin.
    if (decoded.reading.fault !== undefined) continue;
    readings += 1;
    units.add(decoded.unit);
    if (sample === '') sample = spelledOut(framed.text);
  }
  // What was cut off at both ends speaks neither for the format nor against it.
  const heard = bytes.length - startUp - framer.pendingBytes;
  const share = heard > 0 ? Math.min(1, explained / heard) : 0;
  if (readings === 0 || share < LEAST_SHARE) return [];
  units.delete(null);
  const named = units.size === 1 ? [...units][0] : undefined;
  return [
    {
      profileId: profile.id,
      settings,
      baud,
      unit: named ?? settings.unit ?? null,
      confidence: (weight * share * readings) / (readings + 1),
      sample,
    },
  ];
}

/** One proposal of a format, its settings and speed is enough: the best. */
function withoutRepeats(sorted: readonly Proposal[]): Proposal[] {
  const seen = new Set<string>();
  return sorted.filter(({ profileId, settings, baud }) => {
    const key = JSON.stringify([profileId, settings, baud]);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** CR LF, as the line carries it. */
function ending({ line }: ScaleSettings): Uint8Array {
  const bytes = Uint8Array.of(0x0d, 0x0a);
  return line === '7e1' ? withEvenParity(bytes) : bytes;
}

function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, at) => byte === b[at]);
}

function spelledOut(text: string): string {
  return JSON.stringify(text).slice(1, -1);
}
