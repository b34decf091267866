import { everySetting, type Method } from './method.ts';
import { mean, middle, spread, TimeWindow } from './time-window.ts';

const SETTINGS = everySetting([300, 600, 1000, 1500, 2000, 2500, 3000], [0.003, 0.006, 0.012, 0.02, 0.03]);

/** The mean of a sliding window, with a share left out at either end, once what is left lies close enough together. */
function windowMean(name: string, trim: number): Method {
  return {
    name,
    settings: SETTINGS,
    watch([lengthMs = 1000, share = 0], division) {
      const window = new TimeWindow(lengthMs);
      return (sample) => {
        window.push(sample);
        const kept = window.sorted(trim);
        const close = spread(kept) <= Math.max(division, share * middle(kept));
        return window.full && kept.length > 2 && close ? mean(kept) : null;
      };
    },
  };
}

/** The mean of a window whose readings all lie close together. */
export const WINDOW_MEAN = windowMean('window mean', 0);

/** The mean of a window without the highest and the lowest fifth. */
export const TRIMMED_MEAN = windowMean('trimmed mean', 0.2);
