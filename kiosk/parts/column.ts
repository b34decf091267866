/** One part of a day or a time that is picked, with a plate above for more and one below for less. */
export interface Column<Part extends string> {
  readonly part: Part;
  readonly name: string;
  readonly shown: string;
  /** Whether there is more; taken as so where nothing is said. */
  readonly canMore?: boolean;
  readonly canLess?: boolean;
}
