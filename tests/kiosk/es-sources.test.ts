import { expect, test } from 'vitest';
import { SHIPPED } from '../../core/formulary/shipped.ts';
import { Group } from '../../core/medicine/medicine.ts';
import { retestWindow } from '../../core/reduction/retest.ts';
import { esSource } from '../../kiosk/words/es-sources.ts';

/** Words by which an English sentence gives itself away. */
const ENGLISH =
  /\b(?:the|of|for|and|is|are|was|not|no milk|read|with|without|by|days|hours|weeks|goats?|sheep|label|ask|vet|milk|chart|page|copy|undated|edition|text|give[ns]?|times|until|common|practice|within|after|only)\b/i;

function sourcesIn(value: unknown, found = new Set<string>()): Set<string> {
  if (Array.isArray(value)) for (const each of value) sourcesIn(each, found);
  else if (typeof value === 'object' && value !== null)
    for (const [key, each] of Object.entries(value)) {
      if (key === 'source' && typeof each === 'string') found.add(each);
      else sourcesIn(each, found);
    }
  return found;
}

const SOURCES = [...sourcesIn([SHIPPED, [null, ...Group.options].map(retestWindow)])];

test.each(SOURCES)('the source "%s" is told in Spanish whole', (source) => {
  // An address is a name.
  expect(esSource(source).replace(/\S+\.(?:org|com\.au)/, '')).not.toMatch(ENGLISH);
});

test('figures and document numbers stay as they are, and so does what a farm wrote', () => {
  for (const source of SOURCES) {
    const figures = (text: string) => text.match(/\d+(?:\.\d+)?/g) ?? [];
    // The month of a title is a word in Spanish too, and no figure is lost or added.
    expect(figures(esSource(source))).toEqual(figures(source));
  }
  expect(esSource('Dr. Vega, por teléfono')).toBe('Dr. Vega, por teléfono');
});
