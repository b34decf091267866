/** Proves at compile time that a union was handled whole; throws if a value still gets here. */
export function unreachable(value: never): never {
  throw new Error(`a case was not handled: ${JSON.stringify(value)}`);
}
