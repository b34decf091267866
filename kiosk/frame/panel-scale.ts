import type { PanelView } from '../../shared/state.ts';

/**
 * CSS pixels for a millimetre.
 *
 * On the panel itself that is its density; in a window of another size the whole page grows or shrinks with it,
 * so that it always looks as it does on the panel.
 */
export function pixelsPerMillimetre(panel: PanelView, widthPx: number, heightPx: number): number {
  if (widthPx <= 0 || heightPx <= 0) return panel.pxPerMm;
  return panel.pxPerMm * Math.min(widthPx / panel.widthPx, heightPx / panel.heightPx);
}
