import type { Figure, Line } from '../medicine/figure.ts';
import type { Medicine } from '../medicine/medicine.ts';
import type { Liquid } from '../medicine/presentation.ts';
import { IN_THE_TRADE, OWN, UK_DATASHEET } from './sources.ts';

/** How a drench is given. */
export const DRENCH_TECHNIQUE: Medicine['technique'] = {
  how: 'drench',
  line: {
    text: 'Head level, over the back of the tongue, slowly',
    evidence: 'secondary',
    source: `${UK_DATASHEET}: injury of the throat by the drench nozzle; head level is common practice`,
  },
};

/** Shaking a suspension, which settles. */
export const SHAKE_SUSPENSION: Line = {
  text: 'Shake the bottle: what settled is stronger than what floats',
  evidence: 'common-practice',
  source: IN_THE_TRADE,
};

/** Splashes of any drench. */
export const WASH_SPLASHES: Line = {
  text: 'Wash off splashes; do not eat or smoke',
  evidence: 'primary',
  source: UK_DATASHEET,
};

/** An animal too weak for a drench. */
export const WEAK_ANIMAL: Line = {
  text: 'A weak or dried-out animal: call the vet first',
  evidence: 'primary',
  source: '21 CFR 520.1242b(f), 1996 edition, on severely debilitated animals',
};

/** Goats and others outside the label. */
export const VET_ONLY: Line = {
  text: 'Not on the label: only on a veterinarian’s direction',
  evidence: 'primary',
  source: '21 CFR 530.11 and 530.20, read 2026-06-20 and 2003-01-01',
};

/** Days before the same active may follow without asking, where no source gives them. */
export const REPEAT_GUARD: Figure = { value: 14, evidence: 'own-guard', source: OWN };

/** Hours a mixed jug stays in use where its packet says nothing. */
export const JUG_LIFE_GUARD: Figure = { value: 12, evidence: 'own-guard', source: OWN };

/** What is said of every ready-made liquid whose label states no more than its strength. */
export const LABEL_LIQUID: Pick<Liquid, 'form' | 'strengthUncertainty' | 'bottlesMl' | 'openLifeDays'> = {
  form: 'liquid',
  strengthUncertainty: {
    value: 0.029,
    evidence: 'estimate',
    source: 'Labelled strength taken as right within 5 %, rectangular; the label states no tolerance',
  },
  bottlesMl: [100, 250, 500, 1000, 2500, 5000],
  openLifeDays: { value: 90, evidence: 'own-guard', source: `${OWN}; the label in hand wins` },
};
