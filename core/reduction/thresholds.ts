import type { Species } from '../herd/animal.ts';

/** Two protocols of the 2023 guideline: the one for farms, and the stricter one for studies. */
export type Protocol = 'clinical' | 'research';

/** What a host's result is held against, all fractions. Between the two lies the grey zone. */
export interface Thresholds {
  /** The efficacy the medicine should have. */
  readonly expected: number;
  /** The lowest efficacy that still passes. */
  readonly lowest: number;
}

/** How unlike animals of a host are: negative-binomial shapes and the correlation of an animal's two counts. */
export interface HostSpread {
  readonly shapeBefore: number;
  readonly shapeAfter: number;
  readonly correlation: number;
}

/**
 * Figures of the WAAVP 2023 guideline's own statisticians, read in the source of their R package bayescount
 * (f5fb4b1, R/fecrt_analysis.R). For sheep and goats they are the same for all classes of medicine.
 */
const HOSTS: Readonly<Record<Species, { lowest: Record<Protocol, number>; spread: HostSpread }>> = {
  sheep: {
    lowest: { clinical: 0.9, research: 0.95 },
    spread: { shapeBefore: 1.4, shapeAfter: 0.8, correlation: 0.5 },
  },
  goat: {
    lowest: { clinical: 0.9, research: 0.95 },
    spread: { shapeBefore: 3.8, shapeAfter: 2.4, correlation: 0.5 },
  },
  cattle: {
    lowest: { clinical: 0.9, research: 0.95 },
    spread: { shapeBefore: 1.1, shapeAfter: 0.4, correlation: 0.1 },
  },
};
const EXPECTED = 0.99;

/** What a test in this host is held against. */
export function thresholdsFor(host: Species, protocol: Protocol): Thresholds {
  return { expected: EXPECTED, lowest: HOSTS[host].lowest[protocol] };
}

/** How unlike animals of this host are, as published. */
export function spreadOf(host: Species): HostSpread {
  return HOSTS[host].spread;
}

/** Thresholds on the scale of raw eggs, where the two samplings were counted at different factors. */
export function onRawEggs(thresholds: Thresholds, factorBefore: number, factorAfter: number): Thresholds {
  const raw = (efficacy: number): number => 1 - ((1 - efficacy) * factorBefore) / factorAfter;
  return { expected: raw(thresholds.expected), lowest: raw(thresholds.lowest) };
}
