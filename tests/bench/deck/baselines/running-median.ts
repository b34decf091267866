import { everySetting, type Method } from './method.ts';
import { middle, spread, TimeWindow } from './time-window.ts';

/** The running median of a window, once it has itself stayed close together for as long. */
export const RUNNING_MEDIAN: Method = {
  name: 'running median',
  settings: everySetting([300, 600, 1000, 1500, 2500], [0.0005, 0.001, 0.0025, 0.005, 0.01, 0.02]),
  watch([lengthMs = 1000, share = 0], division) {
    const window = new TimeWindow(lengthMs);
    const medians = new TimeWindow(lengthMs);
    return (sample) => {
      window.push(sample);
      if (!window.full) return null;
      const median = middle(window.sorted());
      medians.push({ at: sample.at, grams: median });
      const close = spread(medians.sorted()) <= Math.max(division / 2, share * median);
      return medians.full && close ? median : null;
    };
  },
};
