import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';

/** Which rooms each room may import from, besides itself. */
const ALLOWED = {
  core: [],
  shared: ['core'],
  hardware: ['core'],
  server: ['core', 'shared', 'hardware'],
  kiosk: ['core', 'shared'],
};

/** The npm packages `core` may use; no Node module is among them. */
const CORE_PACKAGES = ['cephes', 'zod'];

const IMPORT =
  /^\s*(import|export)\b(?<type>\s+type\b)?[^'"]*?\bfrom\s*['"](?<from>[^'"]+)['"]|\bimport\s*\(\s*['"](?<lazy>[^'"]+)['"]\s*\)|^\s*import\s*['"](?<bare>[^'"]+)['"]/gm;

/** Every import that goes the wrong way, as `file imports target`, over the rooms below `root`. */
export function wrongArrows(root) {
  return Object.keys(ALLOWED).flatMap((room) =>
    sources(join(root, room)).flatMap((file) => wrongIn(root, room, file)),
  );
}

function sources(folder) {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|svelte)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name));
}

function wrongIn(root, room, file) {
  const found = [];
  for (const match of readFileSync(file, 'utf8').matchAll(IMPORT)) {
    const target = match.groups.from ?? match.groups.lazy ?? match.groups.bare;
    const complaint = target.startsWith('.')
      ? wrongRoom(room, relative(root, normalize(join(dirname(file), target))))
      : wrongPackage(room, target);
    if (complaint) found.push(`${relative(root, file)} imports ${target}`);
  }
  return found;
}

function wrongRoom(room, target) {
  const other = target.split('/')[0];
  return other !== room && !ALLOWED[room].includes(other);
}

function wrongPackage(room, target) {
  return room === 'core' && !CORE_PACKAGES.includes(target);
}
