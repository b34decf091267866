import type { ScaleRole } from '../../core/weighing/reading.ts';
import type { ProofView } from '../../shared/setup.ts';
import type { DeviceRole } from '../../shared/tray.ts';
import type { Choice } from './choice.ts';
import type { ToldFacts } from './facts.ts';
import type { LinesLink } from './lines-link.ts';
import type { PortWatch } from './port-watch.ts';
import type { ListeningStep, Recognised } from './recognise-device.ts';
import type { TrialLink } from './trial-link.ts';

/** The device being set up. */
interface OfDevice {
  readonly role: DeviceRole;
  readonly path: string;
}

/** Where a set-up stands. */
export type Stage =
  | { readonly step: 'idle' }
  | { readonly step: 'ports'; readonly watch: PortWatch }
  | (OfDevice & ListeningStep & { readonly step: 'listening' })
  | (OfDevice & Recognised & { readonly step: 'proposals' })
  | {
      readonly step: 'lines';
      readonly role: ScaleRole;
      readonly path: string;
      readonly baud: number;
      /** `null` until the port is free for it. */
      readonly opened: LinesLink | null;
    }
  | (OfDevice & { readonly step: 'failed'; readonly trouble: string })
  | (OfDevice & {
      readonly step: 'trial';
      readonly linesBaud: number | null;
      readonly choices: readonly Choice[];
      readonly index: number;
      readonly choice: Choice;
      /** `null` until the port is free for it. */
      readonly opened: TrialLink | null;
      readonly proof: ProofView | null;
      /** The keeper's word that nobody ever takes a tare on it. */
      readonly neverTared: boolean;
      /** What the scale says of itself. */
      readonly told: ToldFacts;
      /** In which steps it counts by the keeper's word, in last digits shown; `null` where none was given. */
      readonly countsIn: number | null;
    });

/** A set-up before and after the work. */
export const IDLE: Stage = { step: 'idle' };
/** A device on trial. */
export type TrialStage = Extract<Stage, { step: 'trial' }>;
