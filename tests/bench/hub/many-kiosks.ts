import { ahead, type HubLine, pullOnce, pushLacking } from '../../../core/hub/exchange.ts';
import { DAY_MS } from '../../../core/moment.ts';
import { type Random, seededRandom } from '../../../hardware/simulator/random.ts';
import { invite } from '../../../server/hub/credentials.ts';
import type { Invitation } from '../../../server/hub/wire.ts';
import { openHubLine } from '../../../server/sync/line.ts';
import { ModelKiosk } from '../../core/hub/model.ts';
import { untilItGoes } from './kiosk-apart.ts';
import { besideHub, type RunningHub } from './machines.ts';
import { toldEvent } from './told.ts';

/** Two kiosks a farm. */
export const MANY = { kiosks: 1000, farms: 500 } as const;
/** A tenth of a busy day of 400 animals, three events each, exchanged in so many turns. */
const TURNS = 6;
const EVENTS_A_TURN = 20;
/** A kiosk that comes back after so many days brings what it told in them. */
const AWAY_DAYS = 90;
const AT_ONCE = 16;
/** In which turn what is put back is copied, and put back. */
const PUT_BACK = { card: [1, 3], hub: [2, 4] } as const;
const LONGEST_OFF_MS = 10 * 365 * DAY_MS;

interface Member {
  readonly kiosk: ModelKiosk;
  readonly invitation: Invitation;
  /** How far its clock is off. */
  readonly offMs: number;
  /** The turns in which nothing of it arrives. */
  readonly cutOff: readonly [number, number] | null;
  /** Whether its card is put back without a word. */
  readonly putBack: boolean;
  readonly away: boolean;
  line: HubLine & { close(): void };
  card: ReturnType<ModelKiosk['backUp']> | null;
}

/** What a day of many kiosks came to. */
export interface ManyDay {
  readonly hub: RunningHub;
  readonly members: readonly { readonly invitation: Invitation }[];
  readonly events: number;
  readonly seconds: number;
  /** Milliseconds an exchange of one kiosk took, sorted. */
  readonly meetings: readonly number[];
  readonly lostCalls: number;
  /** Seconds until the kiosk that was away had exchanged everything, and how much that was. */
  readonly back: { readonly seconds: number; readonly events: number };
  /** Kiosks whose card was put back, and of them those that told their events anew in another life. */
  readonly putBack: number;
  readonly anotherLife: number;
  readonly wrongClocks: number;
  readonly cutOff: number;
  /** Events that somebody held and that were missing at a kiosk of the farm in the end, and those told twice there. */
  readonly lost: number;
  readonly doubled: number;
}

/**
 * Lives a day of many kiosks, as fast as it goes, against a hub as it runs: kiosks in memory, their lines and all behind
 * them real. Some are cut off for half of it, some have clocks that are wrong by years, some cards are put back without a word,
 * one kiosk was away for 90 days, answers are lost, the hub is killed, and put back to where it was two turns before.
 */
export async function liveManyDay(first: RunningHub): Promise<ManyDay> {
  const random = seededRandom(7);
  let hub = first;
  const fate = { lost: 0, random, whole: false };
  const members = await invited(hub, random, fate);
  const meetings: number[] = [];
  let told = 0;
  let copy = '';
  const began = performance.now();
  for (let turn = 0; turn < TURNS; turn += 1) {
    if (turn === PUT_BACK.hub[0]) {
      await hub.stop(false);
      copy = await hub.postgres.copyOf(hub.database);
      hub = await hub.moveTo(hub.database);
      reopen(members, hub, fate);
    }
    if (turn === PUT_BACK.hub[1]) {
      hub = await hub.moveTo(copy);
      reopen(members, hub, fate);
    }
    for (const member of members) {
      if (member.putBack && turn === PUT_BACK.card[0]) member.card = member.kiosk.backUp();
      if (member.putBack && turn === PUT_BACK.card[1] && member.card !== null)
        member.kiosk.restore(member.card, false);
      told += tell(member, EVENTS_A_TURN * (member.away && turn === 0 ? AWAY_DAYS * TURNS : 1));
    }
    await eachOf(members, async (member) => {
      const { away, cutOff } = member;
      if (away || (cutOff !== null && turn >= cutOff[0] && turn < cutOff[1])) return;
      const from = performance.now();
      await meet(member).catch(() => {});
      meetings.push(performance.now() - from);
    });
  }
  const seconds = (performance.now() - began) / 1000;
  fate.whole = true;
  const alive = idsByFarm(members);
  const back = await comeBack(members);
  for (let round = 0; round < 3; round += 1)
    await eachOf(members, (member) => untilItGoes(() => meet(member)));
  const { lost, doubled } = judged(members, alive);
  for (const { line } of members) line.close();
  const putBack = members.filter((member) => member.putBack);
  return {
    hub,
    members,
    events: told,
    seconds,
    meetings: meetings.sort((a, b) => a - b),
    lostCalls: fate.lost,
    back,
    putBack: putBack.length,
    anotherLife: putBack.filter(({ kiosk }) => kiosk.life !== `${kiosk.name}-1`).length,
    wrongClocks: members.filter(({ offMs }) => offMs !== 0).length,
    cutOff: members.filter(({ cutOff }) => cutOff !== null).length,
    lost,
    doubled,
  };
}

interface Fate {
  lost: number;
  readonly random: Random;
  /** From now on nothing is lost. */
  whole: boolean;
}

async function invited(hub: RunningHub, random: Random, fate: Fate): Promise<Member[]> {
  const database = await besideHub(hub);
  const members: Member[] = [];
  for (let n = 0; n < MANY.kiosks; n += 1) {
    const farm = `many-${n % MANY.farms}`;
    const invitation = await invite(database, farm, `shed ${n}`, { hub: hub.address, ca: null });
    const kiosk = new ModelKiosk(`many-kiosk-${n}`, 200);
    const from = Math.floor(random() * (TURNS / 2));
    members.push({
      kiosk,
      invitation,
      offMs: n % 20 === 3 ? Math.round((random() - 0.5) * 2 * LONGEST_OFF_MS) : 0,
      cutOff: n % 10 === 1 ? [from, from + TURNS / 2] : null,
      putBack: n % 50 === 2,
      away: n === 0,
      line: openLine(invitation, kiosk, fate),
      card: null,
    });
  }
  await database.close();
  return members;
}

/** A line of which one answer in a hundred never comes. */
function openLine(invitation: Invitation, kiosk: ModelKiosk, fate: Fate): Member['line'] {
  const line = openHubLine({ invitation, kiosk: kiosk.name, named: () => {} });
  const maybe = async <T>(answer: Promise<T>): Promise<T> => {
    const came = await answer;
    if (fate.whole || fate.random() > 0.01) return came;
    fate.lost += 1;
    throw new Error('the answer is lost');
  };
  return {
    push: (batch) => maybe(line.push(batch)),
    pull: (have) => maybe(line.pull(have, 0)),
    idAt: (life, sequence) => maybe(line.idAt(life, sequence)),
    close: line.close,
  };
}

function reopen(members: readonly Member[], { address }: RunningHub, fate: Fate): void {
  for (const member of members) {
    member.line.close();
    member.line = openLine({ ...member.invitation, hub: address }, member.kiosk, fate);
  }
}

let ids = 0;

function tell({ kiosk, offMs }: Member, many: number): number {
  for (let i = 0; i < many; i += 1) {
    const sequence = (kiosk.lives.get(kiosk.life)?.length ?? 0) + 1;
    const { clock, kind, body } = toldEvent({ kiosk: kiosk.name, life: kiosk.life, offMs }, sequence);
    // Numbers may be used twice, ids never are.
    kiosk.tell(`many-${++ids}`, { clock, kind, body });
  }
  return many;
}

/** Exchanges until nothing is left to exchange. */
async function meet({ kiosk, line }: Member): Promise<void> {
  for (;;) {
    const { events, heads, parted } = await pullOnce(kiosk, line, 0);
    const now = await pushLacking(kiosk, line, heads);
    if (events.length + parted.length === 0 && ahead(now, kiosk.heads()).length === 0) return;
  }
}

async function eachOf(members: readonly Member[], work: (member: Member) => Promise<void>): Promise<void> {
  const waiting = [...members];
  const worker = async () => {
    for (let member = waiting.shift(); member !== undefined; member = waiting.shift()) await work(member);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
}

async function comeBack(members: readonly Member[]): Promise<ManyDay['back']> {
  const away = members.find((member) => member.away) as Member;
  const from = performance.now();
  await untilItGoes(() => meet(away));
  const events = [...away.kiosk.heads().values()].reduce((sum, head) => sum + head, 0);
  return { seconds: (performance.now() - from) / 1000, events };
}

/** By farm, the ids that any kiosk of it holds. */
function idsByFarm(members: readonly Member[]): Map<string, Set<string>> {
  const byFarm = new Map<string, Set<string>>();
  for (const { kiosk, invitation } of members) {
    const known = byFarm.get(invitation.farm) ?? new Set();
    for (const id of kiosk.ids()) known.add(id);
    byFarm.set(invitation.farm, known);
  }
  return byFarm;
}

function judged(members: readonly Member[], alive: ReadonlyMap<string, ReadonlySet<string>>) {
  let [lost, doubled] = [0, 0];
  for (const { kiosk, invitation } of members) {
    const once = new Set(kiosk.ids());
    const all = [...kiosk.lives.values()].reduce((sum, events) => sum + events.length, 0);
    doubled += all - once.size;
    for (const id of alive.get(invitation.farm) ?? []) if (!once.has(id)) lost += 1;
  }
  return { lost, doubled };
}
