import { sevenBitFramer, withEvenParity } from '../serial/seven-bits.ts';
import type { ScaleCommands, ScaleProfile } from './profile.ts';

/** The same format on a line of seven bits and even parity, through a port of eight bits and none. */
export function overSevenBits(profile: ScaleProfile): ScaleProfile {
  const { poll, commands } = profile;
  return {
    ...profile,
    poll: poll === null ? null : { ...poll, bytes: withEvenParity(poll.bytes) },
    commands: Object.fromEntries(
      Object.entries(commands).map(([name, bytes]) => [name, withEvenParity(bytes)]),
    ) satisfies ScaleCommands,
    createFramer: () => sevenBitFramer(profile.createFramer()),
  };
}
