import type { ScaleProfile } from '../../hardware/scale/profile.ts';
import { SMA } from '../../hardware/scale/sma.ts';
import { ST_GS } from '../../hardware/scale/st-gs.ts';
import { type Figure, ratePerSecond } from './table.ts';

/** What a serial line of this speed can carry at most, in frames a second. */
function lineRate(baud: number, frameBytes: number): number {
  return baud / 10 / frameBytes;
}

function figureFor(profile: ScaleProfile, frame: string): Figure {
  const chunk = Buffer.from(frame.repeat(100), 'latin1');
  const framer = profile.createFramer();
  let readings = 0;
  const rate =
    100 *
    ratePerSecond(() => {
      for (const framed of framer.push(chunk)) {
        if (framed.kind === 'line' && profile.decode(framed.text, 'platform', 0).kind === 'reading')
          readings += 1;
      }
    }, 50);
  if (readings === 0) throw new Error(`${profile.id}: nothing was decoded, so nothing was measured`);
  const line = lineRate(115_200, frame.length);
  return {
    what: `${profile.id}: bytes to readings, one core`,
    ratio: rate / line,
    against: 'what a line at 115,200 baud can carry',
    raw: `${Math.round(rate).toLocaleString('en-US')} frames/s`,
  };
}

/** How fast bytes become readings. */
export function decoderFigures(): Figure[] {
  return [figureFor(ST_GS, 'ST,GS,+  15.40kg\r\n'), figureFor(SMA, '\n 1G       15.40kg \r')];
}
