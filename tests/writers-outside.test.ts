import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { boxOf, type LineArcPath } from '../src/geometry/path.ts';
import { type DrawnItem, drawOrder } from '../src/writers/draw-order.ts';
import { dxfWriter } from '../src/writers/dxf/dxf.ts';
import { SVG_LAYER_COLOURS } from '../src/writers/svg/svg.ts';
import { svgNodeWriter } from '../src/writers/svg/svg-node.ts';
import { parseDxf } from './parse-dxf.ts';
import { differingPixels, inkedPixels, rasterise } from './picture.ts';
import { needsReader } from './readers.ts';
import { redrawDxf } from './redraw-dxf.ts';
import { samplePattern } from './sample-pattern.ts';

/** Half of the last written decimal: 4 for coordinates, 9 for bulges. */
const COORDINATE_ROUNDING = 0.5e-4 + 1e-9;
const BULGE_ROUNDING = 0.5e-9 + 1e-12;
/** The same of letters and what is only read: 2 and 4. */
const READ_ROUNDING = 0.5e-2 + 1e-9;
const READ_BULGE_ROUNDING = 0.5e-4 + 1e-9;
const DPI = 600;
/** Of the inked pixels, how many may differ between SVG and DXF: both round to 0.0001 mm, a pixel is 0.042 mm. */
const DIFFERING_SHARE = 0.0001;

const scratch = mkdtempSync(join(tmpdir(), 'writers-'));
afterAll(() => rmSync(scratch, { recursive: true }));

function textOf(result: ReturnType<typeof dxfWriter.write>): string {
  if (!result.ok || typeof result.value !== 'string') throw new Error(JSON.stringify(result));
  return result.value;
}

const svg = textOf(svgNodeWriter.write(samplePattern));
const dxf = textOf(dxfWriter.write(samplePattern));
const order = drawOrder(samplePattern);
const items: readonly DrawnItem[] = order.ok ? order.value.flatMap((group) => group.items) : [];
const circlesIn = (item: DrawnItem) => item.circles.length + item.paths.filter(isRoundHole).length;
const isRoundHole = (path: LineArcPath) => path.closed && path.vertices.length === 2 && path.vertices.every((v) => Math.abs(v.bulge) === 1);
const drawnPaths = items.flatMap((item) =>
  item.paths
    .filter((path) => !isRoundHole(path))
    .map((path) => ({ layer: item.layer, path, isRead: item.role === 'label' || item.layer === 'INFO' })),
);

interface ReadEntity {
  readonly type: string;
  readonly layer: string;
  readonly closed: boolean;
  readonly points: readonly (readonly [x: number, y: number, bulge: number])[];
}

/** Every path of the pattern, in file order, against the polylines and lines that a reader found. */
function expectSamePaths(read: readonly ReadEntity[]): void {
  const curves = read.filter((entity) => entity.type !== 'CIRCLE');
  expect(curves.map((entity) => entity.layer)).toEqual(drawnPaths.map(({ layer }) => layer));
  for (const [i, { path, isRead }] of drawnPaths.entries()) {
    const [place, arc] = isRead ? [READ_ROUNDING, READ_BULGE_ROUNDING] : [COORDINATE_ROUNDING, BULGE_ROUNDING];
    const entity = curves[i];
    expect(entity?.closed).toBe(path.closed);
    expect(entity?.points).toHaveLength(path.vertices.length);
    for (const [k, vertex] of path.vertices.entries()) {
      const [x, y, bulge] = entity?.points[k] ?? [Number.NaN, Number.NaN, Number.NaN];
      expect(Math.abs(x - vertex.x)).toBeLessThanOrEqual(place);
      expect(Math.abs(y - vertex.y)).toBeLessThanOrEqual(place);
      expect(Math.abs(bulge - vertex.bulge)).toBeLessThanOrEqual(arc);
    }
  }
  expect(read.filter((entity) => entity.type === 'CIRCLE')).toHaveLength(items.reduce((sum, item) => sum + circlesIn(item), 0));
}

describe('DXF read by dxf-parser', () => {
  const parsed = parseDxf(dxf);

  it('has every path and circle of the pattern', () => {
    expect(drawnPaths.length).toBeGreaterThan(20);
    expectSamePaths(
      parsed.entities.map((entity) => {
        const { vertices = [], shape = false } = entity as { vertices?: { x: number; y: number; bulge?: number }[]; shape?: boolean };
        return { type: entity.type, layer: entity.layer, closed: shape, points: vertices.map((v) => [v.x, v.y, v.bulge ?? 0] as const) };
      }),
    );
  });

  it('declares mm and the three layers', () => {
    expect(parsed.header).toMatchObject({ $INSUNITS: 4, $MEASUREMENT: 1 });
    expect(Object.keys(parsed.tables.layer.layers)).toEqual(['0', 'CUT', 'MARK', 'INFO']);
  });
});

describe('DXF read by ezdxf', () => {
  it('loads strictly, with an empty audit, the declared units, extents, layers and every path', (context) => {
    needsReader(context, 'ezdxf');
    const file = join(scratch, 'sample.dxf');
    writeFileSync(file, dxf);
    const script = fileURLToPath(new URL('./readers/read_dxf.py', import.meta.url));
    const read = JSON.parse(execFileSync('/usr/bin/python3', [script, file], { encoding: 'utf8' }));
    expect([...read.errors, ...read.fixes]).toEqual([]);
    expect([read.units, read.measurement]).toEqual([4, 1]);
    expect(read.declaredExtents).toEqual([
      [0, 0],
      [120, 67.5],
    ]);
    const box = boxOf([...items.flatMap((item) => item.paths), ...items.flatMap((item) => item.circles.map(squareRound))]);
    const measured = read.extents.flat();
    for (const [i, edge] of [box.minX, box.minY, box.maxX, box.maxY].entries()) expect(Math.abs(measured[i] - edge)).toBeLessThan(0.001);
    expectSamePaths(read.entities.map((entity: Partial<ReadEntity>) => ({ closed: false, points: [], ...entity })).map(withBulges));
    const layers = read.layers.filter((layer: { name: string }) => ['CUT', 'MARK', 'INFO'].includes(layer.name));
    expect(layers).toHaveLength(3);
    for (const layer of layers) {
      expect(layer.linetype).toBe('CONTINUOUS');
      // WCAG 2.2, 1.4.11: a line is seen at 3 to 1. CUT (index 7) is drawn white on black and black on white.
      if (layer.name !== 'CUT') for (const page of [0, 1]) expect(contrast(luminance(layer.rgb), page)).toBeGreaterThan(3);
    }
  });
});

describe('SVG laid over the DXF as dxf-parser read it', () => {
  const drawn = rasterise(svg, DPI);
  const redrawn = rasterise(redrawDxf(parseDxf(dxf), SVG_LAYER_COLOURS), DPI);
  const bound = DIFFERING_SHARE * inkedPixels(drawn);

  it('is the same picture at 600 dpi, at true size', () => {
    expect([drawn.width, drawn.height]).toEqual([120, 67.5].map((mm) => Math.round((mm / 25.4) * DPI)));
    expect(inkedPixels(drawn)).toBeGreaterThan(20_000);
    expect(differingPixels(drawn, redrawn)).toBeLessThanOrEqual(bound);
  });

  it('would show a drawing that is moved by 0.1 mm, mirrored, or has an arc turned over', () => {
    const moved = dxf.replace('$EXTMIN\n10\n0.0000', '$EXTMIN\n10\n0.1000').replace('$EXTMAX\n10\n120.0000', '$EXTMAX\n10\n120.1000');
    const turned = dxf.replace('42\n-0.450000000', '42\n0.450000000');
    expect(moved).not.toBe(dxf);
    expect(turned).not.toBe(dxf);
    for (const wrong of [moved, turned]) {
      expect(differingPixels(drawn, rasterise(redrawDxf(parseDxf(wrong), SVG_LAYER_COLOURS), DPI))).toBeGreaterThan(bound);
    }
    const mirrored = redrawDxf(parseDxf(dxf), SVG_LAYER_COLOURS).replace('<g ', '<g transform="translate(120 0) scale(-1 1)" ');
    expect(differingPixels(drawn, rasterise(mirrored, DPI))).toBeGreaterThan(bound);
  });
});

describe('SVG printed by librsvg', () => {
  it('has the true page size', (context) => {
    needsReader(context, 'rsvg-convert');
    needsReader(context, 'poppler');
    const [source, page] = [join(scratch, 'sample.svg'), join(scratch, 'sample.pdf')];
    writeFileSync(source, svg);
    execFileSync('rsvg-convert', ['--format=pdf', `--output=${page}`, source]);
    const size = /Page size:\s+([\d.]+) x ([\d.]+) pts/.exec(execFileSync('pdfinfo', [page], { encoding: 'utf8' })) ?? [];
    // 72 pt = 1 in = 25.4 mm (CSS Values and Units; ISO 32000); pdfinfo prints 6 digits.
    const [width, height] = size.slice(1).map((points) => (Number(points) / 72) * 25.4);
    expect(width).toBeCloseTo(120, 2);
    expect(height).toBeCloseTo(67.5, 2);
  });
});

function squareRound({ center: { x, y }, radius: r }: DrawnItem['circles'][number]): LineArcPath {
  const at = (dx: number, dy: number) => ({ x: x + dx, y: y + dy, bulge: 0 });
  return { closed: true, vertices: [at(r, 0), at(0, r), at(-r, 0), at(0, -r)] };
}

/** Lines come without bulges. */
function withBulges(entity: ReadEntity): ReadEntity {
  return { ...entity, points: entity.points.map(([x, y, bulge = 0]) => [x, y, bulge] as const) };
}

/** WCAG 2.2: relative luminance of 0xRRGGBB, and contrast of two luminances. */
function luminance(rgb: number): number {
  const [r = 0, g = 0, b = 0] = [16, 8, 0].map((shift) => {
    const part = ((rgb >> shift) & 255) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: number, b: number): number {
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}
