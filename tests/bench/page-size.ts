import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build, type Rolldown } from 'vite';

/** The scripts of the built page, in bytes after gzip. Fonts and styles are not counted. */
export interface PageSize {
  /** What the page needs before it draws anything: its entry and all that it imports at once. */
  readonly start: number;
  /** Every script there is, in every language. */
  readonly all: number;
  /** The files of this project that the start is made of. */
  readonly modules: readonly string[];
}

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Builds the page in memory and weighs it. */
export async function pageSize(): Promise<PageSize> {
  const built = await asShipped(() =>
    build({ configFile: `${ROOT}kiosk/vite.config.ts`, logLevel: 'error', build: { write: false } }),
  );
  if (Array.isArray(built) || !('output' in built)) throw new Error('the page is built once');
  const chunks = built.output.filter((file) => file.type === 'chunk');
  const start = startOf(chunks);
  return {
    start: weight(start),
    all: weight(chunks),
    modules: start
      .flatMap(({ moduleIds }) => moduleIds)
      .filter((id) => id.startsWith(ROOT) && !id.includes('node_modules'))
      .map((id) => id.slice(ROOT.length)),
  };
}

/** Runs a build as a release is made: a test runner's environment would bring the libraries' own checks along. */
async function asShipped<T>(make: () => Promise<T>): Promise<T> {
  const before = process.env['NODE_ENV'];
  process.env['NODE_ENV'] = 'production';
  try {
    return await make();
  } finally {
    process.env['NODE_ENV'] = before;
  }
}

function startOf(chunks: readonly Rolldown.OutputChunk[]): Rolldown.OutputChunk[] {
  const open = chunks.filter(({ isEntry }) => isEntry);
  const found = new Set(open);
  for (let chunk = open.pop(); chunk !== undefined; chunk = open.pop()) {
    for (const each of chunks) {
      if (!chunk.imports.includes(each.fileName) || found.has(each)) continue;
      found.add(each);
      open.push(each);
    }
  }
  return [...found];
}

function weight(chunks: readonly Rolldown.OutputChunk[]): number {
  return chunks.reduce((sum, { code }) => sum + gzipSync(code).length, 0);
}
