import { cutFaults } from './cut.ts';
import { letterFaults } from './letters.ts';
import { overlapFaults } from './overlap.ts';
import { plateFaults } from './plates.ts';

/** What no screen may have: words or plates cut off, small or on each other, scrolling, plates too near to each other. */
export function geometryFaults(): string[] {
  return [...new Set([...cutFaults(), ...letterFaults(), ...plateFaults(), ...overlapFaults()])];
}
