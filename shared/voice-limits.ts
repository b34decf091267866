/** How fast the kiosk may speak, in words a minute, and the step between two choices. */
export const VOICE_RATES = { least: 110, most: 230, step: 15 } as const;
/** How loud, as a share of the loudest in hundredths, and the step between two choices. */
export const VOICE_VOLUMES = { least: 20, most: 100, step: 10 } as const;
