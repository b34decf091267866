import { hasWords, isSeen, nameOf, wordsOf } from './parts-shown.ts';

/** Parts that must not need scrolling. */
const FIXED = '.step, .home, .holder, main';

/** What is cut off, runs out of the panel, or would have to be scrolled. */
export function cutFaults(): string[] {
  const faults: string[] = [];
  const panel = { right: window.innerWidth + 1, bottom: window.innerHeight + 1 };
  if (document.documentElement.scrollWidth > window.innerWidth)
    faults.push('the page is wider than the panel');
  for (const element of document.querySelectorAll('.kiosk *')) {
    if (element.matches(FIXED) && element.scrollHeight > element.clientHeight + 1)
      faults.push(`${nameOf(element)}: ${element.scrollHeight - element.clientHeight} px too high`);
    if (!hasWords(element) || !isSeen(element) || element.closest('svg') !== null) continue;
    const box = element.getBoundingClientRect();
    const says = `${nameOf(element)}: "${wordsOf(element)}"`;
    if (box.right > panel.right) faults.push(`${says} runs out to the right`);
    if (box.bottom > panel.bottom) faults.push(`${says} runs out below`);
    const style = getComputedStyle(element);
    if (
      element.scrollWidth > element.clientWidth + 1 &&
      style.overflowX === 'hidden' &&
      style.textOverflow !== 'ellipsis'
    )
      faults.push(`${says} is cut off sideways`);
    const plate = element.parentElement?.matches('.plate') ? element.parentElement : null;
    if (plate !== null) {
      const around = plate.getBoundingClientRect();
      if (box.right > around.right + 1 || box.left < around.left - 1)
        faults.push(`${says} is wider than its plate`);
      if (box.bottom > around.bottom + 1 || box.top < around.top - 1)
        faults.push(`${says} is higher than its plate`);
    }
  }
  return faults;
}
