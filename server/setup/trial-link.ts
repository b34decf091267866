import { NO_STEPS, type Steps, seeSteps } from '../../core/proving/steps.ts';
import { FRESH_TRIAL, feedTrial, type Trial } from '../../core/proving/trial.ts';
import type { ScaleRole } from '../../core/weighing/reading.ts';
import type { ScaleProfile } from '../../hardware/scale/profile.ts';
import { scaleProfile } from '../../hardware/scale/profiles.ts';
import { scaleDriver } from '../../hardware/scale/scale-driver.ts';
import type { OpenPort } from '../../hardware/serial/connection.ts';
import { createLink, type Link, type LinkOptions } from '../../hardware/serial/link.ts';
import type { Timers } from '../../hardware/serial/timers.ts';
import { wandDriver } from '../../hardware/wand/wand-driver.ts';
import type { DeviceRole } from '../../shared/tray.ts';
import type { Choice } from './choice.ts';

/** A device on trial: its link, and what it says. Nothing of it reaches the barn. */
export interface TrialLink {
  readonly link: Link;
  /** What the scale says; blank whenever the link is not ready. */
  readonly trial: Trial;
  /** The values it has shown since it was opened, across every link. */
  readonly steps: Steps;
  readonly tag: string | null;
  /** Whether what came last could not be read. */
  readonly garbled: boolean;
  /** Whether a steady line left open if a tare was taken off: on a platform such a line is refused. */
  readonly netUnknown: boolean;
}

/** What opening a device on trial needs. */
export interface TrialOptions {
  readonly role: DeviceRole;
  readonly path: string;
  readonly choice: Choice;
  readonly openPort: OpenPort;
  readonly timers: Timers;
  readonly random: () => number;
  readonly changed: () => void;
}

/** How many frames in a row must fail before it counts as garbled: a wave of the wand may be cut once. */
const GARBLED_FROM = 2;

/** Opens a device on trial. Where the choice names no format that is known, answers `null`. */
export function openTrial(options: TrialOptions): TrialLink | null {
  const { role, choice, timers, changed } = options;
  let trial = FRESH_TRIAL;
  let steps = NO_STEPS;
  let tag: string | null = null;
  let failures = 0;
  let netUnknown = false;

  function open<Item>(driver: LinkOptions<Item>['driver'], onItem: (item: Item) => void): Link {
    const { path, openPort, random } = options;
    return createLink({
      path,
      baud: choice.baud,
      driver,
      openPort,
      timers,
      random,
      onState(state) {
        if (state.status !== 'ready') trial = FRESH_TRIAL;
        changed();
      },
      onItem(item) {
        failures = 0;
        onItem(item);
        changed();
      },
      onRefused(refused) {
        if (refused.kind === 'discarded' && refused.reason === 'settling') return;
        failures += 1;
        changed();
      },
    });
  }

  function openScale(scale: ScaleRole): Link | null {
    const profile = scaleProfile(choice.profile, choice.settings);
    if (profile === undefined) return null;
    const read = readingAnyway(profile, () => {
      netUnknown = true;
    });
    return open(
      scaleDriver(read, scale, () => timers.now()),
      (reading) => {
        trial = feedTrial(trial, reading);
        steps = seeSteps(steps, reading);
      },
    );
  }

  function openWand(): Link {
    return open(
      wandDriver(() => timers.now()),
      (read) => {
        if (read.kind === 'tag') tag = read.tag;
      },
    );
  }

  const link = role === 'wand' ? openWand() : openScale(role);
  if (link === null) return null;
  return {
    link,
    get trial() {
      return trial;
    },
    get steps() {
      return steps;
    },
    get tag() {
      return tag;
    },
    get garbled() {
      return failures >= GARBLED_FROM;
    },
    get netUnknown() {
      return netUnknown;
    },
  };
}

/** The same format, which shows on a platform too what it would refuse there, and tells that it would. */
function readingAnyway(profile: ScaleProfile, onNetUnknown: () => void): ScaleProfile {
  return {
    ...profile,
    decode(text, role, atMs) {
      const strict = profile.decode(text, role, atMs);
      if (strict.kind !== 'fault' || strict.fault !== 'net-unknown') return strict;
      const shown = profile.decode(text, 'bench', atMs);
      // Some formats leave it open only while the weight moves; those still weigh once it stands.
      if (shown.kind === 'reading' && shown.reading.stability === 'stable') onNetUnknown();
      return shown;
    },
  };
}
