import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import makerjs from 'makerjs';
import { afterAll, describe, expect, it } from 'vitest';
import { inspectFile } from '../src/inspect/inspect-file.ts';
import type { Inspection } from '../src/inspect/inspection.ts';
import { dxfWriter } from '../src/writers/dxf/dxf.ts';
import { svgNodeWriter } from '../src/writers/svg/svg-node.ts';
import { plateLike, sheetOf } from './cutter-patterns.ts';
import { needsReader } from './readers.ts';

/** What `inspect` makes of files that general-purpose programs write: it reads them, measures them, and says what a cutter would trip over. */

const scratch = mkdtempSync(join(tmpdir(), 'inspect-others-'));
afterAll(() => rmSync(scratch, { recursive: true }));

const codes = (found: Inspection) => [...new Set(found.findings.map((finding) => finding.code))];
const at = (name: string) => join(scratch, name);
const read = (name: string) => inspectFile(readFileSync(at(name)));

describe('inspect reads Inkscape', () => {
  it('an SVG saved again keeps its sizes, layers and kerf, and is still sound', (context) => {
    needsReader(context, 'inkscape');
    const pattern = sheetOf([plateLike('A')], 90, 110);
    const ours = svgNodeWriter.write(pattern);
    if (!ours.ok) throw new Error('not written');
    writeFileSync(at('ours.svg'), ours.value);
    execFileSync('inkscape', [at('ours.svg'), '--export-plain-svg', '--export-type=svg', `--export-filename=${at('again.svg')}`], {
      stdio: 'ignore',
    });
    expect(readFileSync(at('again.svg'), 'utf8')).not.toBe(ours.value);
    const [before, after] = [read('ours.svg'), read('again.svg')];
    expect(after.findings).toEqual([]);
    expect(after.parts.map((part) => [part.holes, Math.round(part.width * 100), Math.round(part.height * 100)])).toEqual([
      [4, 9000, 11000],
    ]);
    expect(Math.abs(after.cutLength - before.cutLength)).toBeLessThan(0.01);
    expect(after.kerf).toBe(0);
  });

  it('objects turned into paths: ellipses become free curves, transforms are followed, text with a font is found', (context) => {
    needsReader(context, 'inkscape');
    const shapes =
      '<g id="CUT" transform="translate(10 5) rotate(30)" fill="none" stroke="#000" stroke-width=".1"><rect width="40" height="20" rx="4"/></g>' +
      '<g id="MARK"><text x="5" y="55" font-size="4" font-family="sans-serif">LEFT</text><ellipse cx="60" cy="30" rx="12" ry="7" fill="none" stroke="#444" stroke-width=".1"/></g>';
    writeFileSync(
      at('shapes.svg'),
      `<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="60mm" viewBox="0 0 90 60">${shapes}</svg>`,
    );
    execFileSync('inkscape', [at('shapes.svg'), '--export-type=pdf', `--export-filename=${at('shapes.pdf')}`], { stdio: 'ignore' });
    const svg = read('shapes.svg');
    expect(codes(svg)).toEqual([309, 501]);
    expect(svg.parts).toHaveLength(1);
    // A rounded rectangle: straight sides and one whole circle.
    expect(svg.cutLength).toBeCloseTo(2 * (32 + 12) + 2 * Math.PI * 4, 3);
    const pdf = read('shapes.pdf');
    expect([pdf.format, pdf.texts > 0]).toEqual(['pdf', true]);
    expect(pdf.frame?.width).toBeCloseTo(90, 1);
    expect(codes(pdf)).toEqual([210, 309]);
    const own = pdf.parts.find((part) => Math.abs(part.cutLength - svg.cutLength) < 0.02);
    expect(own).toBeDefined();
  });
});

describe('inspect reads makerjs', () => {
  const model: makerjs.IModel = {
    models: { plate: new makerjs.models.RoundRectangle(80, 20, 4), holes: { paths: { one: new makerjs.paths.Circle([20, 10], 3) } } },
  };

  it('DXF: with its unit; arcs and lines loose, no layer to cut', () => {
    const found = inspectFile(Buffer.from(makerjs.exporter.toDXF(model, { units: makerjs.unitType.Millimeter })));
    expect(found.unit).toBe('mm');
    expect(codes(found)).toEqual([307, 401, 409]);
    expect([found.parts.length, found.parts[0]?.holes]).toEqual([1, 1]);
    expect(found.cutLength).toBeCloseTo(2 * (72 + 12) + 2 * Math.PI * 4 + 2 * Math.PI * 3, 3);
  });

  it('DXF without a unit, and an open contour', () => {
    const open: makerjs.IModel = { paths: { a: new makerjs.paths.Line([0, 0], [40, 0]), b: new makerjs.paths.Line([40, 0], [40, 20]) } };
    expect(codes(inspectFile(Buffer.from(makerjs.exporter.toDXF(open))))).toEqual(expect.arrayContaining([201, 301]));
  });

  it('DXF with a doubled line', () => {
    const twice: makerjs.IModel = {
      models: { one: new makerjs.models.Rectangle(40, 20), two: makerjs.model.move(new makerjs.models.Rectangle(30, 20), [40, 0]) },
    };
    const found = inspectFile(Buffer.from(makerjs.exporter.toDXF(twice, { units: makerjs.unitType.Millimeter })));
    expect(codes(found)).toContain(303);
  });

  it('SVG: its size in mm, arcs kept', () => {
    const found = inspectFile(Buffer.from(makerjs.exporter.toSVG(model, { units: makerjs.unitType.Millimeter })));
    expect(found.format).toBe('svg');
    expect(found.arcs).toBeGreaterThan(4);
    expect(found.parts[0]?.width).toBeCloseTo(80, 2);
    expect(found.parts[0]?.height).toBeCloseTo(20, 2);
  });
});

describe('inspect reads LibreCAD and librsvg PDF', () => {
  it('librsvg: the page and the parts at their size', (context) => {
    needsReader(context, 'rsvg-convert');
    const ours = svgNodeWriter.write(sheetOf([plateLike('A')], 90, 110));
    if (!ours.ok) throw new Error('not written');
    writeFileSync(at('r.svg'), ours.value);
    execFileSync('rsvg-convert', ['--format=pdf', `--output=${at('r.pdf')}`, at('r.svg')]);
    const found = read('r.pdf');
    expect(codes(found)).toEqual([210]);
    expect(found.frame?.width).toBeCloseTo(90, 2);
    expect(found.parts[0]?.width).toBeCloseTo(90, 2);
    expect(found.parts[0]?.height).toBeCloseTo(110, 2);
    expect(found.parts[0]?.holes).toBe(4);
  });

  it('LibreCAD: the parts at their size, on its grid of 0.021 mm', (context) => {
    needsReader(context, 'librecad');
    const ours = dxfWriter.write(sheetOf([plateLike('A')], 90, 110));
    if (!ours.ok) throw new Error('not written');
    writeFileSync(at('l.dxf'), ours.value);
    const env = { ...process.env, QT_QPA_PLATFORM: 'offscreen' };
    execFileSync('timeout', ['60', 'librecad', 'dxf2pdf', '-c', '-t', scratch, at('l.dxf')], { env, stdio: 'ignore' });
    const found = read('l.pdf');
    expect(found.size?.width).toBeCloseTo(90, 1);
    expect(found.size?.height).toBeCloseTo(110, 1);
  });
});
