import demoPlateHand from '../../fixtures/demo-hand-plate.json' with { type: 'json' };
import { blocks } from '../../src/block/library.ts';
import { type Box, boxOf } from '../../src/geometry/path.ts';
import { readHand } from '../../src/hand/read-hand.ts';
import { makePattern } from '../../src/pattern/make-pattern.ts';
import type { Pattern } from '../../src/pattern/pattern.ts';
import { shiftPart } from '../../src/pattern/place-marks.ts';
import { plateById } from '../../src/pattern/plate/plate-names.ts';
import { DEFAULT_PLATE_OPTIONS } from '../../src/pattern/plate/plate-options.ts';
import { designFor } from '../../src/pattern/plate/read-plate.ts';
import { DEFAULT_STRIP_OPTIONS } from '../../src/pattern/strip/strip-options.ts';
import { loadWriter } from '../../src/writers/load-writer.ts';
import { DEFAULT_OUTPUT_SETTINGS, DXF_FORMS, type OutputSettings } from '../../src/writers/output-settings.ts';
import { handOf, WORKED } from '../hands.ts';
import { type TracedPath, tracePaths } from '../read-pdf.ts';

/** Room round the outline where it stands alone, mm. */
const MARGIN = 5;

type Size = readonly [width: number, height: number];

/** A pattern for readers to measure: as files, whole and as nothing but its cut outline, so that a picture's ink is the outline's. */
export interface SampleFiles {
  readonly name: string;
  readonly title: string;
  readonly svg: string;
  readonly outlineSvg: string;
  /** By the form of the DXF: 2007, r12. */
  readonly dxf: Readonly<Record<string, string>>;
  readonly outlineDxf: Readonly<Record<string, string>>;
  readonly pdf: Uint8Array;
  readonly outlinePdf: Uint8Array;
  /** True sizes, mm: of the drawing, of the box round the cut outline, of the PDF's paper with the shorter side first. */
  readonly drawing: Size;
  readonly outline: Size;
  readonly paper: Size;
}

export async function sampleFiles(): Promise<readonly SampleFiles[]> {
  return [
    await sample('strip', 'the strip ring-raised-in-four of the demo hand', demoStrip()),
    await sample('plate', 'the dorsal plate mp-immobilisation-dorsal of the demo hand, MP joints at 45 degrees', demoPlate()),
  ];
}

function demoStrip(): Pattern {
  const block = blocks().find((b) => b.id === 'ring-raised-in-four');
  const made = block ? makePattern({ kind: 'strip', hand: handOf(WORKED), block, options: DEFAULT_STRIP_OPTIONS, date: null }) : null;
  if (!made?.ok) throw new Error('no strip');
  return made.value.pattern;
}

function demoPlate(): Pattern {
  const hand = readHand(demoPlateHand);
  const preset = plateById('mp-immobilisation-dorsal');
  const design = hand.ok && preset ? designFor(hand.value, preset, { digits: null, angle: 45, planned: null }) : null;
  const made =
    hand.ok && design?.ok
      ? makePattern({ kind: 'plate', hand: hand.value, plate: design.value, options: DEFAULT_PLATE_OPTIONS, date: null })
      : null;
  if (!made?.ok) throw new Error('no plate');
  return made.value.pattern;
}

async function sample(name: string, title: string, pattern: Pattern): Promise<SampleFiles> {
  const { notes: _, ...rest } = pattern;
  const box = boxOf(pattern.parts.map((part) => part.outline));
  const [width, height] = sizeOf(box);
  const alone: Pattern = {
    ...rest,
    parts: pattern.parts.map((part) => shiftPart({ ...part, marks: [], labels: [] }, MARGIN - box.minX, MARGIN - box.minY)),
    beside: { marks: [], labels: [] },
    extents: { minX: 0, minY: 0, maxX: width + 2 * MARGIN, maxY: height + 2 * MARGIN },
  };
  const { minX, minY, maxX, maxY } = pattern.extents;
  const { pdf } = DEFAULT_OUTPUT_SETTINGS;
  const dxfs = async (what: Pattern) =>
    Object.fromEntries(
      await Promise.all(
        DXF_FORMS.map(async (form) => [form, text(await written('dxf', what, { dxf: { ...DEFAULT_OUTPUT_SETTINGS.dxf, form } }))] as const),
      ),
    );
  return {
    name,
    title,
    svg: text(await written('svg', pattern)),
    outlineSvg: text(await written('svg', alone)),
    dxf: await dxfs(pattern),
    outlineDxf: await dxfs(alone),
    pdf: bytes(await written('pdf', pattern)),
    outlinePdf: bytes(await written('pdf', alone, { pdf: { ...pdf, parts: ['pattern'] } })),
    drawing: [maxX - minX, maxY - minY],
    outline: [width, height],
    paper: [pdf.paper.width, pdf.paper.height],
  };
}

async function written(format: 'svg' | 'dxf' | 'pdf', what: Pattern, settings: Partial<OutputSettings> = {}): Promise<string | Uint8Array> {
  const made = (await loadWriter(format, { ...DEFAULT_OUTPUT_SETTINGS, ...settings })).write(what);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

function text(content: string | Uint8Array): string {
  if (typeof content !== 'string') throw new Error('no text');
  return content;
}

function bytes(content: string | Uint8Array): Uint8Array {
  if (typeof content === 'string') throw new Error('no bytes');
  return content;
}

function sizeOf({ minX, minY, maxX, maxY }: Box): Size {
  return [maxX - minX, maxY - minY];
}

/** How finely a curve is sampled: a quarter of a circle of 20 mm then reaches 0.0004 mm less far than it does. */
const STEPS = 256;

/** Box of the strokes of a width (mm; null for any) on the first page of a PDF as mutool traces it, curves and all. mm, y up. */
export function strokedBox(file: string, width: number | null): Box | null {
  const strokes = tracePaths(file, 1).filter((path) => path.kind === 'stroke' && (width === null || Math.abs(path.width - width) < 0.005));
  const points = strokes.flatMap(pointsOf);
  if (points.length === 0) return null;
  let [minX, minY, maxX, maxY] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const [x, y] of points) {
    [minX, maxX] = [Math.min(minX, x), Math.max(maxX, x)];
    [minY, maxY] = [Math.min(minY, y), Math.max(maxY, y)];
  }
  return { minX, minY, maxX, maxY };
}

function pointsOf(path: TracedPath): readonly (readonly [number, number])[] {
  return path.subpaths.flatMap((steps) =>
    steps.flatMap(({ to, handles }, i): readonly (readonly [number, number])[] => {
      const from = steps[i - 1]?.to;
      if (!handles || !from) return [[to.x, to.y]];
      const [p, q] = handles;
      return Array.from({ length: STEPS }, (_, k) => {
        const t = (k + 1) / STEPS;
        const [a, b, c, d] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
        return [a * from.x + b * p.x + c * q.x + d * to.x, a * from.y + b * p.y + c * q.y + d * to.y] as const;
      });
    }),
  );
}
