import { z } from 'zod';

/** What every intent carries: the id it is handled under, once. */
export const intentId = z.string().min(1).max(64);
/** An id of something that exists: an animal, a jug, an offer. */
export const ref = z.string().min(1).max(64);
