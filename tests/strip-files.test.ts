import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { blocks } from '../src/block/library.ts';
import { boxOf, signedArea } from '../src/geometry/path.ts';
import { placePath } from '../src/geometry/transform.ts';
import { makePattern } from '../src/pattern/make-pattern.ts';
import type { Pattern } from '../src/pattern/pattern.ts';
import { DEFAULT_STRIP_OPTIONS } from '../src/pattern/strip/strip-options.ts';
import { dxfWriter } from '../src/writers/dxf/dxf.ts';
import { SVG_LAYER_COLOURS } from '../src/writers/svg/svg.ts';
import { svgNodeWriter } from '../src/writers/svg/svg-node.ts';
import type { PatternWriter } from '../src/writers/writer.ts';
import { tried } from './by-night.ts';
import { handOf, WORKED } from './hands.ts';
import { parseDxf } from './parse-dxf.ts';
import { differingPixels, inkedPixels, rasterise } from './picture.ts';
import { needsReader } from './readers.ts';
import { redrawDxf } from './redraw-dxf.ts';

const scratch = mkdtempSync(join(tmpdir(), 'strips-'));
afterAll(() => rmSync(scratch, { recursive: true }));

function patternOf(id: string, side: 'left' | 'right'): Pattern {
  const block = blocks().find((b) => b.id === id);
  if (!block) throw new Error(id);
  const made = makePattern({ kind: 'strip', hand: handOf(WORKED, side), block, options: DEFAULT_STRIP_OPTIONS, date: '2026-11-25' });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value.pattern;
}

function written(writer: PatternWriter, pattern: Pattern): string {
  const result = writer.write(pattern);
  if (!result.ok || typeof result.value !== 'string') throw new Error(JSON.stringify(result));
  return result.value;
}

const ids = blocks().map((b) => b.id);

describe('the DXF of every block', () => {
  // By day the shortest, the longest, and one of each way that a digit is held between.
  it.for(tried(ids, (id) => ['ring-lowered-in-three', 'long-and-ring-raised-in-four', 'long-lowered-in-four'].includes(id)))(
    '%s: ezdxf loads it strictly with an empty audit, in mm, with its true extents and the cut outline with its arcs',
    (id, context) => {
      needsReader(context, 'ezdxf');
      const pattern = patternOf(id, 'left');
      const file = join(scratch, `${id}.dxf`);
      writeFileSync(file, written(dxfWriter, pattern));
      const script = fileURLToPath(new URL('./readers/read_dxf.py', import.meta.url));
      const read = JSON.parse(execFileSync('/usr/bin/python3', [script, file], { encoding: 'utf8' }));
      expect([...read.errors, ...read.fixes]).toEqual([]);
      expect([read.units, read.measurement]).toEqual([4, 1]);
      const cut = read.entities.filter((e: { layer: string }) => e.layer === 'CUT');
      const outline = pattern.parts[0]?.outline;
      expect(cut).toHaveLength(1);
      expect(cut[0].closed).toBe(true);
      expect(cut[0].points.map((p: number[]) => p[2]).filter((bulge: number) => bulge !== 0)).toHaveLength(
        outline?.vertices.filter((v) => v.bulge !== 0).length ?? -1,
      );
    },
  );
});

describe('SVG and DXF of a strip', () => {
  it.each(tried(['ring-lowered-in-three', 'long-and-ring-raised-in-four'], (id) => id === 'ring-lowered-in-three'))(
    '%s: are the same picture at 600 dpi',
    (id) => {
      const pattern = patternOf(id, 'right');
      const drawn = rasterise(written(svgNodeWriter, pattern), 600);
      const redrawn = rasterise(redrawDxf(parseDxf(written(dxfWriter, pattern)), SVG_LAYER_COLOURS), 600);
      expect(inkedPixels(drawn)).toBeGreaterThan(100_000);
      // Both round to 0.0001 mm and a pixel is 0.042 mm: at most one inked pixel in ten thousand may fall otherwise.
      expect(differingPixels(drawn, redrawn)).toBeLessThanOrEqual(0.0001 * inkedPixels(drawn));
    },
  );

  it('have the same bytes whatever was drawn before, and whatever the time zone and language', () => {
    const first = patternOf('ring-lowered-in-three', 'left');
    const [svg, dxf] = [written(svgNodeWriter, first), written(dxfWriter, first)];
    const before = { TZ: process.env.TZ, LANG: process.env.LANG };
    process.env.TZ = 'Pacific/Kiritimati';
    process.env.LANG = 'ar_EG.UTF-8';
    const other = patternOf('long-and-ring-raised-in-four', 'right');
    written(svgNodeWriter, other);
    written(dxfWriter, other);
    const again = patternOf('ring-lowered-in-three', 'left');
    expect(written(svgNodeWriter, again)).toBe(svg);
    expect(written(dxfWriter, again)).toBe(dxf);
    for (const [name, value] of Object.entries(before)) {
      if (value === undefined) delete process.env[name];
      else process.env[name] = value;
    }
  });
});

describe('left and right', () => {
  it.each(ids)('%s: the cut outlines are mirror images, so that neither fits the other hand', (id) => {
    const [left, right] = [patternOf(id, 'left'), patternOf(id, 'right')].map((p) => p.parts[0]?.outline);
    if (!left || !right) throw new Error('no outline');
    const mirrored = placePath(right, { mirrorX: true, dx: boxOf([left]).minX + boxOf([right]).maxX, dy: 0 });
    expect(signedArea(mirrored)).toBeCloseTo(-signedArea(left), 6);
    const key = (path: typeof left) =>
      path.vertices
        .map((v) => `${v.x.toFixed(5)},${v.y.toFixed(5)}`)
        .sort()
        .join(' ');
    expect(key(mirrored)).toBe(key(left));
  });

  it('the pictures of a block with a relief differ in both formats, and say their side', () => {
    for (const writer of [svgNodeWriter, dxfWriter]) {
      const pictures = (['left', 'right'] as const).map((side) => {
        const text = written(writer, patternOf('ring-lowered-in-three', side));
        return rasterise(writer === svgNodeWriter ? text : redrawDxf(parseDxf(text), SVG_LAYER_COLOURS), 150);
      });
      const [left, right] = pictures;
      if (!left || !right) throw new Error('no picture');
      expect(differingPixels(left, right)).toBeGreaterThan(500);
    }
    for (const side of ['left', 'right'] as const) {
      const words = patternOf('ring-lowered-in-three', side)
        .parts.flatMap((p) => p.labels)
        .map((l) => l.text);
      expect(words).toContain(`${side.toUpperCase()} HAND`);
      expect(words.join(' ')).toMatch(/OUTSIDE/);
    }
  });

  it('on a left hand with lowered digits, followed by hand: skin side down and distal up, the radial border lies right of the starting end', () => {
    // Back of a left hand seen from above, fingers away from the viewer: the thumb is on the right. The seam of a lowered block is dorsal,
    // and the strip leaves it toward the radial border, so its upper face runs to the right.
    const [part] = patternOf('ring-lowered-in-three', 'left').parts;
    const xOf = (role: string, title: string) =>
      part?.marks.find((m) => m.role === role && m.title.includes(title))?.paths[0]?.vertices[0]?.x;
    expect(xOf('border-turn', 'radial')).toBeGreaterThan(xOf('seam', 'starting') ?? Number.NaN);
    expect(xOf('border-turn', 'ulnar')).toBeGreaterThan(xOf('border-turn', 'radial') ?? Number.NaN);
  });
});
