import { describe, expect, it } from 'vitest';
import demo from '../../../fixtures/demo-hand-plate.json' with { type: 'json' };
import type { Hand } from '../../hand/hand.ts';
import { readHand } from '../../hand/read-hand.ts';
import { designProblems, type PlateDesign } from './plate-design.ts';

function handWith(mpPassive: object): Hand {
  const read = readHand({ ...demo, target: { ...demo.target, mpPassive } });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

const problems = (hand: Hand, design: Partial<PlateDesign>) =>
  designProblems(hand, { id: 'test', title: 'Test', faces: 'dorsal', digits: ['index', 'long', 'ring', 'little'], angle: 45, ...design });

describe('designProblems', () => {
  it('refuses an angle that the MP joint does not reach passively, and names the nearest that it does', () => {
    const stiff = handWith({ extensionDeficit: 15, flexion: 60 });
    for (const angle of [15, 45, 60]) expect(problems(stiff, { angle })).toEqual([]);
    expect(problems(stiff, { angle: 75 })).toMatchObject([
      {
        code: 'PLATE_ANGLE_FORCES',
        where: 'angle',
        kind: 'refused',
        message: expect.stringMatching(/from 15 to 60 degrees\. Use 60 degrees/),
      },
    ]);
    expect(problems(stiff, { angle: 10 })[0]?.message).toMatch(/Use 15 degrees/);
  });
  it('takes a joint that was read on one side only as free on the other, and asks nothing of fingers that are not held', () => {
    expect(problems(handWith({ flexion: 60 }), { angle: 0 })).toEqual([]);
    expect(problems(handWith({ hyperextension: 10 }), { angle: 90 })).toEqual([]);
    const stiff = handWith({ extensionDeficit: 15, flexion: 60 });
    const others = (['index', 'long', 'ring', 'little'] as const).filter((digit) => digit !== stiff.target?.digit);
    expect(problems(stiff, { angle: 90, digits: [others[0] as (typeof others)[number]] })).toEqual([]);
  });
});
