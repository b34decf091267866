/** What can be asked of the day book by kind: treatments, those corrected, visits skipped, offers that ended. */
export const BOOK_KINDS = ['treatment', 'corrected', 'skipped', 'lapsed'] as const;
/** One of {@link BOOK_KINDS}. */
export type BookKind = (typeof BOOK_KINDS)[number];
