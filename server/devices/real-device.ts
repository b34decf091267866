import { realpathSync } from 'node:fs';

/** The device a path stands for now; the path itself where nothing is plugged in under it. */
export function realDevice(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}
