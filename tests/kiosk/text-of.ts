/** The text of an element, with plain spaces where a number and its unit are kept together. */
export function textOf(element: Element | null): string {
  return (element?.textContent ?? '').replaceAll('\u00a0', ' ').trim();
}
