import type { Attachment } from 'svelte/attachments';
import { spendPress } from './press-guard.ts';

/** What a held press needs: how long in milliseconds, what then, and who is told while it lasts. */
export interface HoldOptions {
  readonly ms: number;
  readonly onhold: () => void;
  readonly onholding?: (holding: boolean) => void;
  /** Told when a press ended too early to count. */
  readonly onshort?: () => void;
}

/**
 * A deliberate press: it counts only after a finger stayed on the control for the whole time.
 *
 * Lifting or leaving early is nothing at all; other fingers and drips are ignored meanwhile; after it counted, the
 * finger must lift before another can begin, and until it has, nothing else on the page is clicked. Space and Enter work the same way, for a footswitch.
 */
export function hold(options: () => HoldOptions): Attachment<HTMLElement> {
  return (node) => {
    let pressedBy: number | string | null = null;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let counted = false;

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
    for (const [name, listener] of listeners) node.addEventListener(name, listener);
    return () => {
      clearTimeout(timer);
      for (const [name, listener] of listeners) node.removeEventListener(name, listener);
    };
  };
}
