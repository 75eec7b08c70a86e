import { describe, expect, it } from 'vitest';
import { samplePattern } from '../../tests/sample-pattern.ts';
import type { Label, Pattern } from '../pattern/pattern.ts';
import { drawOrder } from './draw-order.ts';

const groupsOf = (pattern: Pattern) => {
  const order = drawOrder(pattern);
  if (!order.ok) throw new Error(JSON.stringify(order.problems));
  return order.value;
};

const problemsOf = (pattern: Pattern) => {
  const order = drawOrder(pattern);
  return order.ok ? [] : order.problems;
};

const besideLabel = (text: string): Label => ({ layer: 'INFO', text, at: { x: 1, y: 1 }, height: 2, align: 'left', angle: 0 });

describe('drawOrder(pattern)', () => {
  it('goes part by part, what is drawn before what is cut, holes before the outline, then beside', () => {
    const groups = groupsOf(samplePattern);
    expect(groups.map((group) => [group.id, group.part])).toEqual([
      ['part-1', 'strip'],
      ['part-2', 'gauge'],
      ['beside', null],
    ]);
    const [strip, , beside] = groups;
    expect(strip?.items.map((item) => `${item.layer} ${item.role}`)).toEqual([
      'MARK midline-palmar',
      'MARK tack',
      'MARK turn',
      'MARK fold',
      'MARK label',
      'MARK label',
      'INFO grain',
      'CUT hole',
      'CUT hole',
      'CUT outline',
    ]);
    expect(beside?.items.map((item) => item.layer)).toEqual(['MARK', 'INFO', 'INFO']);
  });

  it('draws labels as strokes and keeps what they say', () => {
    const label = groupsOf(samplePattern)[0]?.items.find((item) => item.role === 'label');
    expect(label?.title).toBe('LEFT HAND');
    expect(label?.paths.length).toBeGreaterThan(0);
    expect(label?.paths.every((path) => !path.closed || path.vertices.length > 1)).toBe(true);
  });

  it('leaves out a group without items', () => {
    const groups = groupsOf({ ...samplePattern, beside: { marks: [], labels: [] } });
    expect(groups.map((group) => group.id)).toEqual(['part-1', 'part-2']);
  });

  it('names every unknown character instead of dropping it', () => {
    const labels = [besideLabel('a \u{1f590} b'), besideLabel('\u4e2d\n')];
    const problems = problemsOf({ ...samplePattern, beside: { marks: [], labels } });
    expect(problems.map((problem) => problem.code)).toEqual(['LABEL_CHARACTERS_UNKNOWN', 'LABEL_CHARACTERS_UNKNOWN']);
    expect(problems[0]?.message).toContain('U+1F590');
    expect(problems[1]?.message).toContain('(U+4E2D), U+000A;');
  });

  it('refuses labels without a height or a place instead of throwing', () => {
    const labels = [
      { ...besideLabel('flat'), height: 0 },
      { ...besideLabel('lost'), angle: Number.NaN },
    ];
    expect(problemsOf({ ...samplePattern, beside: { marks: [], labels } }).map((problem) => [problem.code, problem.where])).toEqual([
      ['NUMBER_NOT_WRITABLE', 'beside.labels'],
      ['NUMBER_NOT_WRITABLE', 'beside.labels'],
    ]);
  });

  it('refuses numbers without a value, paths of one point and an empty area, all at once', () => {
    const [strip] = samplePattern.parts;
    if (!strip) throw new Error('the sample has a part');
    const dot = {
      layer: 'MARK',
      role: 'dot',
      title: '',
      paths: [{ closed: false, vertices: [{ x: 1, y: 1, bulge: 0 }] }],
      circles: [],
    } as const;
    const lost = { ...dot, role: 'lost', paths: [], circles: [{ center: { x: Number.NaN, y: 0 }, radius: 1 }] };
    const problems = problemsOf({
      ...samplePattern,
      parts: [{ ...strip, marks: [dot, lost] }],
      extents: { minX: 0, minY: 0, maxX: 0, maxY: 5 },
      inputs: { ...samplePattern.inputs, hand: { width: Number.NEGATIVE_INFINITY } },
    });
    expect(problems.map((problem) => [problem.code, problem.where])).toEqual([
      ['EXTENTS_EMPTY', 'extents'],
      ['PATH_TOO_SHORT', 'part-1'],
      ['NUMBER_NOT_WRITABLE', 'part-1'],
      ['NUMBER_NOT_WRITABLE', 'inputs'],
    ]);
    expect(problems.every((problem) => problem.kind === 'refused')).toBe(true);
  });
});
