import type { BookLineView, BookPageView } from '../../shared/day-book.ts';

/** How long after a failure it is asked again. */
const AGAIN_MS = 3000;

/** The lines of the day book that were fetched so far, newest first. */
export interface BookPages {
  readonly at: 'loading' | 'ready' | 'failed';
  readonly lines: readonly BookLineView[];
  /** Whether older lines are left to fetch. */
  readonly more: boolean;
  /** Fetches the lines that follow those here. */
  fetchMore(): void;
}

/**
 * Asks the server for the newest lines of a query, and for older ones when they are wanted; from the newest on again
 * whenever what it depends on changes. Call it while a component is being made.
 */
export function bookPages(query: () => string, dependsOn: () => unknown): BookPages {
  let at = $state.raw<BookPages['at']>('loading');
  let lines = $state.raw<readonly BookLineView[]>([]);
  let next = $state.raw<string | null>(null);
  let failures = $state(0);
  let asking = new AbortController();

  async function ask(path: string, { signal }: AbortController): Promise<BookPageView | null> {
    const response = await fetch(path, { signal });
    if (!response.ok) throw new Error(`${path} answers ${response.status}`);
    const page = (await response.json()) as BookPageView;
    return signal.aborted ? null : page;
  }

  $effect(() => {
    const path = `/api/day-book?${query()}`;
    dependsOn();
    failures;
    const own = new AbortController();
    asking = own;
    let timer: ReturnType<typeof setTimeout> | undefined;
    ask(path, own)
      .then((page) => {
        if (page === null) return;
        lines = page.lines;
        next = page.next;
        at = 'ready';
      })
      .catch(() => {
        if (own.signal.aborted) return;
        if (at !== 'ready') at = 'failed';
        timer = setTimeout(() => (failures += 1), AGAIN_MS);
      });
    return () => {
      own.abort();
      clearTimeout(timer);
    };
  });

  return {
    get at() {
      return at;
    },
    get lines() {
      return lines;
    },
    get more() {
      return next !== null;
    },
    fetchMore() {
      if (next === null) return;
      const before = next;
      // Asked for once: what comes sets where it goes on.
      next = null;
      const own = asking;
      ask(`/api/day-book?${query()}&before=${before}`, own)
        .then((page) => {
          if (page === null) return;
          lines = [...lines, ...page.lines];
          next = page.next;
        })
        .catch(() => {
          if (!own.signal.aborted) next = before;
        });
    },
  };
}
