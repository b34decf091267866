import type { Intent } from '../../shared/intent.ts';

type WithoutId<T> = T extends { id: string } ? Omit<T, 'id'> : never;

/** An intent as a screen asks for it, before it gets its id. */
export type Wish = WithoutId<Intent>;

/** The intent that carries out a wish under an id. */
export function intentFrom(wish: Wish, id: string): Intent {
  return { ...wish, id } as Intent;
}
