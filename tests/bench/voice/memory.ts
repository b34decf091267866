import { readFileSync } from 'node:fs';
import type { MayBeHeard } from '../../../core/speech/may-be-heard.ts';
import { startRig } from './rig.ts';

/** What the engine's process holds in memory once it can hear this, in MB; NaN where the system does not tell. */
export async function memoryOfAnEar(may: MayBeHeard): Promise<number> {
  const rig = await startRig(may);
  try {
    const status = readFileSync(`/proc/${rig.ear.pid}/status`, 'utf8');
    return Number(/VmRSS:\s+(\d+) kB/.exec(status)?.[1] ?? Number.NaN) / 1024;
  } catch {
    return Number.NaN;
  } finally {
    await rig.stop();
  }
}
