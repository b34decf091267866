/** A rate so many times another, or less than its share, is looked at twice: a slip of the decimal point is ten times. Our own guard. */
const FAR = 2;

/** The nearest of the rates known where a rate lies more than twofold from all of them; `null` where one is near, or none is known. */
export function farFromKnown(rate: number, known: readonly number[]): number | null {
  const off = (other: number): number => Math.abs(Math.log(rate / other));
  const [nearest] = [...known].sort((a, b) => off(a) - off(b));
  return nearest === undefined || off(nearest) <= Math.log(FAR) ? null : nearest;
}
