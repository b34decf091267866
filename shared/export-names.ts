/** The files that can be taken along. */
export const EXPORT_NAMES = [
  'register',
  'weights',
  'scores',
  'treatment-events',
  'weight-events',
  'score-events',
  'calendar',
] as const;
/** One of {@link EXPORT_NAMES}. */
export type ExportName = (typeof EXPORT_NAMES)[number];
