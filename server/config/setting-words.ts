import type { SettingsTrouble } from '../../hardware/scale/profiles.ts';

/** What is wrong with a setting of a scale, in words for who writes the file. */
export const SETTING_WORDS: Readonly<Record<SettingsTrouble['why'], string>> = {
  missing: 'this format needs it, since its lines do not tell',
  'not-used': 'this format has no such setting',
  'too-long': 'an expression has 1 to 200 characters',
  syntax: 'not an expression of the kinds taken here',
  lookaround: 'no looking ahead or back in an expression',
  'back-reference': 'no reference back in an expression',
  'nested-repeat': 'no repetition within a repetition',
  ambiguous: 'at some character there is more than one way to go on',
  'no-value': 'a group named value must hold the number',
  'no-stability': 'a group named stable or unstable must tell whether it moves',
  'unknown-group': 'groups are value, unit, stable, unstable, net and over',
};
