import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PatternInputs } from '../pattern/pattern.ts';
import { DXF_LINE_LENGTH, dxfComments, inputsFromDxf, inputsFromPdf, inputsFromSvg, inputsToText } from './inputs-text.ts';

const SCHEMA = 'knucklewright/inputs@1';
const inputs = (rest: Record<string, unknown> = {}): PatternInputs => ({ schema: SCHEMA, geometryVersion: '1', date: null, ...rest });

/** What a file carries around the comments, so that the reader has to find them. */
const dxfOf = (comments: readonly string[], lineEnd = '\n') =>
  [...comments.flatMap((comment) => ['999', comment]), '0', 'SECTION', '2', 'HEADER', '0', 'ENDSEC', '0', 'EOF', ''].join(lineEnd);

const anyInputs = fc
  .dictionary(fc.string({ maxLength: 12 }), fc.jsonValue(), { maxKeys: 8 })
  .map((rest) => JSON.parse(JSON.stringify(inputs(rest))));

describe('inputsToText(inputs)', () => {
  it('is ASCII on one line, without characters that XML gives a meaning', () => {
    const text = inputsToText({ geometryVersion: '1', date: null, note: '<a>&b\u0007\n°\u{1d11e}', schema: SCHEMA });
    expect(text).toMatch(/^[\x20-\x7e]*$/);
    expect(text).not.toMatch(/[<>&]/);
    expect(JSON.parse(text).note).toBe('<a>&b\u0007\n°\u{1d11e}');
  });

  it('throws RangeError for a number that JSON would silently write as null', () => {
    expect(() => inputsToText(inputs({ width: Number.NaN }))).toThrow(new RangeError('inputs.width is NaN'));
    expect(() => inputsToText(inputs({ deep: [{ x: Number.POSITIVE_INFINITY }] }))).toThrow(RangeError);
  });
});

describe('dxfComments(title, inputs) and inputsFromDxf(dxf)', () => {
  it('bring any inputs back, in lines that old readers take', () => {
    fc.assert(
      fc.property(anyInputs, fc.constantFrom('\n', '\r\n'), (value, lineEnd) => {
        const comments = dxfComments('title', value);
        for (const comment of comments) expect(comment.length).toBeLessThanOrEqual(DXF_LINE_LENGTH);
        expect(inputsFromDxf(dxfOf(comments, lineEnd))).toMatchObject({ ok: true, value });
      }),
    );
  });

  it('need several lines for long inputs, and survive trimmed lines', () => {
    const value = inputs({ note: 'a b '.repeat(300) });
    const comments = dxfComments('title', value);
    expect(comments.length).toBeGreaterThan(5);
    expect(inputsFromDxf(dxfOf(comments.map((comment) => comment.trim())))).toMatchObject({ ok: true, value });
  });

  it('are not taken in by a title that looks like inputs', () => {
    const value = inputs({ a: 1 });
    expect(inputsFromDxf(dxfOf(dxfComments('knucklewright inputs 1/1 [{}]', value)))).toMatchObject({ ok: true, value });
  });

  it('name the piece that is lost, and a file without any', () => {
    const comments = dxfComments('title', inputs({ note: 'x'.repeat(600) }));
    const without = dxfOf(comments.filter((comment) => !comment.startsWith('knucklewright inputs 2/')));
    expect(inputsFromDxf(without)).toMatchObject({
      ok: false,
      problems: [{ code: 'INPUTS_BROKEN', message: expect.stringContaining('comment 2 of') }],
    });
    expect(inputsFromDxf(dxfOf(['title: x']))).toMatchObject({ ok: false, problems: [{ code: 'INPUTS_MISSING' }] });
  });

  it('do not believe a count that no comments bear out', () => {
    for (const count of ['999999999', '4294967296', '9'.repeat(400)]) {
      expect(inputsFromDxf(dxfOf([`knucklewright inputs 1/${count} [{}]`]))).toMatchObject({ ok: false });
    }
  });
});

describe('inputsFromSvg(svg)', () => {
  const svgOf = (content: string) => `<svg xmlns="http://www.w3.org/2000/svg"><metadata id="inputs">${content}</metadata></svg>`;

  it('brings any inputs back, with quotes escaped or not', () => {
    fc.assert(
      fc.property(anyInputs, fc.boolean(), (value, escapedQuotes) => {
        const text = inputsToText(value);
        expect(inputsFromSvg(svgOf(escapedQuotes ? text.replaceAll('"', '&quot;') : text))).toMatchObject({ ok: true, value });
      }),
    );
  });

  it('passes over the metadata of other programs', () => {
    const other = '<metadata><rdf:RDF>other</rdf:RDF></metadata>';
    expect(inputsFromSvg(`${other}${svgOf(inputsToText(inputs({ a: 1 })))}`)).toMatchObject({ ok: true, value: inputs({ a: 1 }) });
  });

  it('passes over metadata that is empty or never ends, in time that grows with the file and not with its square', () => {
    expect(inputsFromSvg(`<metadata/>${svgOf(inputsToText(inputs({ a: 1 })))}`)).toMatchObject({ ok: true, value: inputs({ a: 1 }) });
    const before = process.cpuUsage();
    expect(inputsFromSvg('<metadata>'.repeat(200_000))).toMatchObject({ ok: false, problems: [{ code: 'INPUTS_MISSING' }] });
    // The square would be minutes; a busy machine does not change processor time so much.
    expect(process.cpuUsage(before).user / 1e6).toBeLessThan(2);
  });

  it('shows no control character of a damaged file', () => {
    const result = inputsFromSvg(svgOf('{"schema":"knucklewright/inputs@1",\u001b'));
    expect(result.ok ? '' : result.problems[0]?.message).toMatch(/^[^\p{Cc}]+$/u);
  });

  it('fails for a file without inputs and for damaged ones', () => {
    expect(inputsFromSvg(svgOf('other'))).toMatchObject({ ok: false, problems: [{ code: 'INPUTS_MISSING' }] });
    expect(inputsFromSvg(svgOf(inputsToText(inputs()).slice(0, -1)))).toMatchObject({ ok: false, problems: [{ code: 'INPUTS_BROKEN' }] });
  });
});

describe('inputsFromPdf(pdf, inflate)', () => {
  const bytesOf = (text: string) => Buffer.from(text, 'latin1');
  const seconds = (work: () => unknown) => {
    const before = process.cpuUsage();
    work();
    return process.cpuUsage(before).user / 1e6;
  };

  it('takes time that grows with the file and not with its square', () => {
    // The squares would be hours; a busy machine does not change processor time so much.
    for (const text of ['stream\n'.repeat(1_000_000), `${'stream\n'.repeat(1_000_000)}endstream`]) {
      expect(seconds(() => inputsFromPdf(bytesOf(text)))).toBeLessThan(4);
    }
    const names = `stream\n{${'"schema":"knucklewright/inputs@'.repeat(30_000)}\nendstream\n`;
    expect(seconds(() => inputsFromPdf(bytesOf(names)))).toBeLessThan(4);
  });

  it('inflates no more than 200 streams, however many there are', () => {
    let inflated = 0;
    const result = inputsFromPdf(bytesOf('stream\nx\nendstream\n'.repeat(5000)), () => {
      inflated++;
      return null;
    });
    expect(result.ok).toBe(false);
    expect(inflated).toBe(200);
  });
});
