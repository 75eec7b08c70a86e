import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TARGET_FIELDS } from '../hand/fields.ts';
import { GONIOMETRY_FIELDS, JOINTS } from '../hand/target-motion.ts';
import { extensionText, motionHint, parseMotion } from './motion-text.ts';

const reason = (text: string) => {
  const parsed = parseMotion(text, 'pip');
  return parsed.ok ? 'taken' : parsed.reason;
};

describe('parseMotion(text, joint)', () => {
  it.each([
    ['25/85', { extensionDeficit: 25, flexion: 85 }],
    ['0 / 100', { extensionDeficit: 0, flexion: 100 }],
    ['12,5°/90 deg', { extensionDeficit: 12.5, flexion: 90 }],
    ['hyper 10/85', { hyperextension: 10, flexion: 85 }],
    ['h10/85', { hyperextension: 10, flexion: 85 }],
    ['Hyperextension 10 / 85', { hyperextension: 10, flexion: 85 }],
    ['30/30', { extensionDeficit: 30, flexion: 30 }],
  ])('%s is read', (text, motion) => {
    expect(parseMotion(text, 'pip')).toEqual({ ok: true, motion });
  });

  it.each([
    ['-25/85', /minus sign.*write 25\/85 for a deficit of 25, hyper 10\/85/],
    ['−25/85', /minus sign/],
    ['25', /not two angles/],
    ['25/85/90', /not two angles/],
    ['25-85', /not two angles/],
    ['', /not two angles/],
    ['25/131', /PIP flexion "131" is out of range; 0 to 130/],
    ['121/125', /extension deficit "121" is out of range; 0 to 120/],
    ['hyper 46/80', /hyperextension "46" is out of range; 0 to 45/],
    ['85/25', /bend less than it straightens/],
    ['25/eighty', /not a number/],
    ['25/-5', /negative/],
  ])('%j is refused', (text, why) => {
    expect(reason(text)).toMatch(why);
  });

  it('never throws, and what it takes lies in the range of the joint', () => {
    fc.assert(
      fc.property(fc.constantFrom(...JOINTS), fc.oneof(fc.string(), fc.stringMatching(/^(h )?\d{1,3}\/\d{1,3}$/)), (joint, text) => {
        const parsed = parseMotion(text, joint);
        if (!parsed.ok) expect(parsed.reason).not.toBe('');
        else
          for (const [key, value] of Object.entries(parsed.motion)) {
            const { refuse } = GONIOMETRY_FIELDS[joint][key as keyof (typeof GONIOMETRY_FIELDS)['pip']];
            expect(value).toBeGreaterThanOrEqual(refuse.from);
            expect(value).toBeLessThanOrEqual(refuse.to);
          }
      }),
    );
  });

  it('takes what is shown: a deficit and hyperextension are typed as they are read', () => {
    for (const [deficit, motion] of [
      [25, { extensionDeficit: 25, flexion: 90 }],
      [-10, { hyperextension: 10, flexion: 90 }],
    ] as const)
      expect(parseMotion(`${extensionText(deficit)}/90`, 'pip')).toEqual({ ok: true, motion });
  });
});

describe('GONIOMETRY_FIELDS', () => {
  it('has the PIP deficit of the hand file, ranges and all', () => {
    expect(GONIOMETRY_FIELDS.pip.extensionDeficit.refuse).toBe(TARGET_FIELDS.pipExtensionDeficit.refuse);
  });

  // AAOS-type tables: MP 0 to 90, PIP 0 to 100. Worked cases of total active motion: normal flexion 85, 110, 65.
  it.each([
    ['mp', 90],
    ['pip', 100],
    ['mp', 85],
    ['pip', 110],
    ['dip', 65],
  ] as const)('finds nothing odd in published %s flexion of %d', (joint, flexion) => {
    const { typical } = GONIOMETRY_FIELDS[joint].flexion;
    expect(flexion >= typical.from && flexion <= typical.to).toBe(true);
  });

  it('names a source for every field, and says the range in the hint', () => {
    for (const joint of JOINTS) {
      for (const { source } of Object.values(GONIOMETRY_FIELDS[joint])) expect(source).toMatch(/AAOS|teaching material|from memory/);
      expect(motionHint(joint)).toContain(`flexion 0 to ${GONIOMETRY_FIELDS[joint].flexion.refuse.to} degrees`);
    }
  });
});
