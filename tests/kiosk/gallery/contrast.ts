import { hasWords, isSeen, nameOf, wordsOf } from './parts-shown.ts';

/** The least contrast of words with what they stand on, at night and in the light of an open door. */
const LEAST = { dim: 7, glare: 12 } as const;

type Rgb = readonly [number, number, number];

/** Words that stand out too little, as WCAG 2.2 counts contrast. */
export function contrastFaults(): string[] {
  const face = document.querySelector<HTMLElement>('.kiosk')?.dataset['face'] === 'glare' ? 'glare' : 'dim';
  const faults: string[] = [];
  for (const element of document.querySelectorAll('.kiosk *')) {
    if (!hasWords(element) || !isSeen(element)) continue;
    const style = getComputedStyle(element);
    const drawn = element instanceof SVGElement;
    const ink = colourOf(drawn ? style.fill : style.color);
    const ratio = ink === null ? null : contrast(ink, groundOf(element));
    if (ratio !== null && ratio < LEAST[face])
      faults.push(`${nameOf(element)}: "${wordsOf(element)}" has a contrast of ${ratio.toFixed(1)}`);
  }
  return faults;
}

/** The colour an element stands on: of drawings that of the shape under it, where there is one. */
function groundOf(element: Element): Rgb {
  const box = element.getBoundingClientRect();
  const under =
    element instanceof SVGElement
      ? document
          .elementsFromPoint((box.left + box.right) / 2, (box.top + box.bottom) / 2)
          .filter((each) => each instanceof SVGElement && !hasWords(each) && each.tagName !== 'svg')
          .map((each) => colourOf(getComputedStyle(each).fill))
      : [];
  const shape = under.find((colour) => colour !== null);
  if (shape) return shape;
  for (let each: Element | null = element; each !== null; each = each.parentElement) {
    const colour = colourOf(getComputedStyle(each).backgroundColor);
    if (colour !== null) return colour;
  }
  return [255, 255, 255];
}

/** A colour that covers what is under it, or `null`. */
function colourOf(css: string): Rgb | null {
  const [r, g, b, alpha = 1] = (css.match(/[\d.]+/g) ?? []).map(Number);
  return r === undefined || g === undefined || b === undefined || alpha < 1 ? null : [r, g, b];
}

function contrast(a: Rgb, b: Rgb): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

/** Relative luminance, by WCAG 2.2. */
function luminance(colour: Rgb): number {
  const [r, g, b] = colour.map((byte) => {
    const share = byte / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
