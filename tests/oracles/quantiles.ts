/**
 * Quantiles from scipy 1.17.1, to 15 digits, at points where libraries for JavaScript were seen to go wrong.
 *
 * One gave 1,001.64 for the median of a gamma of shape 1,001, one 0.22828 for the median of a beta of 2 and 6, one
 * 1.70561784 for Student's 95 % point at 26 degrees of freedom.
 */
export const GAMMA_QUANTILES: readonly (readonly [p: number, shape: number, quantile: number])[] = [
  [0.001, 0.3, 6.97269909678334e-11],
  [0.95, 0.3, 1.37234994410089],
  [0.05, 13.522226288, 8.09291203187585],
  [0.95, 13.522226288, 20.0838824572657],
  [0.5, 999, 998.666686446752],
  [0.7, 1000, 1016.33825137867],
  [0.5, 1001, 1000.66668640722],
  [0.3, 1500, 1479.45092826744],
  [0.975, 3000, 3108.29563949068],
  [0.5, 5000, 4999.66667061757],
  [0.05, 3451, 3354.94456965295],
  [0.975, 7485, 7655.51319355911],
  [0.025, 100000, 99381.1526637447],
];

/** Of the beta distribution. Source as above. */
export const BETA_QUANTILES: readonly (readonly [
  p: number,
  alpha: number,
  beta: number,
  quantile: number,
])[] = [
  [0.5, 2, 6, 0.228489963506596],
  [0.975, 30, 349, 0.108324923949879],
  [0.025, 30, 349, 0.0541860510406393],
  [0.95, 1, 31, 0.0921140599473237],
  [0.95, 0.5, 349, 0.00549232633696097],
  [0.5, 0.5, 0.5, 0.5],
  [0.05, 1200, 1500, 0.42874075717542],
];

/** Of Student's t. Source as above. */
export const T_QUANTILES: readonly (readonly [p: number, freedom: number, quantile: number])[] = [
  [0.975, 1, 12.7062047361747],
  [0.95, 5, 2.01504837333302],
  [0.975, 13, 2.16036865646279],
  [0.95, 26, 1.70561791975927],
  [0.975, 26, 2.05552943864287],
  [0.05, 26, -1.70561791975927],
  [0.975, 1000, 1.96233908082641],
];
