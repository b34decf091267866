import { DISPLAY_RULES } from './display.ts';

const NUMBER = String.raw`[\d.,]*\d[\d.,]*`;
/** A number with a unit of a dose: volume, amount, strength or rate, with or without its space. */
const DOSE = new RegExp(String.raw`${NUMBER}\s?(?:mL|ml|cc|mcg|µg|mg|g)(?:\/(?:mL|ml|kg|lb))?\b\.?`, 'g');
/** A weight read from a scale, which may show the decimals of its scale. */
const READING = new RegExp(String.raw`${NUMBER}\s(?:kg|lb|g)(?![\w/])`, 'g');

/** How many doses stand in a text. */
export function dosesIn(text: string): number {
  return text.replaceAll(READING, '').match(DOSE)?.length ?? 0;
}

/** What a text breaks of the rules for showing a dose, each with the words that break it; empty where it breaks none. */
export function displayFaults(text: string): string[] {
  const doses = [...text.replaceAll(READING, '').matchAll(DOSE)].map(([dose]) => dose);
  const faults = doses.flatMap((dose) =>
    DISPLAY_RULES.filter(({ never }) => never.test(dose)).map(({ rule }) => `${rule}: "${dose}"`),
  );
  if (/\bcc\b/i.test(text)) faults.push(`cc in "${text}"`);
  if (/µg|μg/.test(text)) faults.push(`µg in "${text}"`);
  return faults;
}
