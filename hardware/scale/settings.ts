import type { MassUnit } from '../../core/quantity/mass.ts';

/** What the keeper must say of a scale because its frames do not. */
export interface ScaleSettings {
  /** The unit of weights that come without one, or about which published manuals contradict each other. */
  readonly unit?: MassUnit;
  /** The keeper's word that no tare is ever taken on this scale: its weights then count as gross. */
  readonly noTare?: boolean;
  /** `7e1` for a line of seven bits and even parity; the port itself stays at eight bits and none. */
  readonly line?: '8n1' | '7e1';
  /** The expression of the format `pattern`: at most 200 characters of the kind `parsePattern` takes. */
  readonly pattern?: string;
}

/** One setting a format listens to. Each format also listens to `line`. */
export interface SettingNote {
  readonly name: keyof ScaleSettings;
  /** Without a required setting no frame is read. */
  readonly required: boolean;
  /** One sentence for the keeper. */
  readonly what: string;
}

/** For formats that never name a unit, or cannot be believed when they do. */
export const UNIT_REQUIRED: SettingNote = {
  name: 'unit',
  required: true,
  what: 'The unit the scale shows. Its lines do not say it for sure.',
};

/** For formats that leave the unit away while the weight moves. */
export const UNIT_WHILE_MOVING: SettingNote = {
  name: 'unit',
  required: false,
  what: 'The unit the scale shows. Without it only steady weights are read.',
};

/** For formats that do not tell gross from net. */
export const NO_TARE: SettingNote = {
  name: 'noTare',
  required: false,
  what: 'Nobody ever takes a tare on this scale. Without this word it weighs no animals.',
};
