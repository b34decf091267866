/** Where figures of more than one medicine were read, and the words for figures that are the project's own. */
export const GOAT_CHART =
  'Goat anthelmintic chart, July 2006 (Univ. Georgia, Univ. Kentucky), read in a copy';
export const SHEEP_CHART = 'Consortium sheep chart, read in a reprint (undated)';
export const SMALL_RUMINANT_PAGE = 'Small-ruminant extension page on dewormer safety (undated)';
export const UK_DATASHEET = 'UK datasheet compendium, cattle and sheep drench (undated)';
export const OWN = 'Set by this project as a guard; no source read gives one';
export const NO_MILK_SOURCE = 'No source read. Ask the vet: the milk is not for people until a time is given';
export const NO_MEAT_SOURCE = 'No source read. Ask the vet: the animal is not sold until a time is given';
export const IN_THE_TRADE = 'Common practice, no source';
