import { oneAtATime } from '../../core/in-turn.ts';
import { openSerialPort } from '../serial/serialport-connection.ts';
import type { Cable, FarEnd } from './cable.ts';
import { createPtyPair } from './pty-pair.ts';

/** Any speed does: a pseudo-terminal has none. */
const BAUD = 9600;

/**
 * A plugged cable made of a pseudo-terminal pair, or `null` where this machine has no `socat`.
 *
 * The near end is `<folder>/<name>`, opened like any serial port; the far end goes to `farEnd` at every plug.
 */
export async function createPtyCable(folder: string, name: string, farEnd: FarEnd): Promise<Cable | null> {
  const made = await createPtyPair(`${folder}/${name}`, `${folder}/${name}-device`);
  if (!made.ok) return null;
  const { pair } = made;
  let plugged = false;
  // A hand that pulls while it still plugs ends with the cable pulled.
  const inTurn = oneAtATime();

  async function pullNow(): Promise<void> {
    plugged = false;
    await pair.pull();
  }
  async function plugNow(): Promise<void> {
    if (plugged) return;
    await pair.plug();
    farEnd(await openSerialPort(pair.far, BAUD));
    plugged = true;
  }
  const [plug, pull] = [() => inTurn(plugNow), () => inTurn(pullNow)];
  await plug();
  return { path: pair.near, plug, pull, stop: pull };
}
