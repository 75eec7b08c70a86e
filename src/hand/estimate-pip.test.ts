import { describe, expect, it } from 'vitest';
import { DIGITS } from './digits.ts';
import { estimatePipCircumference } from './estimate-pip.ts';

// PIP circumferences of Greiner 1991 (second-hand) and hand circumference and breadth of ANSUR II, women and men.
describe('estimatePipCircumference(hand, digit)', () => {
  it.each([
    ['women', { handCircumference: 186.55 }, [61.2, 61.3, 57.4, 50.6]],
    ['women by breadth', { handBreadth: 78.15 }, [61.2, 61.3, 57.4, 50.6]],
    ['men', { handCircumference: 212.28 }, [68.4, 69.6, 64.9, 57.8]],
    ['men by breadth', { handBreadth: 88.26 }, [68.4, 69.6, 64.9, 57.8]],
  ] as const)('gives the published means of %s from their mean hand within 1.2 mm', (_, palm, means) => {
    for (const [k, digit] of DIGITS.entries()) {
      expect(Math.abs((estimatePipCircumference({ palm }, digit)?.mm ?? 0) - (means[k] ?? 0))).toBeLessThan(1.2);
    }
  });

  it('estimates nothing without a measure of the hand, nor for a child', () => {
    expect(estimatePipCircumference({ palm: {} }, 'ring')).toBeNull();
    expect(estimatePipCircumference({ palm: { handCircumference: 140 }, child: true }, 'ring')).toBeNull();
  });
});
