import { deflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { LIMITS, newBudget } from './drawing.ts';
import { inspectFile } from './inspect-file.ts';

const svg = (content: string, head = 'width="100mm" height="100mm" viewBox="0 0 100 100"') =>
  inspectFile(Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" ${head}>${content}</svg>`));
const cut = (d: string, more = '') => `<g id="CUT"><path d="${d}" fill="none" stroke="#000" stroke-width="0.1" ${more}/></g>`;
const codes = (found: { findings: readonly { code: number }[] }) => found.findings.map((finding) => finding.code);

describe('inspectFile of SVG', () => {
  it('reads relative and smooth commands, run-together numbers and flags', () => {
    // The same circle of radius 10 by absolute arcs, and by relative arcs without separators.
    const one = svg(cut('M 60 50 A 10 10 0 0 1 40 50 A 10 10 0 0 1 60 50 Z'));
    const two = svg(cut('m60,50a10,10 0 01-20 0a10 10 0 0120,0z'));
    for (const found of [one, two]) {
      expect(found.findings).toEqual([]);
      expect(found.cutLength).toBeCloseTo(20 * Math.PI, 9);
    }
    const square = svg(cut('M10-10.5.5.5').replace('M10-10.5.5.5', 'M20 20h.5e1v5H20z'));
    expect(square.cutLength).toBeCloseTo(20, 9);
  });

  it('takes the usual cubic for a quarter circle as its arc, other cubics as chords within the stated error', () => {
    const k = 5.522847498;
    const quarter = (x: number, y: number) => `M ${x + 10} ${y} C ${x + 10} ${y + k} ${x + k} ${y + 10} ${x} ${y + 10}`;
    const found = svg(cut(`${quarter(50, 50)} L 50 50 Z`));
    expect([found.arcs, found.flattened]).toEqual([1, 0]);
    expect(found.cutLength).toBeCloseTo(20 + 5 * Math.PI, 2);
    const free = svg(cut('M 10 10 C 30 40 60 -20 90 10 L 90 60 L 10 60 Z'));
    expect(codes(free)).toEqual([309]);
  });

  it('measures an ellipse by its exact perimeter: semi-axes 20 and 10, 96.88448220 (Abramowitz & Stegun 17.3, scaled by ten)', () => {
    const found = svg('<g id="CUT"><ellipse cx="50" cy="50" rx="20" ry="10" fill="none" stroke="#000" stroke-width="0.1"/></g>');
    expect(Math.abs(found.cutLength - 96.8844822)).toBeLessThan(0.05);
  });

  it('follows transforms, nested drawings and use; a circle stays a circle under a turn and is none under a stretch', () => {
    const circle = '<circle id="c" cx="0" cy="0" r="5" fill="none" stroke="#000" stroke-width="0.1"/>';
    const found = svg(`<g id="CUT"><defs>${circle}</defs><use href="#c" transform="translate(50 50) rotate(30) scale(2)"/></g>`);
    expect(found.findings).toEqual([]);
    expect(found.parts[0]?.width).toBeCloseTo(20, 9);
    expect(codes(svg(`<g id="CUT" transform="translate(50 50) scale(2 1)">${circle}</g>`))).toContain(309);
  });

  it.each([
    ['90mm', '60mm', 1],
    ['9cm', '6cm', 1],
    ['3.543307086614in', '2.362204724409in', 1],
    ['255.118110236pt', '170.078740157pt', 1],
  ])('knows units: %s x %s', (width, height, mm) => {
    const found = svg(cut('M 10 10 H 60 V 40 H 10 Z'), `width="${width}" height="${height}" viewBox="0 0 90 60"`);
    expect(found.mmPerUnit).toBeCloseTo(mm, 6);
    expect(found.parts[0]?.width).toBeCloseTo(50, 5);
  });
});

describe('inspectFile of hostile files', () => {
  it('never expands what a DOCTYPE declares', () => {
    const bomb = `<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY a "${'x'.repeat(1000)}"><!ENTITY b "&a;&a;&a;&a;">]><svg xmlns="http://www.w3.org/2000/svg"><text>&b;</text></svg>`;
    expect(codes(inspectFile(Buffer.from(bomb)))).toEqual([101]);
    const outside =
      '<!DOCTYPE svg [<!ENTITY f SYSTEM "file:///etc/passwd">]><svg xmlns="http://www.w3.org/2000/svg"><title>&f;</title></svg>';
    expect(codes(inspectFile(Buffer.from(outside)))).toEqual([101]);
  });

  it('stops at blocks that hold themselves, and at too many of them', () => {
    const insert = '0\nINSERT\n8\n0\n2\nA\n10\n0\n20\n0\n70\n500\n71\n500\n';
    const dxf = `0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n2\nA\n10\n0\n20\n0\n${insert}0\nENDBLK\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n${insert}0\nENDSEC\n0\nEOF\n`;
    expect(codes(inspectFile(Buffer.from(dxf)))).toEqual([102]);
  });

  it('stops at a PDF stream that unpacks to more than it may', () => {
    const packed = deflateSync(Buffer.alloc(70_000_000, 32)).toString('latin1');
    const pdf = `%PDF-1.4\n1 0 obj\n<< /Type /Catalog /Pages 2 0 R >>\nendobj\n2 0 obj\n<< /Kids [3 0 R] >>\nendobj\n3 0 obj\n<< /Type /Page /MediaBox [0 0 10 10] /Contents 4 0 R >>\nendobj\n4 0 obj\n<< /Filter /FlateDecode /Length ${packed.length} >>\nstream\n${packed}\nendstream\nendobj\n`;
    expect(codes(inspectFile(Buffer.from(pdf, 'latin1')))).toEqual([102]);
  });

  it('stops at a file that is too large, and says so', () => {
    const found = inspectFile(new Uint8Array(LIMITS.bytes + 1).fill(60));
    expect(found.findings.map((finding) => [finding.code, finding.message.includes(String(LIMITS.bytes))])).toEqual([[102, true]]);
  });

  it('quotes what it cannot read without the characters that a terminal obeys', () => {
    const dxf = '0\nSECTION\n2\nENTITIES\n33\b0\nA\n0\nENDSEC\n0\nEOF\n';
    const svg = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 \u202e9"><g transform="turn\u200b(3)"/></svg>';
    const said = [dxf, svg].flatMap((text) => inspectFile(Buffer.from(text)).findings.map(({ message }) => message)).join(' ');
    expect(said).toContain('"33\\u{8}0"');
    expect(said).toContain('"0 \\u{202e}9"');
    expect(said).toContain('"turn\\u{200b}(3)"');
  });

  it('never throws, whatever is cut off or turned over in a file', () => {
    const sound =
      '<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm" viewBox="0 0 9 9"><g id="CUT"><path d="M 1 1 L 5 1 A 2 2 0 0 1 5 5 Z"/></g></svg>';
    const dxf = '0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n8\nCUT\n70\n1\n10\n0\n20\n0\n42\n1\n10\n9\n20\n0\n0\nENDSEC\n0\nEOF\n';
    const pdf =
      '%PDF-1.4\n1 0 obj\n<< /Type /Page /MediaBox [0 0 9 9] /Contents 2 0 R >>\nendobj\n2 0 obj\n<< /Length 20 >>\nstream\n0 0 m 9 9 l 3 3 c S\nendstream\nendobj\n';
    for (const text of [sound, dxf, pdf]) {
      for (let k = 0; k < text.length; k++) {
        expect(inspectFile(Buffer.from(text.slice(0, k))).findings.length).toBeGreaterThan(0);
        const turned = `${text.slice(0, k)}${String.fromCharCode((text.charCodeAt(k) + 7) % 128)}${text.slice(k + 1)}`;
        expect(Array.isArray(inspectFile(Buffer.from(turned)).findings)).toBe(true);
      }
    }
  });
});

describe('inspectFile of a file that is made to keep it busy', () => {
  it.each([
    [0, 4.5],
    [1_000_000, 4.5],
    [2_000_000, 5.5],
    [11_500_000, 15],
    [56_500_000, 60],
    [1_000_000_000, 60],
  ])('gives %i bytes %f seconds of the processor', (bytes, seconds) => {
    let used = 123;
    const budget = newBudget(bytes, () => used);
    used += 1000 * seconds;
    expect(() => budget.check()).not.toThrow();
    used += 1;
    expect(() => budget.check()).toThrow(`reading took more than ${seconds.toFixed(1)} seconds of the processor`);
  });

  it.each(['0 0 9 9', '0 0 9 0'])('stops at many lines %s over each other instead of comparing each with each', (line) => {
    const [x1, y1, x2, y2] = line.split(' ');
    const entity = `0\nLINE\n8\nCUT\n10\n${x1}\n20\n${y1}\n11\n${x2}\n21\n${y2}\n`;
    const before = process.cpuUsage();
    const found = inspectFile(Buffer.from(`0\nSECTION\n2\nENTITIES\n${entity.repeat(20_000)}0\nENDSEC\n0\nEOF\n`));
    expect(codes(found)).toEqual([102]);
    // Each with each took minutes; a busy machine does not change processor time so much.
    expect(process.cpuUsage(before).user / 1e6).toBeLessThan(10);
  });
});
