import { KALMAN } from './kalman.ts';
import { LAST_STABLE } from './last-stable.ts';
import { LOWEST_VARIANCE_10, LOWEST_VARIANCE_100 } from './lowest-variance.ts';
import type { Method } from './method.ts';
import { RUNNING_MEDIAN } from './running-median.ts';
import { TRIMMED_MEAN, WINDOW_MEAN } from './window-means.ts';

/** The known methods the estimator is measured against. */
export const BASELINES: readonly Method[] = [
  LAST_STABLE,
  WINDOW_MEAN,
  TRIMMED_MEAN,
  RUNNING_MEDIAN,
  LOWEST_VARIANCE_10,
  LOWEST_VARIANCE_100,
  KALMAN,
];
