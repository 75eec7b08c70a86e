import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import demo from '../../fixtures/demo-hand.json' with { type: 'json' };
import { DIGIT_FIELDS, PALM_FIELDS, TARGET_FIELDS } from './fields.ts';
import { digitSchema, HAND_SCHEMA_ID, handJsonSchema, handSchema, targetSchema } from './hand-schema.ts';
import { TARGET_MOTIONS } from './target-motion.ts';

describe('handSchema', () => {
  it('takes the demo hand as it is, and returns it unchanged', () => {
    expect(handSchema.parse(demo)).toEqual(demo);
  });

  it('has a key for every field of the table', () => {
    expect(Object.keys(digitSchema.shape)).toEqual(Object.keys(DIGIT_FIELDS));
    expect(Object.keys(targetSchema.shape)).toEqual(expect.arrayContaining(['digit', ...Object.keys(TARGET_FIELDS), ...TARGET_MOTIONS]));
    expect(Object.keys(handSchema.shape)).toEqual(expect.arrayContaining(Object.keys(PALM_FIELDS)));
  });
});

describe('handJsonSchema()', () => {
  const schema = handJsonSchema();

  it('is plain JSON of the 2020-12 draft, closed at every level', () => {
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
    expect(schema).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      additionalProperties: false,
      required: ['schema', 'code', 'side', 'units', 'digits'],
      properties: {
        schema: { const: HAND_SCHEMA_ID },
        units: { enum: ['mm', 'cm', 'in'] },
        digits: {
          minProperties: 1,
          additionalProperties: false,
          properties: { ring: { additionalProperties: false, required: ['width', 'circumference'] } },
        },
        target: { additionalProperties: false, required: ['digit'] },
        flags: { additionalProperties: false },
      },
    });
  });

  it('read back as a schema takes the demo hand and refuses a damaged one', () => {
    const back = z.fromJSONSchema(schema as Parameters<typeof z.fromJSONSchema>[0]);
    expect(back.safeParse(demo).success).toBe(true);
    expect(back.safeParse({ ...demo, side: 'both' }).success).toBe(false);
    expect(back.safeParse({ ...demo, extra: 1 }).success).toBe(false);
    expect(back.safeParse({ ...demo, code: 'demo' }).success).toBe(false);
  });

  it('tells of every measurement how to take it and its range', () => {
    const text = JSON.stringify(schema);
    for (const field of Object.values({ ...DIGIT_FIELDS, ...PALM_FIELDS, ...TARGET_FIELDS })) {
      expect(text).toContain(JSON.stringify(field.howToMeasure).slice(1, -1));
      expect(text).toContain(`${field.refuse.from} to ${field.refuse.to} ${field.unit}`);
    }
  });
});
