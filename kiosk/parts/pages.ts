/** One page of a list and what lies around it; `page` counts from 0 and is brought into range. */
export interface Page<T> {
  readonly items: readonly T[];
  readonly page: number;
  readonly pages: number;
}

/** Cuts the page out of a list; there is always at least one, if an empty one. */
export function pageOf<T>(all: readonly T[], page: number, size: number): Page<T> {
  const pages = Math.max(1, Math.ceil(all.length / size));
  const within = Math.min(Math.max(0, page), pages - 1);
  return { items: all.slice(within * size, (within + 1) * size), page: within, pages };
}
