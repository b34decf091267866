/** Something the server is asked for by HTTP, and where that stands. */
export type Fetched<T> =
  | { readonly at: 'loading' }
  | { readonly at: 'ready'; readonly value: T }
  | { readonly at: 'failed' };

/** How long after a failure it is asked again. */
const AGAIN_MS = 3000;

/**
 * Asks the server for a path, and again whenever what it depends on changes; what was there before stays shown until
 * then. Call it while a component is being made.
 */
export function fetched<T>(path: () => string, dependsOn: () => unknown): { readonly now: Fetched<T> } {
  let now = $state.raw<Fetched<T>>({ at: 'loading' });
  let failures = $state(0);
  $effect(() => {
    const asked = path();
    dependsOn();
    failures;
    const stop = new AbortController();
    let timer: ReturnType<typeof setTimeout> | undefined;
    fetch(asked, { signal: stop.signal })
      .then(async (response) => {
        if (!response.ok) throw new Error(`${asked} answers ${response.status}`);
        const value = (await response.json()) as T;
        if (!stop.signal.aborted) now = { at: 'ready', value };
      })
      .catch(() => {
        if (stop.signal.aborted) return;
        if (now.at !== 'ready') now = { at: 'failed' };
        timer = setTimeout(() => (failures += 1), AGAIN_MS);
      });
    return () => {
      stop.abort();
      clearTimeout(timer);
    };
  });
  return {
    get now() {
      return now;
    },
  };
}
