import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readOwnDrawing } from '../src/files/file-inputs.ts';
import { makePattern } from '../src/pattern/make-pattern.ts';
import { loadWriter } from '../src/writers/load-writer.ts';
import { PENS } from '../src/writers/pdf/pdf.ts';
import { WRITER_FORMATS } from '../src/writers/writer.ts';
import { DEMO_HAND, stripOf } from './pdf-samples.ts';
import { pageSizes, pageText, tracePaths } from './read-pdf.ts';
import { needsReader } from './readers.ts';
import { asTyped, runCommand } from './run-command.ts';

const scratch = mkdtempSync(join(tmpdir(), 'redraw-'));
afterAll(() => rmSync(scratch, { recursive: true }));

const pattern = stripOf(DEMO_HAND, 'ring-lowered-in-three', '2026-03-31');
const file = (name: string, content: string | Uint8Array): string => {
  const path = join(scratch, name);
  writeFileSync(path, content);
  return path;
};

const files = new Map<string, string | Uint8Array>();

async function written(format: (typeof WRITER_FORMATS)[number]): Promise<string | Uint8Array> {
  const before = files.get(format);
  if (before) return before;
  const result = (await loadWriter(format)).write(pattern);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  files.set(format, result.value);
  return result.value;
}

const codes = async (path: string) => {
  const read = await readOwnDrawing(path);
  return read.ok ? [] : read.problems.map((p) => p.code);
};

describe('readOwnDrawing(path)', () => {
  it.each(WRITER_FORMATS)('makes the same pattern again from %s, whatever the file is called', async (format) => {
    const request = await readOwnDrawing(file(`${format}.bin`, await written(format)));
    if (!request.ok) throw new Error(JSON.stringify(request.problems));
    const made = makePattern(request.value.request);
    expect(made.ok && made.value.pattern).toEqual(pattern);
  });

  it('reads a PDF that another program has compressed', async (context) => {
    needsReader(context, 'qpdf');
    const plain = file('plain.pdf', await written('pdf'));
    const packed = join(scratch, 'packed.pdf');
    execFileSync('qpdf', ['--object-streams=generate', '--compress-streams=y', '--recompress-flate', plain, packed]);
    expect(readFileSync(packed, 'latin1')).not.toContain('"schema":"knucklewright/inputs@');
    const request = await readOwnDrawing(packed);
    expect(request.ok && request.value.request.hand).toEqual(DEMO_HAND);
  });

  it('says what is missing or damaged', async () => {
    const pdf = Buffer.from((await written('pdf')) as Uint8Array).toString('latin1');
    const svg = String(await written('svg'));
    const dxf = String(await written('dxf'));
    expect(await codes(file('a', pdf.slice(0, pdf.indexOf('"options"'))))).toEqual(['INPUTS_BROKEN']);
    expect(await codes(file('b', pdf.replaceAll('knucklewright/inputs@', 'somebody/else@1')))).toEqual(['INPUTS_MISSING']);
    expect(await codes(file('c', svg.replace(/<metadata[\s\S]*<\/metadata>/, '')))).toEqual(['INPUTS_MISSING']);
    expect(await codes(file('d', dxf.replace(/999\nknucklewright inputs 2.*\n/, '')))).toEqual(['INPUTS_BROKEN']);
    expect(await codes(file('e', svg.replace('"hand":{', '"hand":{"name":"x",')))).toEqual(['FIELD_UNKNOWN']);
    expect(await codes(file('f', 'hello'))).toEqual(['FILE_KIND']);
    expect(await codes(file('g', ''))).toEqual(['FILE_KIND']);
    expect(await codes(join(scratch, 'absent'))).toEqual(['FILE_NOT_READ']);
  });
});

describe('redraw', () => {
  it('writes the same bytes as the file it read, and does not overwrite unasked', async () => {
    const source = file('DEMO.pdf', await written('pdf'));
    const out = join(scratch, 'again');
    const flags = { formats: 'pdf,svg', out };
    const first = await runCommand('redraw', source, ...asTyped(flags));
    expect(first.exit).toBe(0);
    expect(first.out).toContain(`drawn again from ${source}`);
    expect(readdirSync(out)).toEqual(['DEMO-01-ring-lowered-in-three_mm.pdf', 'DEMO-01-ring-lowered-in-three_mm.svg']);
    expect(readFileSync(join(out, 'DEMO-01-ring-lowered-in-three_mm.pdf')).equals(readFileSync(source))).toBe(true);
    const second = await runCommand('redraw', source, ...asTyped(flags));
    expect(second.exit).toBe(1);
    expect(second.err).toContain('OUTPUT_EXISTS');
  });

  it('brings back the paper strip that a drawing was made with, from each of its files, byte for byte', async () => {
    const out = join(scratch, 'with-trial');
    const formats = 'svg,pdf';
    expect(await runCommand('draw', 'fixtures/demo-hand.json', '--paper-trial', ...asTyped({ formats, out }))).toMatchObject({ exit: 0 });
    const made = readdirSync(out);
    const [strip] = made.filter((name) => name.endsWith('.svg') && !name.includes('-paper'));
    const [pdf] = made.filter((name) => name.endsWith('.pdf'));
    expect(made).toHaveLength(3);
    expect(pageSizes(join(out, pdf as string)).length).toBeGreaterThan(1);
    for (const source of [strip, pdf] as string[]) {
      const again = join(scratch, `with-trial-from-${source}`);
      expect(await runCommand('redraw', join(out, source), ...asTyped({ formats, out: again }))).toMatchObject({ exit: 0 });
      expect(readdirSync(again)).toEqual(made);
      for (const name of made)
        expect(readFileSync(join(again, name)).equals(readFileSync(join(out, name))), `${name} from ${source}`).toBe(true);
    }
  });
});

describe('print-check', () => {
  const flags = (across: string, along: string, out = '.') => asTyped({ across, along, out });

  it('passes a true print, asks for a file to correct, sends a hopeless print back', async () => {
    expect(await runCommand('print-check', ...flags('100.2', '99,6'))).toMatchObject({ exit: 0, out: expect.stringContaining('pass') });
    expect(await runCommand('print-check', ...flags('97.1', '99.8'))).toMatchObject({
      exit: 3,
      out: expect.stringContaining('Name the file'),
    });
    expect(await runCommand('print-check', ...flags('60', '99.8'))).toMatchObject({ exit: 3, out: expect.stringContaining('reprint') });
    expect(await runCommand('print-check', ...flags('3.9 in', 'wide'))).toMatchObject({ exit: 2, err: expect.stringContaining('--along') });
  });

  it('writes a PDF that this printer prints true, from the PDF itself', async (context) => {
    needsReader(context, 'mupdf-tools');
    const out = join(scratch, 'corrected');
    const result = await runCommand('print-check', file('x.pdf', await written('pdf')), ...flags('97.1', '99.8', out));
    expect(result).toMatchObject({ exit: 0, out: expect.stringContaining('compensate') });
    const corrected = join(out, 'DEMO-01-ring-lowered-in-three-corrected_mm.pdf');
    expect(pageSizes(corrected)[0]?.map((mm) => Math.round(mm))).toEqual([210, 297]);
    const bars = tracePaths(corrected, 1).filter((p) => p.kind === 'stroke' && Math.abs(p.width - PENS.bar.width) < 0.001);
    const lengths = bars.map(({ subpaths: [line] }) =>
      Math.hypot((line?.[1]?.to.x ?? 0) - (line?.[0]?.to.x ?? 0), (line?.[1]?.to.y ?? 0) - (line?.[0]?.to.y ?? 0)),
    );
    expect((lengths[0] ?? 0) * 0.971).toBeCloseTo(100, 2);
    expect((lengths[1] ?? 0) * 0.998).toBeCloseTo(100, 2);
    expect(pageText(corrected, 1)).toContain('CORRECTED for one printer');
  });
});
