import { hasWords, isSeen, wordsOf } from './parts-shown.ts';

/** So far words may lie on each other in px: their boxes are larger than their letters. */
const APART_PX = 4;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Words that lie on other words or on a plate; where the tray hangs over the work on purpose nothing is looked at. */
export function overlapFaults(): string[] {
  if (document.querySelector('[data-testid="tray"]') !== null) return [];
  const words = [...document.querySelectorAll('main *')].filter(
    (element) => element.closest('svg') === null && hasWords(element) && isSeen(element),
  );
  const plates = [...document.querySelectorAll<HTMLButtonElement>('main .plate')].filter(
    (plate) => !plate.disabled && isSeen(plate),
  );
  const boxes = new Map([...words, ...plates].map((element) => [element, lettersOf(element)]));
  const faults: string[] = [];
  for (const [at, word] of words.entries()) {
    for (const other of [...words.slice(at + 1), ...plates]) {
      if (word.contains(other) || other.contains(word)) continue;
      if (over(boxes.get(word), boxes.get(other)))
        faults.push(`"${wordsOf(word)}" lies on "${wordsOf(other)}"`);
    }
  }
  return faults;
}

/** The box of a line of text is higher than its letters: only the middle of it counts. */
function lettersOf(element: Element): Box {
  const { left, right, top, bottom, height } = element.getBoundingClientRect();
  const trim = getComputedStyle(element).display === 'inline' ? 0.2 * height : 0;
  return { left, right, top: top + trim, bottom: bottom - trim };
}

function over(a: Box | undefined, b: Box | undefined): boolean {
  return (
    a !== undefined &&
    b !== undefined &&
    Math.min(a.right, b.right) - Math.max(a.left, b.left) > APART_PX &&
    Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > APART_PX
  );
}
