import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { writeWhole } from '../config/write-whole.ts';
import { Invitation } from '../hub/wire.ts';

/** The name of the invitation in the data folder. */
export const HUB_FILE = 'hub.json';
/** The name by which it is looked for on a memory stick. */
export const STICK_FILE = 'byreside-hub.json';

/** What the data folder says of a hub. */
export type Joined =
  | { readonly kind: 'none' }
  | { readonly kind: 'joined'; readonly invitation: Invitation }
  | { readonly kind: 'unreadable'; readonly why: string };

/** Reads the invitation in a data folder. Never throws. */
export function readJoined(dataFolder: string): Joined {
  const file = join(dataFolder, HUB_FILE);
  if (!existsSync(file)) return { kind: 'none' };
  const read = readInvitation(file);
  return 'why' in read ? { kind: 'unreadable', why: read.why } : { kind: 'joined', invitation: read };
}

/** The first invitation that lies on a stick, or in the folder of one; `null` where none does. */
export function invitationOn(sticks: readonly string[]): Invitation | { readonly why: string } | null {
  const file = sticks.map((stick) => join(stick, STICK_FILE)).find((path) => existsSync(path));
  return file === undefined ? null : readInvitation(file);
}

/** Keeps an invitation. Throws when the disk refuses. */
export function keepInvitation(dataFolder: string, invitation: Invitation): void {
  writeWhole(join(dataFolder, HUB_FILE), `${JSON.stringify(invitation, null, 2)}\n`);
}

/** Forgets the hub. What came from it stays. Throws when the disk refuses. */
export function forgetHub(dataFolder: string): void {
  rmSync(join(dataFolder, HUB_FILE), { force: true });
}

function readInvitation(file: string): Invitation | { readonly why: string } {
  try {
    const parsed = Invitation.safeParse(JSON.parse(readFileSync(file, 'utf8')));
    if (parsed.success) return parsed.data;
    const [issue] = parsed.error.issues;
    return { why: `${issue?.path.join('.')}: ${issue?.message}` };
  } catch (error) {
    return { why: error instanceof Error ? error.message : String(error) };
  }
}
