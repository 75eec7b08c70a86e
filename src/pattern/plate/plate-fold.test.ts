import { describe, expect, it } from 'vitest';
import { demoPlateHand } from '../../../tests/demo-plate.ts';
import type { Face } from './plate-design.ts';
import { type FoldCheck, foldBound, foldCheck } from './plate-fold.ts';
import { type FaceFrame, plateFrame } from './plate-frame.ts';
import { DEFAULT_PLATE_OPTIONS as options } from './plate-options.ts';
import { plateOutline } from './plate-outline.ts';

const digits = ['index', 'long', 'ring', 'little'] as const;

function framed(face: Face, angle: number) {
  const design = { id: 'test', title: 'Test', faces: face, digits, angle };
  const frame = plateFrame(demoPlateHand(), design, options);
  const only = frame.ok ? frame.value.faces[0] : undefined;
  if (!frame.ok || !only) throw new Error('no frame');
  return { frame: frame.value, face: only };
}

/** The plate of one frame, folded as another frame says: equal for a right plate, different for a wrong one. */
function folded(face: Face, angle: number, drawn: (right: FaceFrame) => FaceFrame = (f) => f): FoldCheck {
  const { frame, face: right } = framed(face, angle);
  const wrong = drawn(right);
  return foldCheck(frame, wrong, plateOutline(wrong, options).outline, options);
}

describe('foldCheck', () => {
  it.each([
    ['dorsal', 0],
    ['dorsal', 45],
    ['dorsal', 90],
    ['palmar', 0],
    ['palmar', 30],
    ['palmar', 60],
  ] as const)('%s plate at %d degrees: never nearer than the clearance, never further than the bound', (face, angle) => {
    const check = folded(face, angle);
    expect(check.points).toBeGreaterThan(500);
    expect(check.leastGap).toBeCloseTo(options.skinClearance, 3);
    expect(check.worstGap).toBeLessThanOrEqual(foldBound(framed(face, angle).frame, options));
    expect(check.worstGap).toBeLessThan(6);
    expect(check.worstOnMidlines).toBeLessThan(1);
  });

  it('sees a bend that is cut too short or too long: the sheet then stands off the fingers or presses into them', () => {
    const stretched = (by: number) => (f: FaceFrame) => ({ ...f, bend: { ...f.bend, allowance: f.bend.allowance * by } });
    expect(folded('dorsal', 60, stretched(1.1)).leastGap).toBeLessThan(0);
    expect(folded('dorsal', 60, stretched(0.9)).worstOnMidlines).toBeGreaterThan(2);
    expect(folded('palmar', 60, stretched(0.8)).leastGap).toBeLessThan(0);
  });

  it('sees a finger part that is too long for the PIP joint', () => {
    const longer = (f: FaceFrame) => ({ ...f, columns: f.columns.map((c) => ({ ...c, edge: c.edge + 4 })) });
    expect(folded('dorsal', 45, longer).leastToPip).toBeLessThan(folded('dorsal', 45).leastToPip - 3);
  });

  it('sees a row that lies beside the fingers', () => {
    const moved = (f: FaceFrame) => ({ ...f, rowStart: f.rowStart + 6 });
    const { frame, face } = framed('dorsal', 0);
    const check = foldCheck(frame, face, plateOutline(moved(face), options).outline, options);
    expect(check.leastToPip).toBeLessThan(0);
  });
});
