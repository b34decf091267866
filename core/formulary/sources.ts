/** The chart of goat doses outside the label, found wrong on milk; read in a copy. */
export const GOAT_CHART =
  'Goat anthelmintic chart, July 2006 (Univ. Georgia, Univ. Kentucky), read in a copy';
/** The chart of sheep doses and withdrawal times. */
export const SHEEP_CHART = 'Consortium sheep chart, read in a reprint (undated)';
/** An extension page on which medicines are unsafe for whom. */
export const SMALL_RUMINANT_PAGE = 'Small-ruminant extension page on dewormer safety (undated)';
/** The datasheet of a drench sold elsewhere: how to handle it, not how much to give. */
export const UK_DATASHEET = 'UK datasheet compendium, cattle and sheep drench (undated)';
/** Said of a figure that is the project's own guard. */
export const OWN = 'Set by this project as a guard; no source read gives one';
/** Said where no time for milk was read. */
export const NO_MILK_SOURCE = 'No source read. Ask the vet: the milk is not for people until a time is given';
/** Said where no time for meat was read. */
export const NO_MEAT_SOURCE = 'No source read. Ask the vet: the animal is not sold until a time is given';
/** Said of what is done everywhere and was read nowhere. */
export const IN_THE_TRADE = 'Common practice, no source';
