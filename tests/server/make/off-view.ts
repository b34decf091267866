import type { EarSettings, EarView } from '../../../shared/ear.ts';

/** The ear of a kiosk whose machine has no engine to hear with. */
export function offView(settings: EarSettings, recordedBytes: number): EarView {
  return {
    ...settings,
    listening: 'off',
    open: false,
    source: null,
    trouble: settings.mode === 'off' ? null : 'no-engine',
    phrases: [],
    leftOut: [],
    heard: null,
    recordedBytes,
  };
}
