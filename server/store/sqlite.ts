import { createRequire } from 'node:module';
import type BetterSqlite from 'better-sqlite3';

/** The release of the driver that this Node can load: the present one is built on Node-API 10, which came with Node 22.14. */
const PACKAGE = Number(process.versions['napi']) >= 10 ? 'better-sqlite3' : 'better-sqlite3-node20';

/**
 * Opens SQLite files.
 *
 * Of the driver's two releases neither serves every Node: on Node 20 the newer one ends the process as it is loaded, on
 * Node 24.19 and later the older one does when a statement is collected (nodejs/node issue 65446).
 */
export const Database: typeof BetterSqlite = createRequire(import.meta.url)(PACKAGE);
