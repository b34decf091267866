import { hasWords, isSeen, nameOf, pixelsForMm, wordsOf } from './parts-shown.ts';

/** A capital is 0.7 em in the face of the kiosk. */
const CAP_EM = 0.7;
/** 22 minutes of arc, from half a metre and from two; a twentieth of a millimetre is lost to rounding. */
const READ_AT_HAND_MM = 3.15;
const READ_FROM_AFAR_MM = 12.75;
/** What is read by a keeper who holds the animal, two metres away. */
const FROM_AFAR =
  '[data-testid="offered"] [data-testid="dose-volume"], [data-testid="weighing"] [data-testid="platform-live"]';

/** Words too small for where they are read from. */
export function letterFaults(): string[] {
  const mm = pixelsForMm();
  const faults: string[] = [];
  for (const element of document.querySelectorAll('.kiosk *')) {
    if (!hasWords(element) || !isSeen(element)) continue;
    const cap = (CAP_EM * sizeOf(element)) / mm;
    if (cap < READ_AT_HAND_MM)
      faults.push(`${nameOf(element)}: "${wordsOf(element)}" has capitals of ${cap.toFixed(1)} mm`);
  }
  for (const element of document.querySelectorAll(FROM_AFAR)) {
    const most = Math.max(...[element, ...element.querySelectorAll('*')].filter(hasWords).map(sizeOf));
    const cap = (CAP_EM * most) / mm;
    if (isSeen(element) && most > 0 && cap < READ_FROM_AFAR_MM)
      faults.push(`${nameOf(element)}: figures of ${cap.toFixed(1)} mm cannot be read from two metres`);
  }
  return faults;
}

/** The size of its letters on the page, in px: a drawing may be drawn larger or smaller. */
function sizeOf(element: Element): number {
  const size = Number.parseFloat(getComputedStyle(element).fontSize);
  if (!(element instanceof SVGGraphicsElement)) return size;
  const matrix = element.getScreenCTM();
  return matrix === null ? size : size * Math.hypot(matrix.a, matrix.b);
}
