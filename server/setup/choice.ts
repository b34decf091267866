import type { MassUnit } from '../../core/quantity/mass.ts';
import type { ScaleRole } from '../../core/weighing/reading.ts';
import { scaleProfile } from '../../hardware/scale/profiles.ts';
import type { Proposal } from '../../hardware/scale/recognise.ts';
import type { ScaleSettings } from '../../hardware/scale/settings.ts';
import { WAND_BAUDS, type WandHeard } from '../../hardware/wand/recognise-wand.ts';
import { WAND_PROFILE } from '../../hardware/wand/wand-driver.ts';
import type { ProposalView } from '../../shared/setup.ts';

/** A way to read a device, complete enough to be tried. */
export interface Choice {
  readonly profile: string;
  readonly title: string;
  readonly baud: number;
  readonly settings: ScaleSettings;
  readonly unit: MassUnit | null;
  readonly unitKnown: boolean;
  readonly confidence: number | null;
  readonly sample: string;
}

/** The unit a scale is first taken to show where its lines do not say; a known weight then proves or changes it. */
export function firstUnit(role: ScaleRole): MassUnit {
  return role === 'platform' ? 'kg' : 'g';
}

/** What was recognised on a line, with the unit set where its format listens to one. */
export function choiceFrom(proposal: Proposal, role: ScaleRole): Choice {
  const { profileId, baud, confidence, sample } = proposal;
  const note = scaleProfile(profileId)?.settings.find(({ name }) => name === 'unit');
  const unit = proposal.unit ?? (note?.required === true ? firstUnit(role) : null);
  return {
    profile: profileId,
    title: scaleProfile(profileId)?.title ?? profileId,
    baud,
    settings: note !== undefined && unit !== null ? { ...proposal.settings, unit } : proposal.settings,
    unit,
    unitKnown: proposal.unit !== null,
    confidence,
    sample,
  };
}

/** The same way to read a scale with its number in another unit, or `null` where its lines name the unit themselves. */
export function inUnit(choice: Choice, unit: MassUnit): Choice | null {
  const listens = scaleProfile(choice.profile)?.settings.some(({ name }) => name === 'unit') ?? false;
  if (!listens || choice.settings.unit === undefined) return null;
  return { ...choice, unit, unitKnown: false, settings: { ...choice.settings, unit } };
}

/** The two formats that differ only in what their motion bit means. */
const MOTION_PAIR = ['weight-status', 'weight-status-inverse'];

/** The same way to read a scale with its motion bit taken the other way round, or `null` where there is none. */
export function otherMotion(choice: Choice): Choice | null {
  if (!MOTION_PAIR.includes(choice.profile)) return null;
  const profile = MOTION_PAIR.find((id) => id !== choice.profile) ?? choice.profile;
  return { ...choice, profile, title: scaleProfile(profile)?.title ?? profile };
}

/** Whether two choices read alike. */
export function isSameChoice(a: Choice, b: Choice): boolean {
  return JSON.stringify([a.profile, a.baud, a.settings]) === JSON.stringify([b.profile, b.baud, b.settings]);
}

/** The speeds a wand may send at: the one at which a wave was read first, else the usual one. */
export function wandChoices(heard: WandHeard | null): Choice[] {
  const bauds = [...WAND_BAUDS].sort((a, b) => Number(b === heard?.baud) - Number(a === heard?.baud));
  return bauds.map((baud) => ({
    profile: WAND_PROFILE,
    title: 'A line for each tag',
    baud,
    settings: {},
    unit: null,
    unitKnown: false,
    confidence: null,
    sample: heard !== null && baud === heard.baud ? heard.sample : '',
  }));
}

/** A choice as the screen is shown it. */
export function choiceView({ settings: _, ...shown }: Choice): ProposalView {
  return shown;
}
