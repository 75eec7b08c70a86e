import { createRequire } from 'node:module';
import type PDFKit from 'pdfkit';
import { describe, expect, it } from 'vitest';
import { inspectFile } from '../src/inspect/inspect-file.ts';

// Node's own build of pdfkit, another than the one that the writer uses.
const PDFDocument: typeof PDFKit = createRequire(import.meta.url)('pdfkit');

const POINTS = 72 / 25.4;

/** An A4 page from pdfkit: a bar of 80 x 20 mm with a round hole of radius 3, a text and a line of 0.1 mm; compressed or not. */
function page(compress: boolean): Promise<Buffer> {
  const doc = new PDFDocument({ size: 'A4', compress, info: { Title: 'bar', Keywords: 'kerf 0.2 mm' } });
  const chunks: Buffer[] = [];
  doc.on('data', (chunk: Buffer) => chunks.push(chunk));
  const done = new Promise<Buffer>((resolve) => doc.on('end', () => resolve(Buffer.concat(chunks))));
  doc.lineWidth(0.1 * POINTS);
  doc.rect(20 * POINTS, 30 * POINTS, 80 * POINTS, 20 * POINTS).stroke();
  doc.circle(40 * POINTS, 40 * POINTS, 3 * POINTS).stroke();
  doc.text('left hand', 20 * POINTS, 60 * POINTS);
  doc.end();
  return done;
}

describe('inspect reads pdfkit', () => {
  it.each([true, false])('compressed %s: page, parts and their sizes, arcs out of cubics, kerf from the keywords', async (compress) => {
    const found = inspectFile(await page(compress));
    expect(found.findings.map((finding) => finding.code)).toEqual([210]);
    // ISO 216: A4 is 210 x 297 mm; pdfkit has it as 595.28 x 841.89 pt.
    expect(found.frame?.width).toBeCloseTo(210, 1);
    expect(found.frame?.height).toBeCloseTo(297, 1);
    expect(found.parts.map((part) => part.holes)).toEqual([1]);
    expect(found.parts[0]?.width).toBeCloseTo(80, 2);
    expect(found.parts[0]?.height).toBeCloseTo(20, 2);
    expect([found.arcs, found.flattened]).toEqual([4, 0]);
    expect(found.parts[0]?.cutLength).toBeCloseTo(200 + 6 * Math.PI, 2);
    expect([found.texts > 0, found.kerf]).toEqual([true, 0.2]);
  });
});
