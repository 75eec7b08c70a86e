import { describe, expect, it } from 'vitest';
import { boxOf, pathLength } from '../src/geometry/path.ts';
import { inspectFile } from '../src/inspect/inspect-file.ts';
import type { Pattern } from '../src/pattern/pattern.ts';
import { type CutterProfile, cutterById, cutters } from '../src/sheet/cutter/cutter-profile.ts';
import { forCutter } from '../src/sheet/cutter/for-cutter.ts';
import { DEFAULT_SHEET_SETTINGS } from '../src/sheet/paper/sheet-settings.ts';
import { dxfWriterFor } from '../src/writers/dxf/dxf.ts';
import { DEFAULT_OUTPUT_SETTINGS, DXF_ARCS, DXF_FORMS, type OutputSettings } from '../src/writers/output-settings.ts';
import { pdfWriter } from '../src/writers/pdf/pdf.ts';
import { svgNodeWriterFor } from '../src/writers/svg/svg-node.ts';
import type { PatternWriter } from '../src/writers/writer.ts';
import { tried } from './by-night.ts';
import { demoStrip, laidSheet, plateLike, sheetOf } from './cutter-patterns.ts';
import { presetPlate } from './demo-plate.ts';
import { samplePattern } from './sample-pattern.ts';

const PATTERNS: readonly (readonly [string, Pattern])[] = [
  ['demo strip', demoStrip()],
  ['plate-with-holes', sheetOf([plateLike('A')], 90, 110)],
  ['plate', presetPlate('mp-immobilisation-dorsal').pattern],
  ['laid sheet', laidSheet()],
  ['sample', samplePattern],
];

function written(writer: PatternWriter, pattern: Pattern): Uint8Array {
  const result = writer.write(pattern);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return Buffer.from(result.value);
}

function ready(pattern: Pattern, profile: CutterProfile): Pattern {
  const result = forCutter(pattern, profile, { shareEdges: false });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

const settingsOf = (profile: CutterProfile): OutputSettings => ({
  ...DEFAULT_OUTPUT_SETTINGS,
  layers: profile.layers as OutputSettings['layers'],
  stroke: profile.stroke,
  order: profile.order,
});

/** Both writers, the DXF one in its six forms. */
function writersFor(settings: OutputSettings): readonly (readonly [string, PatternWriter])[] {
  const dxfs = DXF_FORMS.flatMap((form) =>
    DXF_ARCS.map((arcs) => [`dxf ${form} ${arcs}`, dxfWriterFor({ ...settings, dxf: { form, arcs, chordError: 0.01 } })] as const),
  );
  return [['svg', svgNodeWriterFor(settings)], ...dxfs];
}

/** For what changes the drawing and not the form of the file: by day SVG and one form of DXF, by night all. */
const fewWriters = (settings: OutputSettings): readonly PatternWriter[] =>
  tried(writersFor(settings), ([name]) => name === 'svg' || name === `dxf ${DXF_FORMS[0]} ${DXF_ARCS[0]}`).map(([, writer]) => writer);

/** By day each writer and each cutter with one pattern or more, and each pattern with one of them or more; by night all with all. */
function sharedOut<Case>(all: readonly Case[], nth: number): readonly Case[] {
  return tried(all, (each) => all.indexOf(each) % PATTERNS.length === nth % all.length);
}

describe.each(PATTERNS.map(([name, pattern], nth) => [name, nth, pattern] as const))('inspect reads back the %s', (_, nth, pattern) => {
  const contours = pattern.parts.flatMap((part) => [part.outline, ...part.holes]);
  const length = contours.reduce((sum, path) => sum + pathLength(path), 0);

  it.each(sharedOut(writersFor(DEFAULT_OUTPUT_SETTINGS), nth))(
    'as %s: nothing wrong, and the parts, sizes and lengths that were written',
    (name, writer) => {
      const found = inspectFile(written(writer, pattern));
      expect(found.findings).toEqual([]);
      expect([found.unit, found.mmPerUnit, found.kerf]).toEqual(['mm', 1, 0]);
      expect([found.parts.length, found.closedContours, found.openContours]).toEqual([pattern.parts.length, contours.length, 0]);
      expect(found.frame?.width).toBeCloseTo(pattern.extents.maxX, 3);
      expect(found.frame?.height).toBeCloseTo(pattern.extents.maxY, 3);
      // Chords are shorter than their arc by 8 e² / (3 chord) each; 0.2 mm is far above their sum and far below a lost edge.
      expect(Math.abs(found.cutLength - length)).toBeLessThan(name.endsWith('lines') ? 0.2 + 0.0005 * length : 0.01 + 1e-6 * length);
    },
  );

  it.each(
    sharedOut(
      cutters().map((profile) => [profile.id, profile] as const),
      nth,
    ),
  )('for the cutter %s: nothing wrong, and its layers and kerf', (__, profile) => {
    const made = ready(pattern, profile);
    for (const writer of fewWriters(settingsOf(profile))) {
      const found = inspectFile(written(writer, made));
      expect(found.findings).toEqual([]);
      expect(found.kerf).toBe(profile.kerf);
      const names = (['CUT', 'MARK', 'INFO'] as const)
        .filter((layer) => profile.layers[layer].omit !== true)
        .map((layer) => profile.layers[layer].name);
      expect(found.layers.filter((layer) => layer.curves > 0).every((layer) => names.includes(layer.name))).toBe(true);
    }
  });
});

describe('inspect of our PDF', () => {
  it('finds nothing on the pattern, in points at true size, with the outline at its size', () => {
    const pattern = demoStrip();
    const outline = boxOf([pattern.parts[0]?.outline ?? { closed: true, vertices: [] }]);
    const found = inspectFile(written(pdfWriter({ ...DEFAULT_SHEET_SETTINGS, parts: ['pattern'] }), pattern));
    expect(found.findings).toEqual([]);
    expect([found.format, found.unit]).toEqual(['pdf', 'pt']);
    const [width, height] = [outline.maxX - outline.minX, outline.maxY - outline.minY];
    expect(found.parts.filter((p) => Math.abs(p.width - width) < 0.01 && Math.abs(p.height - height) < 0.01)).toHaveLength(1);
  });

  // Pictures are written to a hundredth of a point: at a radius under half a mm that is too coarse for an arc to be told from another curve.
  it('finds at most a note about small round corners in the pictures of the making', () => {
    const found = inspectFile(written(pdfWriter(DEFAULT_SHEET_SETTINGS), demoStrip()));
    for (const { code, severity } of found.findings) expect([code, severity]).toEqual([309, 'note']);
    expect(found.parts.length).toBeGreaterThan(1);
  });
});

describe('inspect of cuts with lead-ins and bridges', () => {
  const knife = cutterById('knife');
  if (!knife) throw new Error('no knife');

  it.each([
    ['lead-ins', 0, { leadIn: 1 }],
    ['bridges', 1, { bridges: 4, bridgeWidth: 0.8 }],
    ['both, with a kerf', 2, { leadIn: 1.5, bridges: 3, bridgeWidth: 1, kerf: 0.25 }],
  ])('%s: nothing wrong, every part whole', (_, nth, more) => {
    // By day each pattern is cut in one of the three ways.
    for (const [, pattern] of tried(PATTERNS, (each) => PATTERNS.indexOf(each) % 3 === nth)) {
      const made = ready(pattern, { ...knife, ...more });
      for (const writer of fewWriters(DEFAULT_OUTPUT_SETTINGS)) {
        const found = inspectFile(written(writer, made));
        expect(found.findings).toEqual([]);
        expect([found.parts.length, found.openContours]).toEqual([pattern.parts.length, 0]);
      }
    }
  });
});
