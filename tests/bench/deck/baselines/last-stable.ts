import { everySetting, type Method } from './method.ts';
import { middle, spread, TimeWindow } from './time-window.ts';

/** The last value, once all readings of a second lie within n divisions or a share of the weight. */
export const LAST_STABLE: Method = {
  name: 'last value stable for 1 s',
  settings: everySetting([1, 2, 4], [0, 0.001, 0.0025, 0.005, 0.01, 0.02, 0.03]),
  watch([divisions = 1, share = 0], division) {
    const window = new TimeWindow(1000);
    return (sample) => {
      window.push(sample);
      const sorted = window.sorted();
      const stable = spread(sorted) <= Math.max(divisions * division, share * middle(sorted));
      return window.full && stable ? sample.grams : null;
    };
  },
};
