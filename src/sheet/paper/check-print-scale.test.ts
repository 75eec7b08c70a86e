import { describe, expect, it } from 'vitest';
import { checkPrintScale } from './check-print-scale.ts';

describe('checkPrintScale(bars)', () => {
  it.each([
    [100, 100, 'pass'],
    [99.5, 100.5, 'pass'],
    [99.4, 100, 'compensate'],
    [100, 100.6, 'compensate'],
    [97.1, 99.8, 'compensate'],
    // A4 fitted to Letter prints at 0.940741 (arithmetic on ISO 216 and ANSI Y14.1).
    [94.0741, 94.0741, 'compensate'],
    [90, 110, 'compensate'],
    [89.9, 100, 'reprint'],
    [100, 111, 'reprint'],
    [50, 50, 'reprint'],
  ])('%f across, %f along: %s', (across, along, verdict) => {
    expect(checkPrintScale({ across, along }).verdict).toBe(verdict);
  });

  it('gives for each axis the factor that makes the bar 100 mm again', () => {
    const { factors, errors } = checkPrintScale({ across: 97.1, along: 99.8 });
    expect(factors.across * 97.1).toBeCloseTo(100, 12);
    expect(factors.along * 99.8).toBeCloseTo(100, 12);
    expect(errors.across).toBeCloseTo(-0.029, 12);
  });
});
