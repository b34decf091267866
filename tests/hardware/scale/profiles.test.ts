import { describe, expect, it } from 'vitest';
import { SCALE_PROFILE_IDS, scaleProfile } from '../../../hardware/scale/profiles.ts';

describe('the scale profiles', () => {
  it('are found by the ids that a configuration may name', () => {
    expect(SCALE_PROFILE_IDS).toEqual(['sma', 'st-gs']);
    expect(SCALE_PROFILE_IDS.map((id) => scaleProfile(id)?.id)).toEqual(SCALE_PROFILE_IDS);
  });

  it('are undefined for any other id', () => {
    expect(scaleProfile('wand-line')).toBeUndefined();
    expect(scaleProfile('constructor')).toBeUndefined();
  });

  it('start at 9600 bits a second and blank after a second of silence', () => {
    for (const id of SCALE_PROFILE_IDS) {
      expect(scaleProfile(id)).toMatchObject({ defaultBaud: 9600, silentAfterMs: 1000 });
    }
  });

  it('give a new framer for each connection', () => {
    const profile = scaleProfile('sma');
    expect(profile?.createFramer()).not.toBe(profile?.createFramer());
  });
});
