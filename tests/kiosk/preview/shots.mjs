import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));

/**
 * Draws every scene as a PNG and looks for what no picture may have: text or plates cut off, scrolling, a word
 * under the smallest size or too pale, plates too near to each other.
 *
 * @param {object} options
 * @param {string} options.outDir where the pictures go, one folder a size and face
 * @param {{ width: number, height: number }[]} [options.sizes] of panels in `tests/browser/gallery/panels.ts`
 * @param {('dim' | 'glare')[]} [options.faces]
 * @param {RegExp} [options.only] the names of the scenes wanted
 * @param {'en' | 'es' | 'pseudo'} [options.language] the language of the screen; `pseudo` is English, longer and between marks
 * @returns {Promise<{ pictures: number, faults: string[] }>}
 */
export async function takeShots({
  outDir,
  sizes = [{ width: 800, height: 480 }],
  faces = ['dim', 'glare'],
  only = /./,
  language = 'en',
}) {
  const load = async (file) =>
    (await runnerImport(join(ROOT, file), { root: ROOT, configFile: false, logLevel: 'error' })).module;
  const { openGallery } = await load('tests/browser/gallery/walk.ts');
  const { panelOf } = await load('tests/browser/gallery/panels.ts');
  const { SCENES } = await load('tests/kiosk/preview/scenes.ts');
  let pictures = 0;
  const gallery = await openGallery();
  try {
    const faults = await gallery.walk({
      scenes: SCENES.filter(({ name }) => only.test(name)),
      panels: sizes.map(panelOf),
      faces,
      words: [language],
      async look(page, { scene, panel, face }) {
        const folder = join(outDir, `${panel.widthPx}x${panel.heightPx}-${face}`);
        mkdirSync(folder, { recursive: true });
        // A held press fills its control while the finger stays.
        if (scene.taps?.at(-1)?.startsWith('hold:')) await page.waitForTimeout(180);
        await page.screenshot({ path: join(folder, `${scene.name}.png`) });
        pictures += 1;
        return page.evaluate(() => window.gallery.faults());
      },
    });
    return { pictures, faults };
  } finally {
    await gallery.close();
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [outDir = '/tmp/shots', only = '.', face, language] = process.argv.slice(2);
  const faces = face ? [face] : ['dim', 'glare'];
  const result = await takeShots({ outDir, only: new RegExp(only), faces, language });
  for (const fault of result.faults) console.log(fault);
  console.log(`${result.pictures} pictures in ${outDir}`);
}
