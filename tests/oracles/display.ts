/**
 * How a dose may be written.
 *
 * ISMP list of error-prone abbreviations, symbols and dose designations, and the Joint Commission "Do Not
 * Use" list (2004), both read in secondary copies; millilitres as the only unit of volume and the leading
 * zero also in the NCPDP white paper of March 2014.
 */
export interface DisplayRule {
  readonly rule: string;
  readonly source: string;
  /** Matches what must never be shown. */
  readonly never: RegExp;
  /** Examples of the right and the wrong way, so that the pattern itself is tested. */
  readonly right: string;
  readonly wrong: string;
}

export const DISPLAY_RULES: readonly DisplayRule[] = [
  {
    rule: 'a zero stands before the decimal point',
    source: 'ISMP; Joint Commission Do Not Use list',
    never: /(^|[^\d])\.\d/,
    right: '0.5 mL',
    wrong: '.5 mL',
  },
  {
    rule: 'no zero stands last after the decimal point',
    source: 'ISMP; Joint Commission Do Not Use list',
    never: /\.\d*0(?!\d)/,
    right: '5 mL',
    wrong: '5.0 mL',
  },
  {
    rule: 'a space stands between number and unit',
    source: 'ISMP',
    never: /\d[a-zA-Z]/,
    right: '10 mL',
    wrong: '10mL',
  },
  {
    rule: 'no full stop follows the unit',
    source: 'ISMP',
    never: /(mL|mg|kg|lb)\./,
    right: '5 mL',
    wrong: '5 mL.',
  },
  {
    rule: 'volume is in mL, never cc',
    source: 'ISMP; NCPDP white paper, March 2014',
    never: /\bcc\b/i,
    right: '3 mL',
    wrong: '3 cc',
  },
  {
    rule: 'litre has a capital L',
    source: 'a nursing text on dose calculation (secondary)',
    never: /ml\b/,
    right: '3 mL',
    wrong: '3 ml',
  },
  {
    rule: 'commas part thousands from 1,000 up',
    source: 'ISMP',
    never: /(?<![.\d])\d{4,}/,
    right: '1,000 mL',
    wrong: '1000 mL',
  },
];
