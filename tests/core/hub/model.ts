import type { Event } from '../../../core/hub/event.ts';
import type { Holder, HubLine, Pulled, PushAnswer, Pushed, Tip } from '../../../core/hub/exchange.ts';
import { type HeldOf, judgePush } from '../../../core/hub/push.ts';

/** Lives as somebody holds them: events by their numbers, the first at place 0. */
export type Lives = Map<string, Event[]>;

const copy = (lives: Lives): Lives => new Map([...lives].map(([life, events]) => [life, [...events]]));

function heldOf(events: readonly Event[]): HeldOf {
  return { head: events.length, idAt: (sequence) => events[sequence - 1]?.id };
}

function eventsIn(lives: Lives, life: string): Event[] {
  const events = lives.get(life) ?? [];
  lives.set(life, events);
  return events;
}

const headsOf = (lives: Lives) => new Map([...lives].map(([life, events]) => [life, events.length]));

/** A kiosk in memory, whose disk can be put back to an earlier state. */
export class ModelKiosk implements Holder {
  readonly name: string;
  lives: Lives = new Map();
  life: string;
  #begun = 0;
  readonly #many: number;

  constructor(name: string, many: number) {
    this.name = name;
    this.#many = many;
    this.life = this.#newLife();
  }

  #newLife(): string {
    return `${this.name}-${++this.#begun}`;
  }

  /** Tells an event of an id, of which the rest matters to nobody unless it is said. */
  tell(id: string, { clock = '', kind = 'note', body = null }: Partial<Event> = {}): void {
    const own = eventsIn(this.lives, this.life);
    const place = { kiosk: this.name, life: this.life, sequence: own.length + 1 };
    own.push({ ...place, id, clock, kind, body });
  }

  ids(): string[] {
    return [...new Set([...this.lives.values()].flat().map(({ id }) => id))].sort();
  }

  backUp(): { lives: Lives; life: string } {
    return { lives: copy(this.lives), life: this.life };
  }

  /** Puts the disk back; `told` where the program knows of it and begins another life. */
  restore(backup: { lives: Lives; life: string }, told: boolean): void {
    this.lives = copy(backup.lives);
    this.life = told ? this.#newLife() : backup.life;
  }

  heads = () => headsOf(this.lives);
  idAt = (life: string, sequence: number) => this.lives.get(life)?.[sequence - 1]?.id;
  after = (life: string, sequence: number) =>
    (this.lives.get(life) ?? []).slice(sequence, sequence + this.#many);

  take(events: readonly Event[]) {
    const before = copy(this.lives);
    for (const event of events) {
      const known = eventsIn(this.lives, event.life);
      const last = known[event.sequence - 2]?.id ?? null;
      const verdict = judgePush(heldOf(known), {
        before: last ?? (event.sequence === 1 ? null : ''),
        events: [event],
      });
      if (!verdict.ok) {
        this.lives = before;
        return { why: verdict.why, life: event.life };
      }
      if (verdict.newFrom === 0) known.push(event);
    }
    return null;
  }

  retell(life: string, sequence: number): void {
    if (life === this.life) this.life = this.#newLife();
    const own = eventsIn(this.lives, this.life);
    for (const event of eventsIn(this.lives, life).splice(sequence))
      own.push({ ...event, kiosk: this.name, life: this.life, sequence: own.length + 1 });
  }
}

/** A hub in memory, whose disk can be put back to an earlier state, on a line that loses what `lost` says. */
export class ModelHub implements HubLine {
  lives: Lives = new Map();
  /** Asked at each call: whether it is lost on its way, its answer is, or it is carried out twice. */
  fate: () => 'arrives' | 'lost' | 'answer-lost' | 'twice' = () => 'arrives';
  readonly #many: number;

  constructor(many: number) {
    this.#many = many;
  }

  #carried<T>(work: () => T): T {
    const fate = this.fate();
    if (fate === 'lost') throw new Error('the line is cut');
    const first = work();
    if (fate === 'answer-lost') throw new Error('the line is cut');
    return fate === 'twice' ? work() : first;
  }

  async push({ life, before, events }: Pushed): Promise<PushAnswer> {
    return this.#carried(() => {
      const known = eventsIn(this.lives, life);
      const verdict = judgePush(heldOf(known), { before, events });
      if (!verdict.ok) return { ...verdict, head: known.length };
      known.push(...events.slice(verdict.newFrom));
      return { ok: true, head: known.length };
    });
  }

  async pull(have: ReadonlyMap<string, Tip>): Promise<Pulled> {
    return this.#carried(() => {
      const parted = [...have].flatMap(([life, { sequence, id }]) => {
        const known = this.lives.get(life)?.[sequence - 1];
        return known !== undefined && known.id !== id ? [life] : [];
      });
      const events = [...this.lives].flatMap(([life, known]) =>
        parted.includes(life) ? [] : known.slice(have.get(life)?.sequence ?? 0),
      );
      return { events: events.slice(0, this.#many), heads: headsOf(this.lives), parted };
    });
  }

  async idAt(life: string, sequence: number): Promise<string | null> {
    return this.#carried(() => this.lives.get(life)?.[sequence - 1]?.id ?? null);
  }

  backUp(): Lives {
    return copy(this.lives);
  }

  restore(backup: Lives): void {
    this.lives = copy(backup);
  }

  ids(): string[] {
    return [...new Set([...this.lives.values()].flat().map(({ id }) => id))].sort();
  }
}
