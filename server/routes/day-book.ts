import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { BOOK_KINDS } from '../../shared/book-kinds.ts';
import type { BookPageView } from '../../shared/day-book.ts';
import type { House } from '../house.ts';
import type { BookFilter, BookPlace } from '../store/book-pages.ts';
import { bookChoicesView, bookLineView } from '../view/book-view.ts';
import { dayBookView } from '../view/dose-view.ts';
import { linkNext, type PageQuery, pageAsked } from './paging.ts';

const MOST_LINES = 200;
const USUAL_LINES = 30;

/** What a page of the day book is asked for by; what does not fit is refused with its name. */
const Query = z.object({
  animal: z.string().max(64).optional(),
  medicine: z.string().max(64).optional(),
  by: z.string().max(64).optional(),
  kind: z.enum(BOOK_KINDS).optional(),
  /** RFC 3339: filed at this time or later. */
  from: z.iso.datetime().optional(),
  before: z
    .string()
    .regex(/^-?\d{1,16}\.\d{1,15}$/, 'take it from the page before')
    .optional(),
  limit: z
    .string()
    .regex(/^[1-9]\d{0,2}$/, `a number from 1 to ${MOST_LINES}`)
    .optional(),
});

/** What HTTP tells of the day book: its treatments by their numbers, and its lines by what is asked of them. */
export function addDayBookRoutes(app: FastifyInstance, { barn }: House): void {
  const { context } = barn;
  const everyAnimal = () => [...context.memory.animals, ...context.memory.gone];

  app.get<{ Querystring: PageQuery }>('/api/treatments', async ({ query }, reply) => {
    const { below, most } = pageAsked(query);
    const entries = context.store.dayBook.below(below, most);
    linkNext(reply, '/api/treatments', entries.at(-1)?.sequence, most, entries.length);
    return dayBookView(entries, everyAnimal(), context.memory.formulary);
  });
  app.get<{ Params: { id: string } }>('/api/treatments/:id', async ({ params }, reply) => {
    const entry = context.store.dayBook.entry(params.id);
    if (entry === undefined)
      return reply.code(404).send({ message: 'There is no such treatment. GET /api/treatments lists them.' });
    return dayBookView([entry], everyAnimal(), context.memory.formulary)[0];
  });
  app.get('/api/day-book', async ({ query }, reply) => {
    const asked = Query.safeParse(query);
    if (!asked.success) {
      const issue = asked.error.issues[0];
      return reply.code(400).send({ message: `${issue?.path.join('.')}: ${issue?.message}` });
    }
    const { before, limit = USUAL_LINES } = asked.data;
    const most = Math.min(Number(limit), MOST_LINES);
    const lines = context.store.dayBook.page(filterFrom(asked.data), placeFrom(before), most);
    const last = lines.length < most ? undefined : lines.at(-1)?.place;
    const animals = everyAnimal();
    return {
      lines: lines.map((line) => bookLineView(line, animals, context.memory.formulary)),
      next: last === undefined ? null : `${last.filedAtMs}.${last.line}`,
    } satisfies BookPageView;
  });
  app.get('/api/day-book/choices', async () =>
    bookChoicesView(context.store.dayBook.choices(), context.memory.formulary),
  );
}

function filterFrom({ animal, medicine, by, kind, from }: z.infer<typeof Query>): BookFilter {
  return {
    ...(animal === undefined ? {} : { animalId: animal }),
    ...(medicine === undefined ? {} : { medicineId: medicine }),
    ...(by === undefined ? {} : { by }),
    ...(kind === undefined ? {} : { kind }),
    ...(from === undefined ? {} : { fromMs: Date.parse(from) }),
  };
}

function placeFrom(before: string | undefined): BookPlace | null {
  if (before === undefined) return null;
  const [filedAtMs = 0, line = 0] = before.split('.').map(Number);
  return { filedAtMs, line };
}
