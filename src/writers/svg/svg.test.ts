import { createSVGWindow } from 'svgdom';
import { describe, expect, it } from 'vitest';
import { samplePattern } from '../../../tests/sample-pattern.ts';
import type { Pattern } from '../../pattern/pattern.ts';
import { inputsFromSvg } from '../inputs-text.ts';
import { loadWriter } from '../load-writer.ts';
import { SVG_LAYER_COLOURS, svgWriter } from './svg.ts';
import { svgNodeWriter } from './svg-node.ts';

function svgOf(pattern: Pattern, writer = svgNodeWriter): string {
  const result = writer.write(pattern);
  if (!result.ok || typeof result.value !== 'string') throw new Error(JSON.stringify(result));
  return result.value;
}

const values = (text: string, attribute: string) =>
  [...text.matchAll(new RegExp(` ${attribute}="([^"]*)"`, 'g'))].map((match) => match[1] ?? '');
const onePart: Pattern = {
  ...samplePattern,
  title: 'other',
  parts: samplePattern.parts.slice(1),
  inputs: { ...samplePattern.inputs, date: null },
};

/** WCAG 2.2: relative luminance and contrast ratio, grey from 0 to 255, on white. */
function contrastOnWhite(hex: string): number {
  const grey = Number.parseInt(hex.slice(1, 3), 16) / 255;
  const luminance = grey <= 0.04045 ? grey / 12.92 : ((grey + 0.055) / 1.055) ** 2.4;
  return 1.05 / (luminance + 0.05);
}

describe('svgWriter(window).write(pattern)', () => {
  const svg = svgOf(samplePattern);

  it('has its size in mm and one user unit for one mm', () => {
    expect(svg).toMatch(/^<\?xml version="1\.0" encoding="UTF-8"\?>\n<svg /);
    expect(svg).toContain(' width="120.0000mm" height="67.5000mm" viewBox="0 0 120.0000 67.5000"');
  });

  it('has no transform, class, style, text or filled area', () => {
    expect(svg).not.toMatch(/ (transform|class|style)=|<(text|use|style|defs|image)\b/);
    expect(new Set(values(svg, 'fill'))).toEqual(new Set(['none']));
    expect(new Set(values(svg, 'stroke-width'))).toEqual(new Set(['0.1']));
  });

  it('draws one path for each outline, hole, mark and label, with its role', () => {
    const roles = values(svg, 'data-role');
    expect(roles).toHaveLength(svg.match(/<path /g)?.length ?? 0);
    expect(roles).toEqual([
      ...['midline-palmar', 'tack', 'turn', 'fold', 'label', 'label', 'grain', 'hole', 'hole', 'outline'],
      ...['label', 'outline'],
      ...['reference-frame', 'section-digit', 'label'],
    ]);
  });

  it('nests the layers in a group for each part, ids unique', () => {
    const ids = values(svg, 'id');
    expect(ids).toEqual([
      ...['inputs', 'part-1', 'part-1-MARK', 'part-1-INFO', 'part-1-CUT'],
      ...['part-2', 'part-2-MARK', 'part-2-CUT'],
      ...['beside', 'beside-MARK', 'beside-INFO'],
    ]);
    expect(values(svg, 'data-part')).toEqual(['strip', 'gauge']);
  });

  it('tells the layers apart by stroke, all of them legible on white', () => {
    for (const layer of ['CUT', 'MARK', 'INFO'] as const) {
      const group = svg.split(`id="part-1-${layer}"`)[1]?.split('</g>')[0] ?? '';
      expect(new Set(values(group, 'stroke'))).toEqual(new Set([SVG_LAYER_COLOURS[layer]]));
      expect(contrastOnWhite(SVG_LAYER_COLOURS[layer])).toBeGreaterThan(4.5);
    }
    expect(new Set(Object.values(SVG_LAYER_COLOURS)).size).toBe(3);
  });

  it('writes every coordinate of cuts and marks with four decimals', () => {
    const exact = [...svg.matchAll(/ d="([^"]*)"[^>]*data-role="([^"]*)"/g)].filter(
      ([, data = '', role]) => role !== 'label' && !/[a-z]/.test(data),
    );
    expect(exact.map(([, , role]) => role)).toEqual(expect.arrayContaining(['outline', 'hole']));
    const numbers = exact.flatMap(([, data = '']) => data.split(' ').filter((token) => !/^[MLAZ01]$/.test(token)));
    expect(numbers.length).toBeGreaterThan(100);
    expect(numbers.filter((number) => !/^-?\d+\.\d{4}$/.test(number))).toEqual([]);
  });

  it('carries titles, label texts and the inputs', () => {
    expect(svg).toContain('<title>Sample strip &amp; gauge &lt;left&gt;</title>');
    expect(svg).toContain('<title>ring midline, palmar pass</title>');
    const labels = [...svg.matchAll(/data-role="label"><title>([^<]*)<\/title>/g)].map((match) => match[1]);
    expect(labels).toEqual(['LEFT HAND', 'R 3', '45', 'dorsal']);
    expect(inputsFromSvg(svg)).toMatchObject({ ok: true, value: samplePattern.inputs });
  });

  it('keeps control characters and broken text out of titles', () => {
    const text = svgOf({ ...samplePattern, title: 'a\u0000b\u00a0c\ud800]]>\n"d"' });
    expect(text).toContain('<title>ab c]]&gt; "d"</title>');
  });

  it('keeps what needs escaping out of attributes', () => {
    const [strip] = samplePattern.parts;
    if (!strip) throw new Error('the sample has a part');
    const mark = { layer: 'MARK', role: 'a"><b', title: '', paths: [strip.outline], circles: [] } as const;
    const text = svgOf({ ...samplePattern, parts: [{ ...strip, id: '"x" & <y>', marks: [mark] }] });
    expect(values(text, 'data-part')).toEqual(['-x-y-']);
    expect(values(text, 'data-role')).toContain('a-b');
  });

  it('gives the same bytes whatever was drawn before, on this window or another', () => {
    const other = svgOf(onePart);
    expect(other).not.toBe(svg);
    expect(svgOf(samplePattern)).toBe(svg);
    expect(svgOf(samplePattern, svgWriter(createSVGWindow()))).toBe(svg);
  });

  it('fails with the names of characters that have no strokes', () => {
    const label = { layer: 'INFO', text: '\u4e2d', at: { x: 0, y: 0 }, height: 2, align: 'left', angle: 0 } as const;
    const result = svgNodeWriter.write({ ...samplePattern, beside: { marks: [], labels: [label] } });
    expect(result).toMatchObject({ ok: false, problems: [{ code: 'LABEL_CHARACTERS_UNKNOWN' }] });
  });

  it('is what loadWriter gives for svg', async () => {
    expect(await loadWriter('svg')).toMatchObject({ format: 'svg', extension: 'svg' });
    expect(svgOf(samplePattern, await loadWriter('svg'))).toBe(svg);
  });
});
