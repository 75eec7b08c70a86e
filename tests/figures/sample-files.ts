import { blocks } from '../../src/block/library.ts';
import { boxOf } from '../../src/geometry/path-measures.ts';
import { makePattern } from '../../src/pattern/make-pattern.ts';
import type { Pattern } from '../../src/pattern/pattern.ts';
import { DEFAULT_STRIP_OPTIONS } from '../../src/pattern/strip/strip-options.ts';
import { loadWriter } from '../../src/writers/load-writer.ts';
import { handOf, WORKED } from '../hands.ts';

/** The demo hand's strip, for readers to measure: as files, and alone as its cut outline. */
export interface SampleFiles {
  readonly svg: string;
  readonly dxf: string;
  /** The same drawing with nothing but the cut line, so that a picture's ink is the outline's. */
  readonly outlineSvg: string;
  /** True sizes, mm. */
  readonly drawing: readonly [width: number, height: number];
  readonly outline: readonly [width: number, height: number];
}

export async function sampleFiles(): Promise<SampleFiles> {
  const block = blocks().find((b) => b.id === 'ring-raised-in-four');
  const made = block ? makePattern({ kind: 'strip', hand: handOf(WORKED), block, options: DEFAULT_STRIP_OPTIONS, date: null }) : null;
  if (!made?.ok) throw new Error('no strip');
  const { pattern } = made.value;
  const alone: Pattern = {
    ...pattern,
    parts: pattern.parts.map((part) => ({ ...part, marks: [], labels: [] })),
    beside: { marks: [], labels: [] },
  };
  const box = boxOf(pattern.parts.map((part) => part.outline));
  const { minX, minY, maxX, maxY } = pattern.extents;
  const written = async (format: 'svg' | 'dxf', what: Pattern) => {
    const text = (await loadWriter(format)).write(what);
    if (!text.ok || typeof text.value !== 'string') throw new Error(`no ${format}`);
    return text.value;
  };
  return {
    svg: await written('svg', pattern),
    dxf: await written('dxf', pattern),
    outlineSvg: await written('svg', alone),
    drawing: [maxX - minX, maxY - minY],
    outline: [box.maxX - box.minX, box.maxY - box.minY],
  };
}
