/** The project's own guard where no source gives a ceiling. */
export const CEILING_OF_TARGET = 1.5;
