import { describe, expect, it } from 'vitest';
import demo from '../../fixtures/demo-hand.json' with { type: 'json' };
import type { HandFile } from '../hand/hand-schema.ts';
import { readHand } from '../hand/read-hand.ts';
import { STOP_SIGNS } from '../hand/signs.ts';
import { entriesOf, handFileOf } from './hand-file.ts';

const opened = (target: object) => entriesOf({ ...demo, target: { ...demo.target, ...target } } as HandFile, '.');
const again = (target: object) => {
  const hand = readHand(handFileOf(opened(target), 'mm'));
  if (!hand.ok) throw new Error(hand.problems.map((p) => p.message).join('\n'));
  return hand.value.target;
};

describe('a hand file that the page opens and saves', () => {
  it('keeps the motion, the weeks and the diagnosis', () => {
    const said = {
      pipActive: { extensionDeficit: 25, flexion: 100 },
      pipPassive: { hyperextension: 12, flexion: 100 },
      otherHandPip: { hyperextension: 5, flexion: 100 },
      mpPassive: { extensionDeficit: 0, flexion: 80 },
      weeks: 3.5,
      diagnosis: 'central slip',
    };
    expect(again(said)).toMatchObject(said);
  });

  it.each(STOP_SIGNS)('never loses the stop sign %s', (sign) => {
    const entries = opened({ stopSigns: [sign] });
    expect(entries.stop).toBe('some');
    expect(again({ stopSigns: [sign] })?.stopSigns).toEqual([sign]);
  });

  it("keeps that a hand is a child's, of which nothing is estimated", () => {
    const entries = entriesOf({ ...demo, child: true } as HandFile, '.');
    expect(handFileOf(entries, 'mm')).toMatchObject({ child: true });
    expect(handFileOf(entriesOf(demo as HandFile, '.'), 'mm')).not.toHaveProperty('child');
  });

  it("does not ask again about what the surgeon's word has lifted, and asks about nothing where there was nothing", () => {
    expect(opened({ stopSigns: ['pins'], surgeonAgrees: true }).stop).toBe('');
    expect(opened({ stopSigns: ['pins', 'infection'], surgeonAgrees: true }).stopSigns).toEqual(['infection']);
    expect(opened({}).stop).toBe('');
  });
});
