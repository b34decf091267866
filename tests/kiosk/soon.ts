import { vi } from 'vitest';

/** Waits for what a screen loads or fetches before it shows: a part loaded at need takes seconds on a busy machine. */
export function soon<T>(check: () => T): Promise<T> {
  return vi.waitFor(check, { timeout: 15_000 });
}
