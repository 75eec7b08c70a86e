import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { DEMO_HAND, stripOf } from '../../tests/pdf-samples.ts';
import { readHand } from '../hand/read-hand.ts';
import { makePattern } from './make-pattern.ts';
import { plateById } from './plate/plate-names.ts';
import { DEFAULT_PLATE_OPTIONS } from './plate/plate-options.ts';
import { designFor } from './plate/read-plate.ts';
import { requestFromInputs } from './request-from-inputs.ts';

const pattern = stripOf(DEMO_HAND, 'ring-lowered-in-three', '2026-03-31');
const inputs: Record<string, unknown> = JSON.parse(JSON.stringify(pattern.inputs));
const read = (change: object) => requestFromInputs({ ...inputs, ...change }, 'a.svg');

describe('requestFromInputs(inputs, source)', () => {
  it('makes the same pattern again', () => {
    const request = requestFromInputs(inputs, 'a.svg');
    if (!request.ok) throw new Error(JSON.stringify(request.problems));
    const made = makePattern(request.value);
    expect(made.ok && made.value.pattern).toEqual(pattern);
  });

  it('names all that is missing at once', () => {
    const { hand: _, options: __, ...rest } = inputs;
    const result = requestFromInputs(rest, 'a.svg');
    expect(result).toMatchObject({
      ok: false,
      problems: [
        { code: 'INPUTS_MISSING', where: 'hand' },
        { code: 'INPUTS_MISSING', where: 'options' },
      ],
    });
    expect(JSON.stringify(result)).toContain('inputs in a.svg');
  });

  it.each([
    [null, 'INPUTS_BROKEN'],
    [[], 'INPUTS_BROKEN'],
    ['text', 'INPUTS_BROKEN'],
    [{ schema: 'knucklewright/inputs@9' }, 'INPUTS_BROKEN'],
    [{ ...inputs, kind: 'glove' }, 'INPUTS_BROKEN'],
    [{ ...inputs, kind: 'sheet' }, 'INPUTS_OF_MANY'],
    [{ ...inputs, kind: 'page' }, 'INPUTS_OF_MANY'],
    [{ ...inputs, date: '2026-02-30' }, 'INPUTS_BROKEN'],
    [{ ...inputs, date: 20260330 }, 'INPUTS_BROKEN'],
    [{ ...inputs, geometryVersion: 1 }, 'INPUTS_BROKEN'],
    [{ ...inputs, block: { schema: 'knucklewright/block@1', id: 'x', places: { index: 'raised' } } }, 'BLOCK_COUNT'],
    [{ ...inputs, options: { width: 4000 } }, null],
    [{ ...inputs, options: null }, null],
    [{ ...inputs, hand: { ...(inputs.hand as object), code: 'JANE DOE' } }, 'CASE_CODE'],
  ])('trusts nothing: %j', (broken, code) => {
    const result = requestFromInputs(broken, 'a.svg');
    expect(result.ok).toBe(false);
    if (!result.ok && code) expect(result.problems.map((p) => p.code)).toContain(code);
  });

  it('warns when another geometry drew the file', () => {
    const result = read({ geometryVersion: '0' });
    expect(result).toMatchObject({ ok: true, warnings: expect.arrayContaining([expect.objectContaining({ code: 'GEOMETRY_CHANGED' })]) });
    expect(read({}).ok && JSON.stringify(read({}))).not.toContain('GEOMETRY_CHANGED');
  });

  it('reads a file without a date', () => {
    expect(read({ date: null })).toMatchObject({ ok: true, value: { date: null } });
  });
});

describe('requestFromInputs of a plate', () => {
  const inputs = () => {
    const hand = readHand(JSON.parse(readFileSync(new URL('../../fixtures/demo-hand-plate.json', import.meta.url), 'utf8')));
    const preset = plateById('mp-immobilisation-dorsal');
    if (!hand.ok || !preset) throw new Error('no hand or preset');
    const plate = designFor(hand.value, preset, { digits: null, angle: 40, planned: null });
    if (!plate.ok) throw new Error('no design');
    const made = makePattern({ kind: 'plate', hand: hand.value, plate: plate.value, options: DEFAULT_PLATE_OPTIONS, date: null });
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    return made.value.pattern;
  };

  it('draws the same plate again', () => {
    const pattern = inputs();
    const request = requestFromInputs(JSON.parse(JSON.stringify(pattern.inputs)), 'plate.svg');
    if (!request.ok) throw new Error(JSON.stringify(request.problems));
    const again = makePattern(request.value);
    if (!again.ok) throw new Error(JSON.stringify(again.problems));
    // What the pictures are drawn from holds functions, which no comparison sees into; its figures stand in the marks and notes.
    const compared = (p: typeof pattern) => ({ ...p, notes: { ...p.notes, made: p.notes?.made.kind } });
    expect(compared(again.value.pattern)).toEqual(compared(pattern));
  });

  it('names what is wrong with a changed one', () => {
    const changed = {
      ...JSON.parse(JSON.stringify(inputs().inputs)),
      plate: { id: 'x', title: 'x', faces: 'round', digits: [], angle: 400 },
    };
    const request = requestFromInputs(changed, 'plate.svg');
    expect(request.ok ? [] : request.problems.map((p) => p.where)).toEqual(['plate.faces', 'plate.digits', 'plate.angle']);
  });
});
