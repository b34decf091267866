/** How long after a held finger lifted no click counts: a finger in a wet glove bounces. */
const SETTLE_MS = 400;

/** A button that came to lie under a finger so lately was not what the finger was for: two taps of a wet glove are as far apart. */
const NEW_MS = 300;

/** Ends what is being swallowed, one for each reason to. */
const ends = new Set<() => void>();

function swallow(event: Event): void {
  event.stopImmediatePropagation();
  event.preventDefault();
}

/** Swallows every click; the function returned ends it, unless another still swallows. */
function swallowClicks(onend?: () => void): () => void {
  function end(): void {
    ends.delete(end);
    if (ends.size === 0) window.removeEventListener('click', swallow, true);
    onend?.();
  }
  ends.add(end);
  window.addEventListener('click', swallow, true);
  return end;
}

/** Swallows clicks for a moment after the screen changed by itself: they were meant for what stood there before. */
export function spendClicks(): void {
  setTimeout(swallowClicks(), SETTLE_MS);
}

/**
 * Swallows every click until a finger is up, and a little longer.
 *
 * A held press counts while the finger is still down, and the screen may change under it: lifting it must not
 * press what came to lie there.
 */
export function spendPress(pointerId: number): void {
  let settling: ReturnType<typeof setTimeout> | undefined;
  const end = swallowClicks(() => {
    clearTimeout(settling);
    window.removeEventListener('pointerup', onEnd, true);
    window.removeEventListener('pointercancel', onEnd, true);
    window.removeEventListener('pointerdown', onDown, true);
  });
  function settle(): void {
    settling ??= setTimeout(end, SETTLE_MS);
  }
  function onEnd(event: PointerEvent): void {
    if (event.pointerId === pointerId) settle();
  }
  // A first finger that comes down tells that the one before has gone, even where its end was never heard.
  function onDown(event: PointerEvent): void {
    if (event.isPrimary || event.pointerId === pointerId) settle();
  }
  window.addEventListener('pointerup', onEnd, true);
  window.addEventListener('pointercancel', onEnd, true);
  window.addEventListener('pointerdown', onDown, true);
}

/** Knows when each button came, or became another; the function returned by `watch` ends it. */
class Newcomers {
  readonly #since = new WeakMap<Element, number>();

  watch(): () => void {
    const observer = new MutationObserver((changes) => {
      const now = performance.now();
      for (const { type, target, addedNodes } of changes) {
        if (type === 'attributes') this.#since.set(target as Element, now);
        for (const node of addedNodes) {
          if (!(node instanceof Element)) continue;
          if (node.matches('button')) this.#since.set(node, now);
          for (const button of node.querySelectorAll('button')) this.#since.set(button, now);
        }
      }
    });
    observer.observe(document.body, { subtree: true, childList: true, attributeFilter: ['data-testid'] });
    return () => observer.disconnect();
  }

  /** Whether a button stands there for less than the time between two taps. */
  has(button: Element): boolean {
    return performance.now() - (this.#since.get(button) ?? Number.NEGATIVE_INFINITY) < NEW_MS;
  }
}

/**
 * Lets a click reach a button only if the finger came down on that same button, and the button stood there before the finger
 * can have meant another; the function returned ends it.
 *
 * A click without a finger, as a key or the page itself makes it, is left alone.
 */
export function guardPresses(): () => void {
  const pressed = new Map<number, Element>();
  const newcomers = new Newcomers();
  const unwatch = newcomers.watch();
  const buttonOf = (event: Event): Element | null =>
    event.target instanceof Element ? event.target.closest('button') : null;

  function onDown(event: PointerEvent): void {
    if (event.isPrimary) pressed.clear();
    const button = buttonOf(event);
    if (button !== null && !newcomers.has(button)) pressed.set(event.pointerId, button);
  }
  function onClick(event: MouseEvent): void {
    const button = buttonOf(event);
    if (button === null || event.detail === 0) return;
    if (![...pressed.values()].includes(button)) swallow(event);
  }
  window.addEventListener('pointerdown', onDown, true);
  window.addEventListener('click', onClick, true);
  return () => {
    unwatch();
    window.removeEventListener('pointerdown', onDown, true);
    window.removeEventListener('click', onClick, true);
    for (const end of [...ends]) end();
  };
}
