import type { FoundRow, Pages } from './pages.ts';

/** What of a table could be read by its tree, and what not, a sentence each. */
export interface Walked {
  readonly rows: readonly FoundRow[];
  readonly lost: readonly string[];
}

/**
 * Walks the tree of a table from its root. `seen` gathers the pages that belong to it, so that no page is read twice,
 * not even where a damaged branch leads back.
 */
export function walkTable(pages: Pages, root: number, seen: Set<number>): Walked {
  const rows: FoundRow[] = [];
  const lost: string[] = [];

  function visit(page: number, above: number | null, upTo: number | null): void {
    const range = rangeOf(above, upTo);
    if (seen.has(page)) {
      lost.push(`page ${page} is used twice${range}`);
      return;
    }
    try {
      if (pages.kind(page)?.is === 'branch') {
        const { children, rows: between, last } = pages.branch(page);
        seen.add(page);
        rows.push(...between);
        let from = above;
        for (const child of children) {
          visit(child.page, from, child.upTo);
          from = child.upTo;
        }
        visit(last, from, upTo);
        return;
      }
      const leaf = pages.leaf(page);
      seen.add(page);
      rows.push(...leaf.rows);
      if (leaf.unread > 0) lost.push(`${leaf.unread} rows of page ${page} cannot be read${range}`);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      lost.push(`page ${page} cannot be read${range}`);
    }
  }

  visit(root, null, null);
  return { rows, lost };
}

function rangeOf(above: number | null, upTo: number | null): string {
  if (above === null && upTo === null) return '';
  if (above === null) return `: rows up to ${upTo}`;
  return upTo === null ? `: rows from ${above + 1}` : `: rows ${above + 1} to ${upTo}`;
}
