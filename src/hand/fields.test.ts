import { describe, expect, it } from 'vitest';
import { DIGIT_FIELDS, type Field, PALM_FIELDS, TARGET_FIELDS, WEB_FIELDS } from './fields.ts';

const ALL: readonly (readonly [string, Field])[] = Object.entries({ ...DIGIT_FIELDS, ...WEB_FIELDS, ...PALM_FIELDS, ...TARGET_FIELDS });

function typical(field: Field, value: number): boolean {
  return value >= field.typical.from && value <= field.typical.to;
}

describe('the field table', () => {
  it.each(ALL)('%s: its id is its key, and what is typical lies inside what is allowed', (key, field) => {
    expect(field.id).toBe(key);
    expect(field.refuse.from).toBeLessThanOrEqual(field.typical.from);
    expect(field.typical.from).toBeLessThan(field.typical.to);
    expect(field.typical.to).toBeLessThanOrEqual(field.refuse.to);
    expect(field.spread).toBeGreaterThan(0);
    expect(field.source).not.toBe('');
  });

  // Default measuring errors of docs/model.md rule 17: circumference 1.0, width 0.5, palmarRoom 1.0, dorsalLength 1.5 mm.
  it('has the model\u2019s measuring errors', () => {
    const { circumference, width, palmarRoom, dorsalLength } = DIGIT_FIELDS;
    expect([circumference, width, palmarRoom, dorsalLength].map((field) => field.spread)).toEqual([1, 0.5, 1, 1.5]);
  });

  // ANSUR II, Gordon et al. 2014, NATICK/TR-15/007: mean and SD, women then men.
  it.each([
    [PALM_FIELDS.handBreadth, 78.15, 3.84],
    [PALM_FIELDS.handBreadth, 88.26, 4.39],
    [PALM_FIELDS.handCircumference, 186.55, 8.82],
    [PALM_FIELDS.handCircumference, 212.28, 10.24],
  ])('$id: $1, three SD of $2 either way, is typical', (field, mean, sd) => {
    expect(typical(field, mean - 3 * sd)).toBe(true);
    expect(typical(field, mean + 3 * sd)).toBe(true);
  });

  // EN ISO 21420, Annex B (second-hand), hand circumference of sizes 6 and 11.
  it('hand circumference: the smallest and the largest glove size are typical', () => {
    expect(typical(PALM_FIELDS.handCircumference, 152)).toBe(true);
    expect(typical(PALM_FIELDS.handCircumference, 279)).toBe(true);
  });

  // Second-hand means: Greiner 1991 (PIP circumference, web to PIP crease), Buryanov & Kotiuk 2010 (proximal phalanx).
  it.each([
    [DIGIT_FIELDS.pipCircumference, [61.2, 61.3, 57.4, 50.6, 68.4, 69.6, 64.9, 57.8]],
    [DIGIT_FIELDS.palmarRoom, [25.6, 27.2, 27.4, 29.2, 17.8, 18.8]],
    [DIGIT_FIELDS.dorsalLength, [39.78, 44.63, 41.37, 32.74]],
  ])('$id: published means are typical, also 25 % smaller and larger', (field, means) => {
    for (const mean of means) {
      expect(typical(field, mean * 0.75)).toBe(true);
      expect(typical(field, mean * 1.25)).toBe(true);
    }
  });
});
