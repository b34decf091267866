import { mostPxPerMm } from '../../core/panel/panel.ts';
import type { PanelView } from '../../shared/state.ts';

/**
 * CSS pixels for a millimetre, as the page is drawn.
 *
 * On a panel smaller than the screens are drawn for, lengths come out shorter than they should, and nothing is cut off.
 */
export function pixelsPerMillimetre(panel: PanelView, widthPx: number, heightPx: number): number {
  return truePxPerMm({ ...panel, pxPerMm: Math.min(panel.pxPerMm, mostPxPerMm(panel)) }, widthPx, heightPx);
}

/**
 * CSS pixels for a millimetre of the glass.
 *
 * On the panel itself that is its density; in a window of another size the whole page grows or shrinks with it,
 * so that it always looks as it does on the panel.
 */
export function truePxPerMm(panel: PanelView, widthPx: number, heightPx: number): number {
  if (widthPx <= 0 || heightPx <= 0) return panel.pxPerMm;
  return panel.pxPerMm * Math.min(widthPx / panel.widthPx, heightPx / panel.heightPx);
}
