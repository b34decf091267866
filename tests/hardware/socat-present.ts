import { spawnSync } from 'node:child_process';

/** True where pseudo-terminal pairs can be made; tests that need them say so when they are left out. */
export const socatPresent = spawnSync('socat', ['-V']).status === 0;
