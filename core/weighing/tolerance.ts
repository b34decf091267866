import { grams, type Mass } from '../quantity/mass.ts';

/**
 * How far a scale in use may be off at a load, either way: one division up to 500 of them, two to 2,000, three to
 * 4,000, five above (all included).
 *
 * NIST Handbook 44, 2.20, Table 6, class III maintenance tolerance, where a platform for single animals belongs. The
 * steps at 500, 2,000 and 4,000 were read in a weigh-module handbook, which gives half of these figures for a new
 * scale (1 d at 1,000 d, 1.5 d at 3,000 d); 3 d and 5 d were read in a trade forum; that maintenance is twice the
 * figure of a new scale, and the class, are from memory. OIML R 76-1 in service gives the same up to 2,000.
 */
export function maintenanceTolerance(load: Mass, division: Mass): Mass {
  const steps = Math.abs(load.value) / division.value;
  const allowed = steps <= 500 ? 1 : steps <= 2000 ? 2 : steps <= 4000 ? 3 : 5;
  return grams(allowed * division.value);
}

/**
 * The least load at which a scale tells anything: 20 divisions (OIML class III, "Min = 20 e", read in the UK's
 * regulation; Handbook 44 Table 8 the same, from memory).
 */
export function leastLoad(division: Mass): Mass {
  return grams(20 * division.value);
}
