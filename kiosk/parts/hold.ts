import type { Attachment } from 'svelte/attachments';
import { isWide, Touches } from './palm.ts';
import { spendPress } from './press-guard.ts';

/** What a held press needs: how long in milliseconds, what then, and who is told while it lasts. */
export interface HoldOptions {
  readonly ms: number;
  readonly onhold: () => void;
  readonly onholding?: (holding: boolean) => void;
  /** Told when a press ended too early to count. */
  readonly onshort?: () => void;
}

/** The density of the smallest panel, where the page does not tell its own. */
const USUAL_PX_PER_MM = 5.25;

/**
 * A deliberate press: it counts only after a finger stayed on the control for the whole time.
 *
 * Lifting or leaving early is nothing at all; other fingers and drips are ignored meanwhile; a palm, which is wider than
 * a finger or comes down in several places at once, is never a press. After it counted, the
 * finger must lift before another can begin, and until it has, nothing else on the page is clicked. Space and Enter work the same way, for a footswitch.
 */
export function hold(options: () => HoldOptions): Attachment<HTMLElement> {
  return (node) => {
    let pressedBy: number | string | null = null;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let counted = false;
    const touches = new Touches();

    function begin(by: number | string): void {
      if (pressedBy !== null) return;
      pressedBy = by;
      counted = false;
      options().onholding?.(true);
      timer = setTimeout(() => {
        counted = true;
        if (typeof by === 'number') spendPress(by);
        options().onholding?.(false);
        options().onhold();
      }, options().ms);
    }
    function end(by: number | string): void {
      if (pressedBy !== by) return;
      pressedBy = null;
      clearTimeout(timer);
      options().onholding?.(false);
    }

    function onDown(event: PointerEvent): void {
      const mm = Number.parseFloat(getComputedStyle(node).getPropertyValue('--mm')) || USUAL_PX_PER_MM;
      if (isWide(event, mm) || touches.together(event.pointerId)) return;
      // Touch captures the pointer by itself; only without capture does leaving the control show.
      if (node.hasPointerCapture?.(event.pointerId)) node.releasePointerCapture(event.pointerId);
      begin(event.pointerId);
    }
    const onUp = (event: PointerEvent): void => {
      const short = pressedBy === event.pointerId && !counted;
      end(event.pointerId);
      if (short) options().onshort?.();
    };
    const onGone = (event: PointerEvent): void => end(event.pointerId);
    const onKeyDown = (event: KeyboardEvent): void => {
      if ((event.key === ' ' || event.key === 'Enter') && !event.repeat) begin(event.key);
    };
    const onKeyUp = (event: KeyboardEvent): void => end(event.key);
    const onMenu = (event: Event): void => event.preventDefault();

    const listeners: readonly (readonly [string, EventListener])[] = [
      ['pointerdown', onDown as EventListener],
      ['pointerup', onUp as EventListener],
      ['pointerleave', onGone as EventListener],
      ['pointercancel', onGone as EventListener],
      ['keydown', onKeyDown as EventListener],
      ['keyup', onKeyUp as EventListener],
      ['contextmenu', onMenu],
    ];
    // Heard on the whole page, and before the control itself: only a part of a palm may lie on it.
    const onTouch = (event: PointerEvent): void => {
      touches.came(event.pointerId, performance.now());
      if (typeof pressedBy === 'number' && touches.together(pressedBy) && !counted) end(pressedBy);
    };
    const onLift = (event: PointerEvent): void => touches.went(event.pointerId);
    for (const [name, listener] of listeners) node.addEventListener(name, listener);
    window.addEventListener('pointerdown', onTouch, true);
    window.addEventListener('pointerup', onLift, true);
    window.addEventListener('pointercancel', onLift, true);
    return () => {
      clearTimeout(timer);
      window.removeEventListener('pointerdown', onTouch, true);
      window.removeEventListener('pointerup', onLift, true);
      window.removeEventListener('pointercancel', onLift, true);
      for (const [name, listener] of listeners) node.removeEventListener(name, listener);
    };
  };
}
