import { describe, expect, it } from 'vitest';
import demo from '../../fixtures/demo-hand.json' with { type: 'json' };
import { HAND_COLUMNS, handOfRow } from './hand-columns.ts';
import { handJsonSchema } from './hand-schema.ts';
import { readHand } from './read-hand.ts';

const withWebs = (webSetback: unknown) => readHand({ ...demo, webSetback });
const problems = (webSetback: unknown) => {
  const read = withWebs(webSetback);
  return read.ok ? [] : read.problems.map(({ code, message }) => `${code} ${message}`);
};

describe('measurements at the webs', () => {
  it('are read in any unit, and are absent from a hand whose webs were not measured', () => {
    const read = withWebs({ 'index-long': 0, 'ring-little': '1.25 cm' });
    expect(read.ok && read.value.webs).toEqual({ webSetback: { 'index-long': 0, 'ring-little': 12.5 } });
    const { webSetback: _, ...bare } = demo;
    const without = readHand(bare);
    expect(without.ok && without.value).not.toHaveProperty('webs');
  });

  it('are refused with what is known, what is allowed and how to measure', () => {
    expect(problems({ 'ring-litle': 3 })).toEqual([expect.stringMatching(/FIELD_UNKNOWN .*Did you mean "ring-little"\?/)]);
    expect(problems({ 'long-ring': 31 })).toEqual([expect.stringMatching(/FIELD_OUT_OF_RANGE .*0 to 30 mm.*ruler along the long finger/)]);
    expect(problems(3)).toEqual([expect.stringMatching(/FIELD_TYPE webSetback: 3 is not allowed.*ruler along the long finger/)]);
  });

  it('follow from the table in schema and columns too', () => {
    const schema = handJsonSchema() as { properties: Record<string, { properties?: object }> };
    expect(Object.keys(schema.properties.webSetback?.properties ?? {})).toEqual(['index-long', 'long-ring', 'ring-little']);
    expect(HAND_COLUMNS.map(({ name }) => name)).toContain('webSetback.ring-little');
    expect(handOfRow({ 'webSetback.ring-little': '12,5' }, 'mm')).toMatchObject({ webSetback: { 'ring-little': '12,5' } });
  });
});
