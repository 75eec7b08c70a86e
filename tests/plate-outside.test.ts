import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Flatten from '@flatten-js/core';
import makerjs from 'makerjs';
import { afterAll, describe, expect, it } from 'vitest';
import { arcOf, boxOf, type LineArcPath, pathLength, segmentsOf, signedArea } from '../src/geometry/path.ts';
import type { Pattern } from '../src/pattern/pattern.ts';
import { dxfWriter } from '../src/writers/dxf/dxf.ts';
import { SVG_LAYER_COLOURS } from '../src/writers/svg/svg.ts';
import { svgNodeWriter } from '../src/writers/svg/svg-node.ts';
import { tried } from './by-night.ts';
import { presetPlate } from './demo-plate.ts';
import { parseDxf } from './parse-dxf.ts';
import { differingPixels, inkedPixels, type Picture, rasterise } from './picture.ts';
import { needsReader } from './readers.ts';
import { redrawDxf } from './redraw-dxf.ts';

const IDS = ['mp-immobilisation-dorsal', 'mp-immobilisation-palmar', 'mp-extension-block', 'single-digit-with-neighbours'];
/** Readers take seconds of each: by day one of either face, of four digits and of fewer. */
const READ = tried(IDS, (id) => id === 'mp-immobilisation-palmar' || id === 'single-digit-with-neighbours');
/**
 * Dots per inch at which the pictures are compared, the best of them counts: a level line that happens to lie where the coverage of its
 * pixels takes a step differs over its whole length at one of them, not at all. A file that is moved differs at all.
 */
const DPIS = [300, 283, 331];
/**
 * Of the inked pixels, how many may differ between SVG and DXF. The one draws arcs as curves, the other as chords: along a long arc the
 * coverage of a pixel, of which there are 16 steps, then falls one step apart here and there. A file moved by 0.1 mm differs a hundred times more.
 */
const DIFFERING_SHARE = 0.0015;
/** The same with what is only read, which is written to 0.01 mm, each format from its own corner: at 300 dpi that is up to two steps of coverage. */
const DIFFERING_WITH_LETTERS = 0.01;

/** makerjs joins ends that lie so near to each other (its default pointMatchingDistance), so its lengths are no better. mm */
const MAKER_JOINS = 0.005;

/** The plate, its marks and words, gauge and square; without the pages of text beside it, which take the readers a minute and are any pattern's. */
function withoutText(id: string): Pattern {
  const { pattern } = presetPlate(id);
  return { ...pattern, beside: { ...pattern.beside, labels: [] } };
}

const scratch = mkdtempSync(join(tmpdir(), 'plates-'));
afterAll(() => rmSync(scratch, { recursive: true }));

function outlineOf(id: string): LineArcPath {
  const outline = presetPlate(id).pattern.parts[0]?.outline;
  if (!outline) throw new Error('no outline');
  return outline;
}

function textOf(result: ReturnType<typeof dxfWriter.write>): string {
  if (!result.ok || typeof result.value !== 'string') throw new Error(JSON.stringify(result));
  return result.value;
}

/** The outline as makerjs draws it: its own lines and arcs, degrees, arcs counter-clockwise. */
function makerModel(outline: LineArcPath): makerjs.IModel {
  const degrees = (radians: number) => (radians * 180) / Math.PI;
  const paths = segmentsOf(outline).map((segment) => {
    const arc = arcOf(segment);
    if (!arc) return new makerjs.paths.Line([segment.from.x, segment.from.y], [segment.to.x, segment.to.y]);
    const [start, end] = [arc.startAngle, arc.startAngle + arc.sweep].map(degrees);
    const [from, to] = arc.sweep > 0 ? [start, end] : [end, start];
    return new makerjs.paths.Arc([arc.center.x, arc.center.y], arc.radius, from ?? 0, to ?? 0);
  });
  return { paths: Object.fromEntries(paths.map((path, k) => [`edge${k}`, path])) };
}

describe.each(IDS)('the outline of %s', (id) => {
  const outline = outlineOf(id);

  it('has the area and perimeter that flatten-js finds', () => {
    const edges = segmentsOf(outline).map((segment) => {
      const arc = arcOf(segment);
      if (!arc)
        return new Flatten.Segment(new Flatten.Point(segment.from.x, segment.from.y), new Flatten.Point(segment.to.x, segment.to.y));
      const centre = new Flatten.Point(arc.center.x, arc.center.y);
      return new Flatten.Arc(centre, arc.radius, arc.startAngle, arc.startAngle + arc.sweep, arc.sweep > 0);
    });
    const polygon = new Flatten.Polygon();
    polygon.addFace(edges);
    expect(polygon.isValid()).toBe(true);
    expect(polygon.area()).toBeCloseTo(signedArea(outline), 4);
    expect(edges.reduce((sum, edge) => sum + edge.length, 0)).toBeCloseTo(pathLength(outline), 6);
  });

  it('is one closed chain in makerjs, and grows outward by as much as Steiner says for its tangent rounds', () => {
    const model = makerModel(outline);
    const chain = makerjs.model.findSingleChain(model);
    expect(chain.endless).toBe(true);
    expect(chain.pathLength).toBeCloseTo(pathLength(outline), 6);
    expect(makerjs.measure.modelPathLength(model)).toBeCloseTo(pathLength(outline), 6);
    // A tangent closed curve whose hollows are wider than d, moved outward by d, is longer by 2 pi d (one whole turn).
    const grown = makerjs.model.outline(model, 1, 0, false);
    const grownChain = makerjs.model.findSingleChain(grown);
    expect(grownChain.endless).toBe(true);
    expect(Math.abs(grownChain.pathLength - pathLength(outline) - 2 * Math.PI)).toBeLessThan(MAKER_JOINS);
  });
});

describe('the file of', () => {
  it.for(READ)('%s loads in ezdxf strictly with an empty audit, at true size', (id, context) => {
    needsReader(context, 'ezdxf');
    const pattern = withoutText(id);
    const file = join(scratch, `${id}.dxf`);
    writeFileSync(file, textOf(dxfWriter.write(pattern)));
    const script = fileURLToPath(new URL('./readers/read_dxf.py', import.meta.url));
    const read = JSON.parse(execFileSync('/usr/bin/python3', [script, file], { encoding: 'utf8', maxBuffer: 64e6 }));
    expect([...read.errors, ...read.fixes]).toEqual([]);
    expect([read.units, read.measurement]).toEqual([4, 1]);
    const cuts = read.entities.filter((entity: { layer: string }) => entity.layer === 'CUT');
    expect(cuts).toHaveLength(1);
    expect(cuts[0]).toMatchObject({ type: 'LWPOLYLINE', closed: true });
    const placed = pattern.parts[0]?.outline;
    expect(cuts[0].points).toHaveLength(placed?.vertices.length ?? 0);
    const xs = cuts[0].points.map(([x]: readonly number[]) => x);
    const box = boxOf(placed ? [placed] : []);
    expect(Math.min(...xs)).toBeGreaterThanOrEqual(box.minX - 1e-3);
    expect(Math.max(...xs)).toBeLessThanOrEqual(box.maxX + 1e-3);
  });

  it.each(READ)('%s is the same picture in SVG and in DXF as dxf-parser read it', (id) => {
    const pattern = withoutText(id);
    const dxf = textOf(dxfWriter.write(pattern));
    const whole = textOf(svgNodeWriter.write(pattern));
    const pictures = new Map<string, Picture>();
    const pictureOf = (svg: string, dpi: number) => {
      const key = `${dpi} ${svg}`;
      const picture = pictures.get(key) ?? rasterise(svg, dpi);
      pictures.set(key, picture);
      return picture;
    };
    /** Pixels that differ, as a share of those that are inked in the whole drawing: the least over the resolutions up to one that is enough. */
    const differing = (drawn: Pattern, other: string, enough: number, resolutions: readonly number[] = DPIS) => {
      const svg = textOf(svgNodeWriter.write(drawn));
      const redrawn = redrawDxf(parseDxf(other), SVG_LAYER_COLOURS);
      let least = Number.POSITIVE_INFINITY;
      for (const dpi of resolutions) {
        const share = differingPixels(pictureOf(svg, dpi), rasterise(redrawn, dpi)) / inkedPixels(pictureOf(whole, dpi));
        least = Math.min(least, share);
        if (least <= enough) break;
      }
      return least;
    };
    expect(inkedPixels(pictureOf(whole, DPIS[0] ?? 0))).toBeGreaterThan(20_000);
    const forMachine = {
      ...pattern,
      parts: pattern.parts.map((part) => ({ ...part, labels: [] })),
      beside: { ...pattern.beside, marks: [] },
    };
    expect(differing(forMachine, textOf(dxfWriter.write(forMachine)), DIFFERING_SHARE)).toBeLessThanOrEqual(DIFFERING_SHARE);
    expect(differing(pattern, dxf, DIFFERING_WITH_LETTERS)).toBeLessThanOrEqual(DIFFERING_WITH_LETTERS);
    // And it would show a file that is moved, by day at one resolution.
    const [, high = ''] = /\$EXTMAX\n10\n([\d.]+)/.exec(dxf) ?? [];
    const moved = dxf
      .replace('$EXTMIN\n10\n0.0000', '$EXTMIN\n10\n0.1000')
      .replace(`$EXTMAX\n10\n${high}`, `$EXTMAX\n10\n${(Number(high) + 0.1).toFixed(4)}`);
    expect(moved).not.toBe(dxf);
    const shown = 20 * DIFFERING_WITH_LETTERS;
    const resolutions = tried(DPIS, (dpi) => dpi === DPIS[0]);
    expect(differing(pattern, moved, shown, resolutions)).toBeGreaterThan(shown);
  });
});
