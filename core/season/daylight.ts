/**
 * Hours of daylight at a latitude on a day of the year: the CBM model of Forsythe et al. 1995, sunrise where the upper
 * edge of the sun stands on the horizon.
 *
 * `latitude` in degrees north, -90 to 90 (included); `dayOfYear` 1 to 366 (included); else throws `RangeError`.
 */
export function daylightHours(latitude: number, dayOfYear: number): number {
  if (!(Math.abs(latitude) <= 90)) throw new RangeError(`a latitude of ${latitude} is not from -90 to 90`);
  if (!(dayOfYear >= 1 && dayOfYear <= 366)) {
    throw new RangeError(`a day of the year is from 1 to 366, not ${dayOfYear}`);
  }
  const radians = Math.PI / 180;
  const turn = 0.2163108 + 2 * Math.atan(0.9671396 * Math.tan(0.0086 * (dayOfYear - 186)));
  const declination = Math.asin(0.39795 * Math.cos(turn));
  const height =
    (Math.sin(0.8333 * radians) + Math.sin(latitude * radians) * Math.sin(declination)) /
    (Math.cos(latitude * radians) * Math.cos(declination));
  return 24 - (24 / Math.PI) * Math.acos(Math.max(-1, Math.min(1, height)));
}
