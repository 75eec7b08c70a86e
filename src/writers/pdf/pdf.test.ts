import { describe, expect, it } from 'vitest';
import { samplePattern } from '../../../tests/sample-pattern.ts';
import type { Label, Pattern } from '../../pattern/pattern.ts';
import { DEFAULT_SHEET_SETTINGS } from '../../sheet/paper/sheet-settings.ts';
import { inputsFromPdf } from '../inputs-text.ts';
import { loadWriter } from '../load-writer.ts';
import { pdfWriter, writeSheet } from './pdf.ts';

const writer = pdfWriter(DEFAULT_SHEET_SETTINGS);

function bytesOf(pattern: Pattern): Uint8Array {
  const result = writer.write(pattern);
  if (!result.ok || typeof result.value === 'string') throw new Error(JSON.stringify(result));
  return result.value;
}

const latin1 = (bytes: Uint8Array) => Buffer.from(bytes).toString('latin1');
const label = (text: string): Label => ({ layer: 'MARK', text, at: { x: 10, y: 45 }, height: 2, align: 'left', angle: 0 });
const lettered = (text: string): Pattern => ({
  ...samplePattern,
  parts: samplePattern.parts.map((part) => ({ ...part, labels: [label(text)] })),
});

describe('pdfWriter(settings).write(pattern)', () => {
  const bytes = bytesOf(samplePattern);
  const text = latin1(bytes);

  it('is a PDF 1.7 that asks for no scaling', () => {
    expect(text.startsWith('%PDF-1.7\n')).toBe(true);
    expect(text.trimEnd().endsWith('%%EOF')).toBe(true);
    expect(text).toContain('/PrintScaling /None');
  });

  it('carries the inputs as an attached file, in plain text', () => {
    expect(text).toContain('/EmbeddedFiles');
    expect(inputsFromPdf(bytes)).toMatchObject({ ok: true, value: samplePattern.inputs });
  });

  it('has the date of its inputs, or a fixed one, never the clock', () => {
    expect(text).toContain('/CreationDate');
    expect(text).toContain('D:20260131000000Z');
    const undated = latin1(bytesOf({ ...samplePattern, inputs: { ...samplePattern.inputs, date: null } }));
    expect(undated).toContain('D:20000101000000Z');
    expect(undated).not.toContain(`D:${new Date().getUTCFullYear()}`);
  });

  it('gives the same bytes whatever was written before, in any time zone', () => {
    const zone = process.env.TZ;
    try {
      for (const other of ['Pacific/Kiritimati', 'America/Los_Angeles']) {
        process.env.TZ = other;
        expect(bytesOf(lettered('another'))).not.toEqual(bytes);
        expect(bytesOf(samplePattern)).toEqual(bytes);
      }
    } finally {
      if (zone === undefined) delete process.env.TZ;
      else process.env.TZ = zone;
    }
  });

  it('fails with the names of all characters that its font lacks', () => {
    const two = {
      ...samplePattern,
      parts: samplePattern.parts.map((part, k) => ({ ...part, labels: [label(k === 0 ? 'ring \u4e2d' : '\u2265 45')] })),
    };
    const result = writer.write(two);
    const unknown = { code: 'LABEL_CHARACTERS_UNKNOWN', kind: 'input' };
    expect(result).toMatchObject({ ok: false, problems: [unknown, unknown] });
    // What stands twice is said once.
    expect(writer.write(lettered('\u4e2d'))).toMatchObject({ ok: false, problems: [unknown] });
    expect(JSON.stringify(result)).toContain('(U+4E2D)');
    expect(JSON.stringify(result)).toContain('(U+2265)');
  });

  it('fails for numbers without a value and for a drawing without a size', () => {
    const [part] = samplePattern.parts;
    if (!part) throw new Error('the sample has a part');
    const lost = {
      ...part,
      holes: [
        {
          closed: true,
          vertices: [
            { x: Number.NaN, y: 0, bulge: 1 },
            { x: 1, y: 0, bulge: 1 },
          ],
        },
      ],
    };
    expect(writer.write({ ...samplePattern, parts: [lost] })).toMatchObject({ ok: false, problems: [{ code: 'NUMBER_NOT_WRITABLE' }] });
    const flat = { minX: 0, minY: 0, maxX: 0, maxY: 1 };
    expect(writer.write({ ...samplePattern, extents: flat })).toMatchObject({ ok: false, problems: [{ code: 'EXTENTS_EMPTY' }] });
  });

  it('says what pages it has', () => {
    expect(writer.pages?.(samplePattern)).toEqual({ count: 1, paper: 'A4', orientation: 'portrait', tiled: false });
  });

  it('is what loadWriter gives for pdf', async () => {
    expect(await loadWriter('pdf')).toMatchObject({ format: 'pdf', extension: 'pdf' });
  });
});

describe('writeSheet(sheet, date, attached)', () => {
  it('writes any page of neutral strokes and texts', () => {
    const page = {
      title: 'a chart',
      width: 100,
      height: 50,
      layers: [
        {
          clip: null,
          strokes: [
            {
              pen: 'INFO' as const,
              role: 'axis',
              paths: [
                {
                  closed: false,
                  vertices: [
                    { x: 10, y: 10, bulge: 0 },
                    { x: 90, y: 10, bulge: 0 },
                  ],
                },
              ],
              circles: [{ center: { x: 20, y: 20 }, radius: 1 }],
            },
          ],
          texts: [{ text: 'Visit 1', at: { x: 20, y: 5 }, height: 2, align: 'center' as const, angle: 0, bold: true, asStrokes: false }],
        },
      ],
    };
    const written = writeSheet({ title: 'Case', pages: [page], scale: { x: 1, y: 1 } }, new Date('2026-01-31T00:00:00Z'), null);
    if (!written.ok) throw new Error(JSON.stringify(written.problems));
    const text = latin1(written.value);
    expect(text).toContain('/MediaBox [0 0 283.464567 141.732283]');
    expect(text).not.toContain('/EmbeddedFiles');
  });
});
