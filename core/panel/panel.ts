/** A bank card, which everybody has and which is the same everywhere: ISO/IEC 7810, format ID-1, in millimetres. */
export const CARD_MM = { width: 85.6, height: 53.98 } as const;

/** A panel: its size in pixels, and how many of them make a millimetre. */
export interface Panel {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pxPerMm: number;
}

const MM_PER_INCH = 25.4;

/** The diagonal of a panel, in inches. */
export function diagonalInches({ widthPx, heightPx, pxPerMm }: Panel): number {
  return Math.hypot(widthPx, heightPx) / (pxPerMm * MM_PER_INCH);
}

/** Pixels for a millimetre on a panel of so many pixels and this diagonal. */
export function pixelsPerMm(widthPx: number, heightPx: number, inches: number): number {
  return Math.hypot(widthPx, heightPx) / (inches * MM_PER_INCH);
}

/** The smallest panel the screens are drawn for: 800 x 480 at 7 in, in millimetres along its longer and shorter side. */
const SMALLEST_MM = { longer: 152, shorter: 91 } as const;

/**
 * The most pixels a millimetre may have on a panel so that every screen still fits.
 *
 * On one that stands upright the shorter side only has to hold a card.
 */
export function mostPxPerMm({ widthPx, heightPx }: Pick<Panel, 'widthPx' | 'heightPx'>): number {
  const upright = heightPx > widthPx;
  return Math.min(
    Math.max(widthPx, heightPx) / SMALLEST_MM.longer,
    Math.min(widthPx, heightPx) / (upright ? CARD_MM.width : SMALLEST_MM.shorter),
  );
}
