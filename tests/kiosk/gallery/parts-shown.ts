/** Whether an element is to be seen: what lies hidden under a sheet is not. */
export function isSeen(element: Element): boolean {
  return element.checkVisibility({ visibilityProperty: true }) && element.getBoundingClientRect().width > 0;
}

/** Whether an element has words of its own. */
export function hasWords(element: Element): boolean {
  return [...element.childNodes].some(
    (node) => node.nodeType === Node.TEXT_NODE && (node.textContent ?? '').trim() !== '',
  );
}

/** What an element is called in a report. */
export function nameOf(element: Element): string {
  const named = element.closest<HTMLElement>('[data-testid]')?.dataset['testid'];
  return named ?? element.tagName.toLowerCase();
}

/** Its own words, shortened for a report. */
export function wordsOf(element: Element): string {
  return (element.textContent ?? '').trim().replace(/\s+/g, ' ').slice(0, 40);
}

/** Pixels for a millimetre on the page. */
export function pixelsForMm(): number {
  const kiosk = document.querySelector<HTMLElement>('.kiosk');
  return Number.parseFloat(kiosk?.style.getPropertyValue('--mm') ?? '');
}
