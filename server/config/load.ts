import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { z } from 'zod';
import { WAND_PROFILE } from '../../hardware/wand/wand-driver.ts';
import type { ProblemView } from '../../shared/state.ts';
import type { Environment } from './environment.ts';
import { KioskConfig } from './kiosk-config.ts';

/** How the kiosk runs: on real devices, as a demo, or not at all because its configuration cannot be read. */
export type Setup =
  | { readonly kind: 'real'; readonly config: KioskConfig }
  | { readonly kind: 'demo'; readonly config: KioskConfig }
  | { readonly kind: 'problem'; readonly config: KioskConfig; readonly problem: ProblemView };

/** The name of the configuration file in the data folder. */
export const CONFIG_FILE = 'kiosk.json';
/** The name of the database of real work. */
export const REAL_DATABASE = 'byreside.sqlite';
/** The name of the demo's own database. */
export const DEMO_DATABASE = 'demo.sqlite';

/**
 * Decides how to run from the data folder and the environment.
 *
 * The demo runs only when asked for, or when the folder was never configured and no device is set. A configuration
 * that cannot be read gives a problem: no device, no dose, and never the demo.
 */
export function loadSetup(environment: Environment, demoAsked: boolean): Setup {
  if (demoAsked) return { kind: 'demo', config: KioskConfig.parse({ people: ['Ada', 'Bram'] }) };
  const file = join(environment.dataFolder, CONFIG_FILE);
  const overridden = Object.keys(environment.devices).length > 0;
  const configured = existsSync(file);
  if (!configured && !overridden && !existsSync(join(environment.dataFolder, REAL_DATABASE))) {
    return loadSetup(environment, true);
  }
  const raw = configured ? readJson(file) : { ok: true as const, value: {} };
  if (!raw.ok) return problem(file, 'config-unreadable', null, raw.why);
  return checkConfig(file, withOverrides(raw.value, environment));
}

function readJson(file: string): { ok: true; value: unknown } | { ok: false; why: string } {
  try {
    return { ok: true, value: JSON.parse(readFileSync(file, 'utf8')) };
  } catch (error) {
    return { ok: false, why: error instanceof Error ? error.message : String(error) };
  }
}

function withOverrides(value: unknown, environment: Environment): unknown {
  if (Object.keys(environment.devices).length === 0) return value;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  // With any device given by the environment the file's own are put aside: the others are absent.
  const devices: Record<string, unknown> = {};
  for (const [role, text] of Object.entries(environment.devices)) {
    const [path, profile, baud] = text.split(',');
    devices[role] = {
      path,
      profile: profile || (role === 'wand' ? WAND_PROFILE : 'st-gs'),
      ...(baud ? { baud: Number(baud) } : {}),
    };
  }
  return { ...value, devices };
}

function checkConfig(file: string, value: unknown): Setup {
  const result = KioskConfig.safeParse(value);
  if (result.success) return { kind: 'real', config: result.data };
  const issue = result.error.issues[0] as z.core.$ZodIssue;
  return problem(file, 'config-invalid', issue.path.join('.') || null, issue.message);
}

function problem(
  file: string,
  code: 'config-unreadable' | 'config-invalid',
  field: string | null,
  detail: string,
): Setup {
  const remedy =
    code === 'config-unreadable'
      ? 'Mend the file so that it is valid JSON, or restore a copy, then start the kiosk again.'
      : `Correct ${field === null ? 'the file' : `"${field}"`} in the file (or in the BYRESIDE_ variable that sets it), then start the kiosk again.`;
  return { kind: 'problem', config: KioskConfig.parse({}), problem: { code, file, field, detail, remedy } };
}
