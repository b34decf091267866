import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';

/** Where Debian puts its Chromium. */
export const CHROMIUM = '/usr/bin/chromium';

/** Switches for a browser that runs tests. */
const CHROMIUM_ARGS: readonly string[] = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

/** How long a page may take to come on a busy machine, in ms. */
const PATIENCE_MS = 90_000;

/** A kiosk page of the smallest panel, touched and never clicked. */
export interface KioskPage {
  readonly page: Page;
  /** Taps the part with this test id, optionally with further attributes as a CSS selector. */
  tap(testId: string, attributes?: string): Promise<void>;
  /** Keeps a finger on a part for so long, then lifts it. */
  press(testId: string, ms: number): Promise<void>;
  /** Puts a finger on a part; the function it comes to lifts it. */
  hold(testId: string): Promise<() => Promise<void>>;
  /** The text of a part. */
  text(testId: string): Promise<string>;
  /** Complaints of the page: errors, and refusals by its content policy. */
  readonly complaints: string[];
  close(): Promise<void>;
}

/** Starts the browser; `more` are further switches of it. */
export function openBrowser(more: readonly string[] = []): Promise<Browser> {
  return chromium.launch({ executablePath: CHROMIUM, args: [...CHROMIUM_ARGS, ...more] });
}

/** Opens a page on a server, in a browser of its own that ends with it; `more` are further switches of the browser. */
export async function openKiosk(base: string, more: readonly string[] = []): Promise<KioskPage> {
  const browser = await openBrowser(more);
  return { ...(await openPage(browser, base)), close: () => browser.close() };
}

/** Opens a page on a server at the smallest panel's size; closed, it leaves the browser running. */
export async function openPage(browser: Browser, base: string): Promise<KioskPage> {
  const context: BrowserContext = await browser.newContext({
    viewport: { width: 800, height: 480 },
    hasTouch: true,
  });
  const page = await context.newPage();
  page.setDefaultNavigationTimeout(PATIENCE_MS);
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  const touch = await context.newCDPSession(page);
  await page.goto(base);

  const part = (testId: string, attributes = '') =>
    page.locator(`[data-testid="${testId}"]${attributes}`).first();
  async function hold(testId: string): Promise<() => Promise<void>> {
    const box = await part(testId).boundingBox();
    if (box === null) throw new Error(`${testId} is not on the screen`);
    const point = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [point] });
    return async () => {
      await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    };
  }
  return {
    page,
    complaints,
    async tap(testId, attributes) {
      // Nobody taps what has only just been drawn, and the page takes no such tap.
      for (let stands = false; !stands; ) {
        await part(testId, attributes).waitFor();
        const before = await part(testId, attributes).elementHandle();
        await page.waitForTimeout(350);
        stands = (await before?.evaluate((node) => node.isConnected)) ?? false;
      }
      await part(testId, attributes).tap({ timeout: 8000 });
    },
    async press(testId, ms) {
      const lift = await hold(testId);
      await new Promise((resolve) => setTimeout(resolve, ms));
      await lift();
    },
    hold,
    // What is painted counts, not what stands in the document: hidden words are no words.
    // biome-ignore lint/performance/useDomNodeTextContent: see above
    text: async (testId) => (await part(testId).innerText()).replace(/\s+/g, ' ').trim(),
    close: () => context.close(),
  };
}
