/** When the kiosk hears: never; while the talk key is held; or also after its wake phrase. */
export const EAR_MODES = ['off', 'press', 'wake'] as const;
