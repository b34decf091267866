import type { SessionView } from '../../shared/network.ts';
import type { PanelView } from '../../shared/state.ts';

/** What the screens are drawn for: the smallest panel lying, and one standing that holds two plates and what is between. */
const LYING: PanelView = { widthPx: 800, heightPx: 480, pxPerMm: 5.25 };
const STANDING: PanelView = { widthPx: 720, heightPx: 1280, pxPerMm: 6.55 };

/** The panel that the page is drawn for on a device of this size. */
export function devicePanel(widthPx: number, heightPx: number): PanelView {
  return widthPx < heightPx ? STANDING : LYING;
}

/** The code in an address that a device scanned, such as "#pair/12345678". */
export function codeIn(hash: string): string | null {
  return /^#pair\/(\d{8})$/.exec(hash)?.[1] ?? null;
}

/** Whether the kiosk says that this device is not paired; a kiosk that does not answer says nothing. */
export async function isStranger(): Promise<boolean> {
  try {
    const response = await fetch('/api/session');
    const session = (await response.json()) as SessionView;
    return response.ok && session.kind === 'stranger';
  } catch {
    return false;
  }
}
