import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { FINDING_KINDS } from './finding-kinds.ts';
import { inspectFile } from './inspect-file.ts';
import type { InspectSettings } from './inspection.ts';
import { readRoleRules } from './roles.ts';

const HEAD = 'width="100mm" height="100mm" viewBox="0 0 100 100"';
const document = (content: string, head = HEAD) => `<svg xmlns="http://www.w3.org/2000/svg" ${head}>${content}</svg>`;
const svg = (content: string, settings: InspectSettings = {}, head = HEAD) => inspectFile(Buffer.from(document(content, head)), settings);
const square = (more: string, x = 10) => `<path d="M${x} 10 h20 v20 h-20 z" ${more}/>`;
const codes = (found: { findings: readonly { code: number }[] }) => found.findings.map((finding) => finding.code);
const stops = (found: ReturnType<typeof inspectFile>) =>
  found.findings.filter(({ severity }) => severity === 'stop').map(({ code }) => code);
const rules = (text: string) => {
  const read = readRoleRules(text, '--roles');
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return { roles: read.value };
};
const LINE = 'fill="none" stroke-width="0.1"';

describe('severity', () => {
  it('of a clean drawing without layers is a note, not more', () => {
    const found = svg(square(`${LINE} stroke="black"`));
    expect(found.findings.map(({ code, severity }) => [code, severity])).toEqual([[401, 'note']]);
  });

  it('is said of every code that a reader or judge can find', () => {
    for (const [code, { severity, what, why }] of Object.entries(FINDING_KINDS)) {
      expect(code).toMatch(/^[1-5]\d\d$/);
      expect(['note', 'look', 'stop']).toContain(severity);
      expect(what.length + why.length).toBeGreaterThan(20);
    }
  });
});

describe('roles', () => {
  const two = square(`${LINE} stroke="#f00"`) + square(`${LINE} stroke="rgb(0, 0, 255)"`, 50);

  it('several colours without a word what they are for are to look at', () => {
    expect(codes(svg(two))).toEqual([401, 410]);
    expect(svg(two).cutLength).toBeCloseTo(160, 9);
  });

  it('by colour in any of its forms', () => {
    const found = svg(two, rules('red=cut, #0000FF=mark'));
    expect(codes(found)).toEqual([]);
    expect([found.cutLength, found.markLength]).toEqual([80, 80]);
    expect(found.layers.map(({ role, colours }) => [role, colours])).toEqual([
      ['cut', ['#ff0000']],
      ['mark', ['#0000ff']],
    ]);
  });

  it("win over a layer's name", () => {
    const found = svg(`<g id="CUT">${square(`${LINE} stroke="#f00"`)}</g>`, rules('layer:CUT=info'));
    expect(found.cutLength).toBe(0);
  });

  it('by the colour number of DXF, its own or the layer’s', () => {
    const line = (layer: string, aci: string) => `0\nLINE\n8\n${layer}\n${aci}10\n0\n20\n0\n11\n50\n21\n0\n`;
    const layer = '0\nSECTION\n2\nTABLES\n0\nTABLE\n2\nLAYER\n0\nLAYER\n2\nA\n70\n0\n62\n5\n6\nCONTINUOUS\n0\nENDTAB\n0\nENDSEC\n';
    const dxf = `0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n${layer}0\nSECTION\n2\nENTITIES\n${line('A', '')}${line('0', '62\n1\n')}0\nENDSEC\n0\nEOF\n`;
    const found = inspectFile(Buffer.from(dxf), rules('aci:5=mark,aci:1=info'));
    expect([found.cutLength, found.markLength]).toEqual([0, 50]);
  });

  it.each(['', 'red', '#f00=burn', 'aci:0=cut', 'aci:256=cut', '=cut', '#ggg=cut'])('%s is refused with the form', (text) => {
    const read = readRoleRules(text, '--roles');
    expect(read.ok ? '' : read.problems[0]?.message).toContain('#f00=cut,layer:SCORE=mark,aci:5=mark');
  });

  it('that are all wrong are told one by one, but no more than a person reads', () => {
    const told = (wrong: number) => {
      const read = readRoleRules(`#f00=cut,${Array(wrong).fill('red').join(',')}`, '--roles');
      return read.ok ? [] : read.problems.map(({ message }) => message);
    };
    expect(told(10)).toHaveLength(10);
    expect(told(60_000)).toHaveLength(11);
    expect(told(60_000).at(-1)).toContain('and 59990 more that are no rule');
  });
});

describe('style sheets of an SVG', () => {
  it('are read by type, class and identity, the more specific one winning over the later', () => {
    const sheet =
      '<style>/* ours */ #one { stroke: #00f } .line { stroke: red; stroke-width: .1; fill: none } path { stroke: green; }</style>';
    const found = svg(`${sheet}${square('class="thin line"')}${square('id="one" class="line"', 50)}`);
    expect(found.layers.flatMap(({ colours }) => colours).sort()).toEqual(['#0000ff', '#ff0000']);
    expect(codes(found)).toEqual([401, 410]);
  });

  it('lose against the style attribute and win over presentation attributes', () => {
    const sheet = '<style>.a { stroke: red; fill: none; stroke-width: 0.1px }</style>';
    expect(svg(`${sheet}${square('class="a" stroke="blue"')}`).layers[0]?.colours).toEqual(['#ff0000']);
    expect(svg(`${sheet}${square('class="a" style="stroke: blue"')}`).layers[0]?.colours).toEqual(['#0000ff']);
  });

  it('with rules that are not read are said to have them', () => {
    const found = svg(`<style>g > path { stroke: red } @media print { path { stroke: blue } }</style>${square(`${LINE} stroke="black"`)}`);
    expect(codes(found)).toEqual([109, 401]);
  });

  it('that hide something hide it', () => {
    expect(codes(svg(`<style>.no { display: none }</style>${square(`${LINE} stroke="black" class="no"`)}`))).toContain(405);
  });
});

describe('viewports', () => {
  const inner = `<path d="M0 0 h10 v10 h-10 z" ${LINE} stroke="black"/>`;

  it('a symbol is as large as its use says (SVG 1.1, 5.6: a viewBox of 10 shown 40 wide is four times as large)', () => {
    const found = svg(`<symbol id="s" viewBox="0 0 10 10">${inner}</symbol><use href="#s" x="20" y="30" width="40" height="40"/>`);
    expect(found.parts[0]).toMatchObject({ width: 40, height: 40 });
    expect(stops(found)).toEqual([]);
  });

  it('preserveAspectRatio decides what a viewBox of another shape becomes', () => {
    const nested = (ratio: string) => svg(`<svg x="0" y="0" width="40" height="20" viewBox="0 0 10 10" ${ratio}>${inner}</svg>`);
    expect(nested('').parts[0]).toMatchObject({ width: 20, height: 20 });
    expect(nested('preserveAspectRatio="none"').parts[0]).toMatchObject({ width: 40, height: 20 });
    expect(nested('preserveAspectRatio="xMinYMin slice"').parts[0]).toMatchObject({ width: 40, height: 40 });
    // What slice cuts off on the screen, a machine cuts in the plastic.
    expect(stops(nested('preserveAspectRatio="xMinYMin slice"'))).toEqual([108]);
    expect(stops(nested('preserveAspectRatio="xMinYMin slice" overflow="visible"'))).toEqual([]);
  });

  it('of the outermost element do the same', () => {
    const head = (ratio: string) => `width="100mm" height="50mm" viewBox="0 0 50 50" ${ratio}`;
    expect(svg(inner, {}, head('')).parts[0]?.width).toBeCloseTo(10, 9);
    expect(svg(inner, {}, head('preserveAspectRatio="none"')).parts[0]?.width).toBeCloseTo(20, 9);
  });
});

describe('clips and masks', () => {
  const clip = (rectangle: string) =>
    `<clipPath id="c">${rectangle}</clipPath><g clip-path="url(#c)">${square(`${LINE} stroke="black"`)}</g>`;

  it('that take nothing away are nothing', () => {
    expect(stops(svg(clip('<rect x="0" y="0" width="100" height="100"/>')))).toEqual([]);
  });

  it.each([
    ['a smaller rectangle', clip('<rect x="0" y="0" width="20" height="100"/>')],
    ['a circle', clip('<circle cx="20" cy="20" r="5"/>')],
    ['a clip that is not in the file', `<g clip-path="url(#x)">${square(`${LINE} stroke="black"`)}</g>`],
    ['a mask', `<mask id="m"/><g mask="url(#m)">${square(`${LINE} stroke="black"`)}</g>`],
    ['a clip of a style sheet', `<style>g { clip-path: url(#x) }</style><g>${square(`${LINE} stroke="black"`)}</g>`],
  ])('%s stops', (_name, content) => {
    expect(stops(svg(content))).toContain(108);
  });

  const pdf = (content: string) =>
    inspectFile(
      Buffer.from(
        `%PDF-1.4\n1 0 obj\n<</Type/Catalog/Pages 2 0 R/ViewerPreferences<</PrintScaling/None>>>>\nendobj\n2 0 obj\n<</Type/Pages/Kids[3 0 R]/Count 1>>\nendobj\n3 0 obj\n<</Type/Page/Parent 2 0 R/MediaBox[0 0 300 300]/Contents 4 0 R>>\nendobj\n4 0 obj\n<</Length ${content.length}>>\nstream\n${content}\nendstream\nendobj\n`,
        'latin1',
      ),
    );
  it('of a PDF, and its colours', () => {
    const path = '1 0 0 RG 100 100 m 200 100 l 200 200 l 100 200 l h S';
    expect(stops(pdf(`0 0 300 300 re W n ${path}`))).toEqual([]);
    expect(stops(pdf(`0 0 150 300 re W n ${path}`))).toEqual([108]);
    expect(stops(pdf(`q 0 0 150 300 re W n Q ${path}`))).toEqual([]);
    expect(pdf(path).layers[0]?.colours).toEqual(['#ff0000']);
    expect(pdf(path.replace('1 0 0 RG', '0 1 1 0 K')).layers[0]?.colours).toEqual(['#ff0000']);
  });
});

describe('encodings', () => {
  const text = document(`<g id="CUT">${square(`${LINE} stroke="black"`)}</g>`);

  it.each([
    ['UTF-16, little end first', Buffer.from(`\ufeff${text}`, 'utf16le')],
    ['UTF-16, big end first', Buffer.from(`\ufeff${text}`, 'utf16le').swap16()],
    ['UTF-16 without its mark', Buffer.from(text, 'utf16le')],
    ['packed', gzipSync(text)],
  ])('%s', (_name, bytes) => {
    const found = inspectFile(bytes);
    expect(found.findings).toEqual([]);
    expect(found.cutLength).toBeCloseTo(80, 9);
  });

  it('a damaged packed file cannot be read', () => {
    expect(codes(inspectFile(gzipSync(text).subarray(0, 40)))).toEqual([101]);
  });
});

describe('binary DXF', () => {
  const SENTINEL = Buffer.from('AutoCAD Binary DXF\r\n\u001a\u0000', 'latin1');
  const tags: readonly (readonly [number, string | number])[] = [
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$INSUNITS'],
    [70, 4],
    [0, 'ENDSEC'],
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    [0, 'CIRCLE'],
    [8, 'CUT'],
    [10, 50],
    [20, 40],
    [40, 10],
    [0, 'ENDSEC'],
    [0, 'EOF'],
  ];
  const binary = (codeBytes: 1 | 2) =>
    Buffer.concat([
      SENTINEL,
      ...tags.flatMap(([code, value]) => {
        const head = Buffer.alloc(codeBytes);
        if (codeBytes === 1) head.writeUInt8(code);
        else head.writeInt16LE(code);
        if (typeof value === 'string') return [head, Buffer.from(`${value}\0`)];
        const number = Buffer.alloc(code === 70 ? 2 : 8);
        if (code === 70) number.writeInt16LE(value);
        else number.writeDoubleLE(value);
        return [head, number];
      }),
    ]);

  it.each([1, 2] as const)('group codes of %s bytes', (codeBytes) => {
    const found = inspectFile(binary(codeBytes));
    expect(found.unit).toBe('mm');
    expect(found.cutLength).toBeCloseTo(20 * Math.PI, 9);
  });

  it('that breaks off anywhere is told, never thrown', () => {
    const whole = binary(2);
    for (let k = SENTINEL.length; k < whole.length; k++) expect(stops(inspectFile(whole.subarray(0, k))).length).toBeGreaterThan(0);
  });
});

describe('the bed', () => {
  const bed = { width: 60, height: 30 };
  const upright = `<g id="CUT"><path d="M0 0 h30 v60 h-30 z" ${LINE} stroke="black"/></g>`;
  const lying = `<g id="CUT"><path d="M0 70 h60 v30 h-60 z" ${LINE} stroke="black"/></g>`;

  it('holds what lies on it, and stops what does not', () => {
    expect(codes(svg(lying, { bed }))).toEqual([]);
    expect(svg(lying.replace('M0 70', 'M0 60'), { bed }).findings[0]?.message).toContain('moved to 0,0 it would fit');
    expect(svg(upright, { bed }).findings[0]?.message).toContain('turned by 90 degrees it fits');
    expect(stops(svg(upright, { bed: { width: 25, height: 25 } }))).toEqual([211]);
  });

  it('has room beside it for what is no work', () => {
    expect(codes(svg(`${lying}<g id="INFO"><path d="M70 10 h20" ${LINE} stroke="black"/></g>`, { bed }))).toEqual([]);
  });
});
