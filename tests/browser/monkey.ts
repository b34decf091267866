import { between, type Random } from '../../hardware/simulator/random.ts';
import type { KioskPage } from './kiosk-page.ts';

/** What a wet glove, a sleeve or a drip does to a screen; a tap is the commonest. */
const TOUCHES = [
  ...Array<'tap'>(12).fill('tap'),
  ...Array<'drip'>(3).fill('drip'),
  ...Array<'palm'>(2).fill('palm'),
  ...Array<'smear'>(2).fill('smear'),
  'long',
] as const;

/** A dose that left the page, and the touch it left under. */
export interface SentDose {
  readonly type: string;
  /** How long a finger had been down on the control by then, in ms; `null` where none was. */
  readonly heldMs: number | null;
  /** Test id of the control under that finger. */
  readonly control: string | null;
}

declare global {
  interface Window {
    noteDose(dose: SentDose): Promise<void>;
  }
}

/**
 * Notes, in the page, every dose that is sent and the finger that was down: independent of the kiosk's own code.
 *
 * What it comes to tells those since it was asked last; they are kept out of the page, which may be loaded anew.
 */
export async function watchDoses(kiosk: KioskPage): Promise<() => Promise<SentDose[]>> {
  const sent: SentDose[] = [];
  await kiosk.page.exposeFunction('noteDose', (dose: SentDose) => sent.push(dose));
  await kiosk.page.addInitScript(() => {
    const down = new Map<number, { at: number; control: string | null }>();
    const listen = { capture: true, passive: true };
    window.addEventListener(
      'pointerdown',
      (event) => {
        const control = event.target instanceof Element ? event.target.closest('[data-testid]') : null;
        const id = control instanceof HTMLElement ? (control.dataset['testid'] ?? null) : null;
        down.set(event.pointerId, { at: performance.now(), control: id });
      },
      listen,
    );
    for (const end of ['pointerup', 'pointercancel'] as const)
      window.addEventListener(end, (event) => down.delete(event.pointerId), listen);
    const send = WebSocket.prototype.send;
    WebSocket.prototype.send = function (data) {
      const { intent } = typeof data === 'string' ? JSON.parse(data) : {};
      if (['give', 'give-group', 'answer'].includes(intent?.type)) {
        const longest = [...down.values()].sort((a, b) => a.at - b.at)[0];
        void window.noteDose({
          type: intent.type,
          heldMs: longest === undefined ? null : performance.now() - longest.at,
          control: longest?.control ?? null,
        });
      }
      send.call(this, data);
    };
  });
  return async () => {
    await kiosk.page.waitForLoadState();
    // What the page told before it answers has come.
    await kiosk.page.evaluate(() => true);
    return sent.splice(0);
  };
}

/** Touches a page at random: so many touches, the same for the same source of chance. */
export async function touchAbout(kiosk: KioskPage, touches: number, random: Random): Promise<void> {
  const { page } = kiosk;
  const session = await page.context().newCDPSession(page);
  const size = page.viewportSize() ?? { width: 800, height: 480 };
  const somewhere = () => ({
    x: Math.floor(between(random, 0, size.width)),
    y: Math.floor(between(random, 0, size.height)),
  });
  const near = ({ x, y }: Point, far: number): Point => ({
    x: Math.min(size.width - 1, Math.max(0, x + between(random, -far, far))),
    y: Math.min(size.height - 1, Math.max(0, y + between(random, -far, far))),
  });
  const send = async (type: 'touchStart' | 'touchMove' | 'touchEnd', points: readonly Point[]) => {
    const taken = session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: points.map((point, id) => ({ ...point, id })),
    });
    // A browser that is short of time may never say that it took a touch; the page itself must answer all the same.
    if (
      !(await within(TAKEN_MS, taken)) &&
      !(await within(
        ANSWERS_MS,
        page.evaluate(() => true),
      ))
    )
      throw new Error(`the page answers no more after ${type} at ${JSON.stringify(points)}`);
  };
  const press = async (points: readonly Point[], ms: number) => {
    await send('touchStart', points);
    if (ms > 0) await page.waitForTimeout(ms);
    await send('touchEnd', []);
  };

  for (let done = 0; done < touches; ) {
    const at = somewhere();
    const kind = TOUCHES[Math.floor(random() * TOUCHES.length)];
    done += 1;
    switch (kind) {
      case 'drip':
        for (let drop = 0; drop < 6; drop += 1, done += 1) await press([near(at, 8)], 0);
        break;
      case 'palm':
        await press([at, near(at, 60), near(at, 60)], between(random, 0, 120));
        break;
      case 'smear':
        await send('touchStart', [at]);
        for (let step = 0; step < 4; step += 1) await send('touchMove', [near(at, 120)]);
        await send('touchEnd', []);
        break;
      case 'long':
        await press([at], between(random, 150, 900));
        break;
      default:
        await press([at], between(random, 0, 40));
    }
  }
  await within(TAKEN_MS, session.detach());
}

/** A place on the panel, in px. */
interface Point {
  readonly x: number;
  readonly y: number;
}

/** How long a browser may take over a touch, and a page to answer, in ms. */
const TAKEN_MS = 3000;
const ANSWERS_MS = 15_000;

/** Whether something is done in time. */
function within(ms: number, work: Promise<unknown>): Promise<boolean> {
  return Promise.race([
    work.then(() => true),
    new Promise<boolean>((resolve) => setTimeout(resolve, ms, false)),
  ]);
}
