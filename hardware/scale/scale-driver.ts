import type { Reading, ScaleRole } from '../../core/weighing/reading.ts';
import type { LinkDriver, Received } from '../serial/link-driver.ts';
import type { Decoded } from './decoded.ts';
import type { FrameWidth, ScaleProfile } from './profile.ts';
import { SteadyWidth } from './steady-width.ts';

/** Drives a scale of this profile in this role; `now` is the uptime in milliseconds that readings are stamped with. */
export function scaleDriver(profile: ScaleProfile, role: ScaleRole, now: () => number): LinkDriver<Reading> {
  return {
    readyWhen: 'first-item',
    silentAfterMs: profile.silentAfterMs,
    poll: profile.poll,
    openSession(receive) {
      const framer = profile.createFramer();
      const hasUsualWidth = widthGuard(profile.width);
      return (chunk) => {
        for (const framed of framer.push(chunk)) {
          if (framed.kind === 'discarded') {
            receive(framed);
            continue;
          }
          const decoded = profile.decode(framed.text, role, now());
          receive(
            decoded.kind === 'reading' && !hasUsualWidth(decoded.reading, framed.text)
              ? { kind: 'bad', fault: 'odd-width', text: framed.text }
              : received(decoded, framed.text),
          );
        }
      };
    },
  };
}

/** Tells frames of the usual length from odd ones. A reading with a fault carries no number that could be wrong. */
function widthGuard(width: FrameWidth): (reading: Reading, text: string) => boolean {
  if (width === 'fixed') return () => true;
  const still = new SteadyWidth();
  const moving = width === 'steady' ? still : new SteadyWidth();
  return ({ fault, stability }, text) =>
    fault !== undefined || (stability === 'moving' ? moving : still).accepts(text.length);
}

function received(decoded: Decoded, text: string): Received<Reading> {
  switch (decoded.kind) {
    case 'reading':
      return { kind: 'item', item: decoded.reading };
    case 'fault':
      return { kind: 'bad', fault: decoded.fault, text };
    case 'tare':
      // A tare told without being asked for says nothing of what stands on the scale.
      return { kind: 'bad', fault: 'not-a-weight', text };
  }
}
