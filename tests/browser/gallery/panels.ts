/** A panel a kiosk may have, as its state tells it. */
export interface Panel {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pxPerMm: number;
}

function panel(widthPx: number, heightPx: number, diagonalInches: number): Panel {
  return { widthPx, heightPx, pxPerMm: Math.hypot(widthPx, heightPx) / (diagonalInches * 25.4) };
}

/** The smallest panel. */
export const SMALLEST = panel(800, 480, 7);

/** The panels the screens are made for. */
export const PANELS: readonly Panel[] = [
  SMALLEST,
  panel(1024, 600, 7),
  panel(1280, 800, 10.1),
  panel(720, 1280, 10.1),
];

/** Screens of phones, in the pixels of a page, held upright and lying. */
export const PHONES: readonly Panel[] = [panel(390, 844, 6.1), panel(844, 390, 6.1)];

/** The panel of a size; throws where there is none. */
export function panelOf({ width, height }: { readonly width: number; readonly height: number }): Panel {
  const known = PANELS.find(({ widthPx, heightPx }) => widthPx === width && heightPx === height);
  if (known === undefined) throw new Error(`no panel has ${width} x ${height} pixels`);
  return known;
}
