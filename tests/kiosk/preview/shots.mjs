import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { build, runnerImport } from 'vite';
import { startFakeServer } from './fake-server.mjs';

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));
const CHROMIUM = {
  executablePath: '/usr/bin/chromium',
  args: [
    '--no-sandbox',
    '--disable-gpu',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--no-first-run',
  ],
};

/**
 * Draws every scene as a PNG and looks for what no picture may have: text or plates cut off, scrolling, a word
 * under the smallest size, plates too near to each other.
 *
 * @param {object} options
 * @param {string} options.outDir where the pictures go, one folder a size and face
 * @param {{ width: number, height: number }[]} [options.sizes]
 * @param {('dim' | 'glare')[]} [options.faces]
 * @param {RegExp} [options.only] the names of the scenes wanted
 * @param {'en' | 'es'} [options.language] the language of the screen
 * @returns {Promise<{ pictures: number, faults: string[] }>}
 */
export async function takeShots({
  outDir,
  sizes = [{ width: 800, height: 480 }],
  faces = ['dim', 'glare'],
  only = /./,
  language = 'en',
}) {
  const outBuild = join(outDir, 'built');
  await build({
    configFile: join(ROOT, 'kiosk/vite.config.ts'),
    logLevel: 'error',
    build: { outDir: outBuild, emptyOutDir: true },
  });
  const { module } = await runnerImport(join(ROOT, 'tests/kiosk/preview/scenes.ts'));
  const scenes = module.SCENES.filter(({ name }) => only.test(name));
  const server = await startFakeServer(outBuild);
  const browser = await chromium.launch(CHROMIUM);
  const faults = [];
  let pictures = 0;
  try {
    for (const size of sizes) {
      for (const face of faces) {
        const folder = join(outDir, `${size.width}x${size.height}-${face}`);
        mkdirSync(folder, { recursive: true });
        const context = await browser.newContext({
          viewport: size,
          hasTouch: true,
          timezoneId: 'UTC',
          locale: 'en-US',
        });
        const page = await context.newPage();
        for (const scene of scenes) {
          faults.push(...(await takeOne(page, server, scene, { face, language, folder })));
          pictures += 1;
        }
        await context.close();
      }
    }
  } finally {
    await browser.close();
    await server.close();
  }
  return { pictures, faults };
}

async function takeOne(page, server, scene, { face, language, folder }) {
  server.show({ ...scene.state, face, language }, scene.http);
  const said = [];
  const onConsole = (message) => message.type() === 'error' && said.push(message.text());
  const onError = (error) => said.push(error.message);
  page.on('console', onConsole);
  page.on('pageerror', onError);
  // Leaving the page first makes the next address a fresh load even where only its "#" part differs.
  await page.goto('about:blank');
  await page.goto(`${server.url}#${scene.place}`);
  await page.waitForSelector(`.kiosk[data-status="live"][lang^="${language}"]`, { timeout: 20_000 });
  await page.evaluate(() => document.fonts.ready);
  // What is fetched after the start, screen or answer, has come once nothing more is asked.
  await page.waitForLoadState('networkidle');
  if (scene.later !== undefined) {
    server.tell(scene.later);
    await page.waitForTimeout(100);
  }
  for (const tap of scene.taps ?? []) await press(page, tap);
  await page.screenshot({ path: join(folder, `${scene.name}.png`) });
  const found = await page.evaluate(lookForFaults);
  await page.mouse.move(1, 1);
  await page.mouse.up();
  page.off('console', onConsole);
  page.off('pageerror', onError);
  const { width, height } = page.viewportSize();
  return [...found, ...said].map((fault) => `${scene.name} ${width}x${height} ${face} ${language}: ${fault}`);
}

async function press(page, tap) {
  if (!tap.startsWith('hold:')) {
    await page.getByTestId(tap).first().waitFor({ timeout: 20_000 });
    // A button that has only just come takes no tap.
    await page.waitForTimeout(350);
    await page.getByTestId(tap).first().tap({ timeout: 20_000 });
    return;
  }
  const box = await page.getByTestId(tap.slice(5)).first().boundingBox();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.waitForTimeout(180);
}

/** Runs in the page. */
function lookForFaults() {
  const faults = [];
  const mm = Number.parseFloat(document.querySelector('.kiosk').style.getPropertyValue('--mm'));
  const within = { width: window.innerWidth, height: window.innerHeight };
  if (document.documentElement.scrollWidth > within.width) faults.push('the page is wider than the panel');
  for (const element of document.querySelectorAll('.kiosk *')) {
    const name =
      element.dataset?.testid ?? element.closest('[data-testid]')?.dataset.testid ?? element.tagName;
    const box = element.getBoundingClientRect();
    const text = [...element.childNodes].some(
      (node) => node.nodeType === 3 && node.textContent.trim() !== '',
    );
    if (text && box.width > 0) {
      const capMm = (Number.parseFloat(getComputedStyle(element).fontSize) * 0.7) / mm;
      if (element.closest('svg') === null && capMm < 3.15)
        faults.push(`${name}: capital height ${capMm.toFixed(1)} mm`);
      if (element.closest('svg') === null && box.right > within.width + 1)
        faults.push(`${name}: text runs out to the right`);
      if (element.closest('svg') === null && box.bottom > within.height + 1)
        faults.push(`${name}: text runs out below`);
      const style = getComputedStyle(element);
      if (
        element.scrollWidth > element.clientWidth + 1 &&
        style.overflowX === 'hidden' &&
        style.textOverflow !== 'ellipsis'
      )
        faults.push(`${name}: text cut off sideways`);
      const parent = element.parentElement.getBoundingClientRect();
      if (
        element.parentElement.matches('.plate') &&
        (box.right > parent.right + 1 || box.left < parent.left - 1)
      )
        faults.push(`${name}: text wider than its plate`);
      if (
        element.parentElement.matches('.plate') &&
        (box.bottom > parent.bottom + 1 || box.top < parent.top - 1)
      )
        faults.push(`${name}: text higher than its plate`);
    }
    if (element.matches('.step, .home, .holder, main') && element.scrollHeight > element.clientHeight + 1)
      faults.push(`${name}: ${element.scrollHeight - element.clientHeight} px too high`);
  }
  // What lies hidden under a sheet is not on the screen.
  const seen = (element) => element.checkVisibility({ visibilityProperty: true });
  const plates = [...document.querySelectorAll('main .plate')].filter(
    (plate) => !plate.disabled && seen(plate),
  );
  const give = plates.find(({ dataset }) => dataset.testid === 'give')?.getBoundingClientRect();
  for (const plate of plates) {
    const box = plate.getBoundingClientRect();
    const name = plate.dataset.testid;
    if (box.bottom > within.height || box.right > within.width) faults.push(`${name}: off the panel`);
    const least = plate.classList.contains('low') ? 14.5 : 19.5;
    if (box.height / mm < least) faults.push(`${name}: ${(box.height / mm).toFixed(1)} mm high`);
    if (box.width / mm < 19.5) faults.push(`${name}: ${(box.width / mm).toFixed(1)} mm wide`);
    if (
      give !== undefined &&
      name !== 'give' &&
      box.right <= give.left &&
      (give.left - box.right) / mm < 12.9
    )
      faults.push(`${name}: only ${((give.left - box.right) / mm).toFixed(1)} mm from give`);
  }
  if (give !== undefined && give.height / mm < 24.9)
    faults.push(`give: ${(give.height / mm).toFixed(1)} mm high`);
  // Nothing may lie on anything else, except where the tray hangs over the work on purpose.
  if (document.querySelector('[data-testid="tray"]') === null) {
    const words = [...document.querySelectorAll('main *')].filter(
      (element) =>
        element.closest('svg') === null &&
        seen(element) &&
        [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim() !== ''),
    );
    const apart = 4;
    // The box of a line of text is higher than its letters: only the middle of it counts.
    const letters = (element) => {
      const { left, right, top, bottom, height } = element.getBoundingClientRect();
      const trim = getComputedStyle(element).display === 'inline' ? 0.2 * height : 0;
      return { left, right, top: top + trim, bottom: bottom - trim };
    };
    const over = (a, b) =>
      Math.min(a.right, b.right) - Math.max(a.left, b.left) > apart &&
      Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > apart;
    for (const [at, word] of words.entries()) {
      const box = letters(word);
      for (const other of [...words.slice(at + 1), ...plates]) {
        if (word.contains(other) || other.contains(word)) continue;
        if (over(box, letters(other)))
          faults.push(`"${word.textContent.trim()}" lies on "${other.textContent.trim()}"`);
      }
    }
  }
  return [...new Set(faults)];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [outDir = '/tmp/shots', only = '.', face, language] = process.argv.slice(2);
  const faces = face ? [face] : ['dim', 'glare'];
  const result = await takeShots({ outDir, only: new RegExp(only), faces, language });
  for (const fault of result.faults) console.log(fault);
  console.log(`${result.pictures} pictures in ${outDir}`);
}
