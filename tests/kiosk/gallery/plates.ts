import { isSeen, nameOf, pixelsForMm } from './parts-shown.ts';

/** Least sizes in mm, half a millimetre less for rounding; a low plate is one nobody needs while holding an animal. */
const LEAST_MM = 19.5;
const LEAST_LOW_MM = 14.5;
const CONFIRM_MM = 24.9;
/** Around what answers the screen's question, or is held; between any others; and beside the one that gives. */
const GAP_MM = 5.9;
const GAP_OTHERS_MM = 3.4;
const GAP_GIVE_MM = 12.9;

/** Plates too small, too near to each other, or off the panel. */
export function plateFaults(): string[] {
  const faults: string[] = [];
  const mm = pixelsForMm();
  const plates = [...document.querySelectorAll<HTMLButtonElement>('main .plate')].filter(
    (plate) => !plate.disabled && isSeen(plate),
  );
  for (const [at, plate] of plates.entries()) {
    const box = plate.getBoundingClientRect();
    const name = nameOf(plate);
    if (box.bottom > window.innerHeight || box.right > window.innerWidth)
      faults.push(`${name}: off the panel`);
    const least = name === 'give' ? CONFIRM_MM : plate.classList.contains('low') ? LEAST_LOW_MM : LEAST_MM;
    if (box.height / mm < least) faults.push(`${name}: ${(box.height / mm).toFixed(1)} mm high`);
    if (box.width / mm < LEAST_MM) faults.push(`${name}: ${(box.width / mm).toFixed(1)} mm wide`);
    for (const other of plates.slice(at + 1)) {
      const gap = gapBetween(box, other.getBoundingClientRect()) / mm;
      const wanted = gapWanted(plate, other);
      if (gap < wanted) faults.push(`${name} and ${nameOf(other)}: ${gap.toFixed(1)} mm apart`);
    }
  }
  return faults;
}

function gapWanted(a: Element, b: Element): number {
  if ([a, b].some((plate) => nameOf(plate) === 'give') && sideBySide(a, b)) return GAP_GIVE_MM;
  return [a, b].some((plate) => plate.matches('.main, .sign, [data-holding]')) ? GAP_MM : GAP_OTHERS_MM;
}

/** Whether two plates stand in one row, as those do that would end what is offered. */
function sideBySide(a: Element, b: Element): boolean {
  const [one, other] = [a.getBoundingClientRect(), b.getBoundingClientRect()];
  return one.top < other.bottom && other.top < one.bottom;
}

/** The shortest way from one box to another, in px. */
function gapBetween(a: DOMRect, b: DOMRect): number {
  const across = Math.max(0, a.left - b.right, b.left - a.right);
  const down = Math.max(0, a.top - b.bottom, b.top - a.bottom);
  return Math.hypot(across, down);
}
