import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Browser } from 'playwright-core';
import { type KioskProcess, startKiosk } from '../process/kiosk-process.ts';
import { bringToOffer } from './bring-to-offer.ts';
import { type KioskPage, openBrowser, openPage } from './kiosk-page.ts';
import { type SentDose, watchDoses } from './monkey.ts';

/** A demo farm on a server of its own with a page on it, made anew whenever it was touched so that nothing can be done on it. */
export class TouchedFarm {
  #now: Farm | null = null;
  #browser: Browser | null = null;
  /** Ends the server, also where no page came to stand on it. */
  #stop: () => Promise<void> = async () => undefined;

  /** The server in use. */
  get server(): KioskProcess {
    return this.#farm().server;
  }

  /** The page in use. */
  get kiosk(): KioskPage {
    return this.#farm().kiosk;
  }

  /** Doses that left the page since this was asked last. */
  doses(): Promise<SentDose[]> {
    return this.#farm().doses();
  }

  /** Whether the kiosk was made to begin anew, which it does at an address of its own; rejects where it is gone. */
  async beganAnew(): Promise<boolean> {
    const { server } = this;
    const answers = () =>
      server.state().then(
        () => true,
        () => false,
      );
    if (await answers()) return false;
    for (const end = Date.now() + BEGINS_MS; Date.now() < end; await sleep(100)) {
      if (addressesSaid(server) > 1) return true;
      if (server.child.exitCode !== null) break;
    }
    throw new Error(`the kiosk is gone: ${server.log().slice(-2000)}`);
  }

  /** Loads the page at a screen, on a farm that can be worked on; at the platform a dose is on offer. Tells which goat it is for. */
  async open(screen: string): Promise<string | null> {
    if (this.#now === null || !(await becomesFit(this.#now.server))) await this.#anew();
    let offered: string | null = null;
    if (screen === 'platform') {
      offered = await bringToOffer(this.server);
      if (offered === null) {
        // Every goat is dosed.
        await this.#anew();
        offered = await bringToOffer(this.server);
      }
      if (offered === null) throw new Error('no goat of the demo farm can be dosed');
    }
    await this.kiosk.page.goto('about:blank');
    await this.kiosk.page.goto(`${this.server.base}/#${screen}`);
    await this.kiosk.page.waitForSelector('.kiosk[data-status="live"]');
    return offered;
  }

  async close(): Promise<void> {
    await this.#end();
    await this.#browser?.close();
    this.#browser = null;
  }

  async #end(): Promise<void> {
    const farm = this.#now;
    this.#now = null;
    await farm?.kiosk.close();
    await this.#stop();
  }

  async #anew(): Promise<void> {
    const complaints = this.#now?.kiosk.complaints ?? [];
    await this.#end();
    const folder = mkdtempSync(join(tmpdir(), 'touched-'));
    const server = await startKiosk({ BYRESIDE_DATA: folder });
    this.#stop = async () => {
      this.#stop = async () => undefined;
      const ended = new Promise((resolve) => server.child.once('exit', resolve));
      if (server.child.exitCode === null && server.child.kill('SIGTERM')) await ended;
      rmSync(folder, { recursive: true, force: true });
    };
    this.#browser ??= await openBrowser();
    const kiosk = await openPage(this.#browser, server.base);
    // Printed pages are no screens of the kiosk: without content, the page stays where it is.
    await kiosk.page.route('**/print/**', (route) => route.fulfill({ status: 204 }));
    // What an earlier page complained of is not forgotten with it.
    kiosk.complaints.push(...complaints);
    this.#now = { server, kiosk, doses: await watchDoses(kiosk) };
    await server.until((s) => s.platform.link === 'ready' && s.bench.link === 'ready', 'both scales ready');
    await server.send({ type: 'safety-read' });
  }

  #farm(): Farm {
    if (this.#now === null) throw new Error('no farm was opened');
    return this.#now;
  }
}

/** How long a kiosk may take to begin anew on a busy machine, in ms. */
const BEGINS_MS = 60_000;

function addressesSaid(server: KioskProcess): number {
  return server.log().match(/ready at /g)?.length ?? 0;
}

interface Farm {
  readonly server: KioskProcess;
  readonly kiosk: KioskPage;
  doses(): Promise<SentDose[]>;
}

/** How long pulled cables may take to be ready again, in ms; what is lost for good is made anew. */
const MENDS_MS = 5000;

/**
 * Whether it is the demo as it began, with scales and wand on their lines and the platform given to the animals, once
 * what was pulled is plugged and what was begun is broken off.
 */
async function becomesFit(server: KioskProcess): Promise<boolean> {
  if (addressesSaid(server) > 1) return false;
  for (const end = Date.now() + MENDS_MS; Date.now() < end; await sleep(200)) {
    const state = await server.state();
    if (!state.demo || !state.safetyRead) return false;
    const lost = (['platform', 'bench', 'wand'] as const).filter((role) => state[role].link !== 'ready');
    const [checks, syringe] = [state.check.step !== 'idle', state.syringeCheck.step !== 'idle'];
    if (lost.length === 0 && !checks && !syringe) return true;
    for (const role of lost) await server.tray({ do: 'plug-cable', role });
    if (checks) await server.send({ type: 'check-cancel' });
    if (syringe) await server.send({ type: 'syringe-check-cancel' });
  }
  return false;
}
