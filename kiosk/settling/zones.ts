/** The parts of the world that zones are named after, and one for the rest. */
export const REGIONS = [
  'Africa',
  'America',
  'Asia',
  'Atlantic',
  'Australia',
  'Europe',
  'Indian',
  'Pacific',
  'Other',
] as const;
/** One of {@link REGIONS}. */
export type Region = (typeof REGIONS)[number];

/** The zones the browser knows, and that of no place. */
export function allZones(): readonly string[] {
  return [...new Set([...Intl.supportedValuesOf('timeZone'), 'UTC'])];
}

/** The part of the world a zone is named after. */
export function regionOf(zone: string): Region {
  const first = zone.split('/')[0];
  return REGIONS.find((region) => region === first) ?? 'Other';
}

/** The city of a zone as it is read, with the state where one is named: "Knox, Indiana". */
export function cityOf(zone: string): string {
  const parts = zone.split('/');
  const places = parts.length > 1 ? parts.slice(1) : parts;
  return places.reverse().join(', ').replaceAll('_', ' ');
}

/** The zones of a part of the world, by their cities. */
export function zonesOf(region: Region, zones: readonly string[]): readonly string[] {
  return zones.filter((zone) => regionOf(zone) === region).sort((a, b) => cityOf(a).localeCompare(cityOf(b)));
}

/** How many stretches a long list is cut into: as many as there are tiles. */
const STRETCHES = 9;

/** Cuts a list that is longer than two screens of tiles into stretches of nearly the same length; a shorter one stays whole. */
export function stretchesOf(zones: readonly string[]): readonly (readonly string[])[] {
  if (zones.length <= 2 * STRETCHES) return [zones];
  const each = Math.ceil(zones.length / STRETCHES);
  return Array.from({ length: Math.ceil(zones.length / each) }, (_, at) =>
    zones.slice(at * each, (at + 1) * each),
  );
}
