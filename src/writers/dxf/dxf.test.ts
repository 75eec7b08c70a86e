import { describe, expect, it } from 'vitest';
import { samplePattern } from '../../../tests/sample-pattern.ts';
import type { Pattern } from '../../pattern/pattern.ts';
import { inputsFromDxf } from '../inputs-text.ts';
import { loadWriter } from '../load-writer.ts';
import { DXF_LAYER_COLOURS, dxfWriter } from './dxf.ts';

function dxfOf(pattern: Pattern): string {
  const result = dxfWriter.write(pattern);
  if (!result.ok || typeof result.value !== 'string') throw new Error(JSON.stringify(result));
  return result.value;
}

type Tag = readonly [code: string, value: string];

function tagsOf(dxf: string): readonly Tag[] {
  const lines = dxf.split('\n');
  return Array.from({ length: Math.floor(lines.length / 2) }, (_, i): Tag => [lines[2 * i] ?? '', lines[2 * i + 1] ?? '']);
}

/** The tags of each object of a section or table: from one group 0 to the next. */
function objectsOf(tags: readonly Tag[], section: string): readonly (readonly Tag[])[] {
  const start = tags.findIndex(([code, value], i) => code === '2' && value === section && tags[i - 1]?.[0] === '0');
  const objects: Tag[][] = [];
  for (const tag of tags.slice(start + 1)) {
    if (tag[0] === '0' && /^END/.test(tag[1])) break;
    if (tag[0] === '0') objects.push([]);
    objects.at(-1)?.push(tag);
  }
  return objects;
}

const value = (object: readonly Tag[], code: string) => object.find((tag) => tag[0] === code)?.[1];
const allValues = (object: readonly Tag[], code: string) => object.filter((tag) => tag[0] === code).map((tag) => tag[1]);
const onePart: Pattern = { ...samplePattern, title: 'other', parts: samplePattern.parts.slice(1) };

describe('dxfWriter.write(pattern)', () => {
  const dxf = dxfOf(samplePattern);
  const tags = tagsOf(dxf);
  const entities = objectsOf(tags, 'ENTITIES');

  it('is ASCII in lines of at most 250 characters', () => {
    expect(dxf).toMatch(/^[\x20-\x7e\n]*$/);
    expect(Math.max(...dxf.split('\n').map((line) => line.length))).toBeLessThanOrEqual(250);
    expect(dxf.endsWith('\n0\nEOF\n')).toBe(true);
  });

  it('says mm, metric and how large the drawing is', () => {
    const header = tags.slice(
      0,
      tags.findIndex(([, v]) => v === 'ENDSEC'),
    );
    const variable = (name: string) => header.slice(header.findIndex(([c, v]) => c === '9' && v === name) + 1, 99);
    expect(variable('$INSUNITS')[0]).toEqual(['70', '4']);
    expect(variable('$MEASUREMENT')[0]).toEqual(['70', '1']);
    expect(variable('$EXTMIN').slice(0, 2)).toEqual([
      ['10', '0.0000'],
      ['20', '0.0000'],
    ]);
    expect(variable('$EXTMAX').slice(0, 2)).toEqual([
      ['10', '120.0000'],
      ['20', '67.5000'],
    ]);
  });

  it('declares its layers with a continuous line and a black or grey of their own', () => {
    const layers = objectsOf(tags, 'LAYER').filter((layer) => value(layer, '2') !== '0');
    expect(layers.map((layer) => [value(layer, '2'), value(layer, '62'), value(layer, '6')])).toEqual([
      ['CUT', String(DXF_LAYER_COLOURS.CUT), 'CONTINUOUS'],
      ['MARK', String(DXF_LAYER_COLOURS.MARK), 'CONTINUOUS'],
      ['INFO', String(DXF_LAYER_COLOURS.INFO), 'CONTINUOUS'],
    ]);
  });

  it('draws part by part, what is drawn before what is cut', () => {
    const runs = entities.map((entity) => value(entity, '8')).filter((layer, i, all) => layer !== all[i - 1]);
    expect(runs).toEqual(['MARK', 'INFO', 'CUT', 'MARK', 'CUT', 'MARK', 'INFO']);
  });

  it('cuts closed polylines and circles only', () => {
    const cuts = entities.filter((entity) => value(entity, '8') === 'CUT');
    expect(cuts.map((entity) => [value(entity, '0'), value(entity, '70')])).toEqual([
      ['CIRCLE', undefined],
      ['LWPOLYLINE', '1'],
      ['LWPOLYLINE', '1'],
      ['LWPOLYLINE', '1'],
    ]);
    expect(cuts[0] && [value(cuts[0], '10'), value(cuts[0], '20'), value(cuts[0], '40')]).toEqual(['105.0000', '51.0000', '2.2000']);
  });

  it('writes bulges with nine decimals, that of the last segment too', () => {
    const slot = entities.find((entity) => value(entity, '8') === 'CUT' && value(entity, '0') === 'LWPOLYLINE') ?? [];
    expect(allValues(slot, '42')).toEqual(['-1.000000000', '-1.000000000']);
    expect(slot.at(-1)).toEqual(['42', '-1.000000000']);
    const tack =
      entities.find(
        (entity) => value(entity, '0') === 'LWPOLYLINE' && value(entity, '8') === 'MARK' && allValues(entity, '42').length === 2,
      ) ?? [];
    expect(allValues(tack, '42')).toEqual(['0.800000000', '-0.300000000']);
  });

  it('writes every coordinate of a cut with four decimals, of what is only read with at most two', () => {
    const numbersOf = (layers: string) =>
      entities
        .filter((entity) => layers.includes(value(entity, '8') ?? '?'))
        .flatMap((entity) => entity.filter(([code]) => /^(10|20|11|21|40)$/.test(code)).map((tag) => tag[1]));
    expect(numbersOf('CUT').length).toBeGreaterThan(20);
    expect(numbersOf('CUT').filter((number) => !/^-?\d+\.\d{4}$/.test(number))).toEqual([]);
    expect(numbersOf('INFO').length).toBeGreaterThan(20);
    expect(numbersOf('INFO').filter((number) => !/^-?\d+(\.\d?[1-9])?$/.test(number))).toEqual([]);
    // Marks as cuts, their letters as what is read.
    expect(numbersOf('MARK').filter((number) => !/^-?\d+(\.(\d{4}|\d?[1-9]))?$/.test(number))).toEqual([]);
  });

  it('says no group that is a default: by layer in type, colour and weight, flat, open', () => {
    const said = entities.flat().map((tag) => tag.join(' '));
    for (const group of ['6 ByLayer', '62 256', '370 -1', '30 0', '31 0', '70 0']) expect(said).not.toContain(group);
    expect(said).toContain('70 1');
  });

  it('has no text, spline or block of its own', () => {
    expect(new Set(entities.map((entity) => value(entity, '0')))).toEqual(new Set(['LINE', 'LWPOLYLINE', 'CIRCLE']));
  });

  it('carries the title and the inputs in comments before the header', () => {
    expect(tags[0]).toEqual(['999', 'title: Sample strip & gauge <left>']);
    expect(inputsFromDxf(dxf)).toMatchObject({ ok: true, value: samplePattern.inputs });
  });

  it('gives the same bytes whatever was drawn before', () => {
    expect(dxfOf(onePart)).not.toBe(dxf);
    expect(dxfOf(samplePattern)).toBe(dxf);
  });

  it('does not repeat a handle', () => {
    const handles = tags.filter(([code, v], i) => code === '5' && tags[i - 1]?.[1] !== '$HANDSEED' && v !== '').map((tag) => tag[1]);
    expect(new Set(handles).size).toBe(handles.length);
  });

  it('fails with the names of characters that have no strokes, and for numbers without a value', () => {
    const label = { layer: 'INFO', text: '\u4e2d', at: { x: 0, y: 0 }, height: 2, align: 'left', angle: 0 } as const;
    const broken = dxfWriter.write({ ...samplePattern, beside: { marks: [], labels: [label] } });
    expect(broken).toMatchObject({ ok: false, problems: [{ code: 'LABEL_CHARACTERS_UNKNOWN' }] });
    const lost = dxfWriter.write({ ...samplePattern, extents: { ...samplePattern.extents, maxX: Number.NaN } });
    expect(lost).toMatchObject({ ok: false, problems: [{ code: 'NUMBER_NOT_WRITABLE', where: 'extents' }] });
  });

  it('is what loadWriter gives for dxf', async () => {
    expect((await loadWriter('dxf')).write(samplePattern)).toEqual(dxfWriter.write(samplePattern));
  });
});
