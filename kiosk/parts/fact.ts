/** One line of what is told of a thing. */
export interface Fact {
  readonly what: string;
  readonly said: string;
  /** Whether a person should do something about it. */
  readonly loud?: boolean;
  readonly testid?: string;
}
