/**
 * Forty files with one planted fault each, made from two sound ones of this file's own (a bar with a round hole and a fold line, once as
 * SVG and once as DXF), never from the project's writers. Each names the code that `inspect` must find.
 */

export interface BrokenFile {
  readonly name: string;
  readonly code: number;
  readonly content: string | Uint8Array;
}

/** What else a planted fault brings with it: inches make the bar 2 m long, a stretch makes ellipses of arcs, metres make it tiny. */
export const CONSEQUENCES: Readonly<Record<string, readonly number[]>> = {
  'dxf: in inches': [205],
  'svg: stretched along one axis': [309],
  'dxf: drawn in metres': [306, 312],
  'dxf: two cuts that cross': [301, 409],
};

const CUT = 'fill="none" stroke="#000" stroke-width="0.1"';
const HOLE = `<path d="M 23 15 A 3 3 0 0 1 20 18 A 3 3 0 0 1 17 15 A 3 3 0 0 1 20 12 A 3 3 0 0 1 23 15 Z" ${CUT}/>`;
const OUTLINE = `<path d="M 10 5 L 80 5 A 5 5 0 0 1 85 10 L 85 20 A 5 5 0 0 1 80 25 L 10 25 A 5 5 0 0 1 5 20 L 5 10 A 5 5 0 0 1 10 5 Z" ${CUT}/>`;
const MARK = `<path d="M 50 8 L 50 22" fill="none" stroke="#444" stroke-width="0.1"/>`;

export const SOUND_SVG = `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="90mm" height="30mm" viewBox="0 0 90 30">
<title>bar</title>
<g id="MARK">${MARK}</g>
<g id="CUT">
${HOLE}
${OUTLINE}
</g>
</svg>
`;

const tag = (...pairs: readonly (readonly [number, string | number])[]) => pairs.map(([code, value]) => `${code}\n${value}\n`).join('');

const layer = (name: string, colour = 7, lineType = 'CONTINUOUS', flags = 0) =>
  tag([0, 'LAYER'], [2, name], [70, flags], [62, colour], [6, lineType]);

const line = (x1: number, y1: number, x2: number, y2: number, on = 'CUT', more = '') =>
  tag([0, 'LINE'], [8, on]) + more + tag([10, x1], [20, y1], [11, x2], [21, y2]);

const polyline = (points: readonly (readonly [number, number, number?])[], closed = true, on = 'CUT') =>
  tag([0, 'LWPOLYLINE'], [8, on], [90, points.length], [70, closed ? 1 : 0]) +
  points.map(([x, y, bulge]) => tag([10, x], [20, y], ...(bulge === undefined ? [] : [[42, bulge] as const]))).join('');

const DXF_MARK = line(50, 8, 50, 22, 'MARK');
const DXF_HOLE = tag([0, 'CIRCLE'], [8, 'CUT'], [10, 20], [20, 15], [40, 3]);
const DXF_OUTLINE = polyline([
  [5, 5],
  [85, 5],
  [85, 20, 0.4142135623730951],
  [80, 25],
  [5, 25],
]);

const HEADER = tag([9, '$ACADVER'], [1, 'AC1009'], [9, '$INSUNITS'], [70, 4], [9, '$MEASUREMENT'], [70, 1]);
const EXTENTS = tag([9, '$EXTMIN'], [10, 0], [20, 0], [9, '$EXTMAX'], [10, 90], [20, 30]);
const LAYERS = layer('0') + layer('CUT') + layer('MARK', 8);

function dxf(entities: string, header = HEADER + EXTENTS, layers = LAYERS, end = tag([0, 'EOF'])): string {
  const tables = tag([0, 'TABLE'], [2, 'LAYER'], [70, 3]) + layers + tag([0, 'ENDTAB']);
  const sections = [
    ['HEADER', header],
    ['TABLES', tables],
    ['ENTITIES', entities],
  ] as const;
  return sections.map(([name, content]) => tag([0, 'SECTION'], [2, name]) + content + tag([0, 'ENDSEC'])).join('') + end;
}

export const SOUND_DXF = dxf(DXF_MARK + DXF_HOLE + DXF_OUTLINE);

const svgBroken = (name: string, code: number, from: string, to: string): BrokenFile => {
  const content = SOUND_SVG.replace(from, to);
  if (content === SOUND_SVG) throw new Error(`${name}: nothing was planted`);
  return { name: `svg: ${name}`, code, content };
};
const svgCut = (name: string, code: number, added: string): BrokenFile => svgBroken(name, code, HOLE, `${HOLE}\n${added}`);
const dxfBroken = (name: string, code: number, content: string): BrokenFile => ({ name: `dxf: ${name}`, code, content });

const shortLines = Array.from({ length: 24 }, (_, k) => {
  const angle = (k * Math.PI) / 12;
  return [70 + 4 * Math.cos(angle), 15 + 4 * Math.sin(angle)] as const;
});

export const BROKEN_FILES: readonly BrokenFile[] = [
  // 1xx: structure
  svgBroken('a tag is not closed', 101, '</g>\n</svg>', '</svg>'),
  svgBroken('an entity that blows itself up', 101, '<title>bar', '<title>&boom;'),
  { name: 'neither format', code: 101, content: 'a letter, not a drawing' },
  { name: 'pdf: encrypted', code: 101, content: '%PDF-1.4\n1 0 obj\n<< /Type /Catalog >>\nendobj\ntrailer << /Encrypt 5 0 R >>\n' },
  {
    name: 'svg: groups a hundred deep',
    code: 102,
    content: SOUND_SVG.replace('<g id="CUT">', `${'<g>'.repeat(100)}<g id="CUT">`).replace('</svg>', `${'</g>'.repeat(100)}</svg>`),
  },
  { name: 'svg: symbols that multiply', code: 102, content: multiplying() },
  svgBroken('nothing is drawn', 103, SOUND_SVG.slice(SOUND_SVG.indexOf('<g id="MARK">'), SOUND_SVG.lastIndexOf('</svg>')), ''),
  svgCut('an image', 104, '<image href="photo.png" width="10" height="10"/>'),
  dxfBroken('a hatch', 104, dxf(DXF_MARK + DXF_HOLE + DXF_OUTLINE + tag([0, 'HATCH'], [8, 'CUT'], [10, 0], [20, 0]))),
  svgCut('a use of nothing', 105, '<use href="#lost"/>'),
  dxfBroken('an insert of a lost block', 105, dxf(DXF_MARK + DXF_OUTLINE + tag([0, 'INSERT'], [8, 'CUT'], [2, 'LOST'], [10, 0], [20, 0]))),
  dxfBroken('cut off before its end', 106, dxf(DXF_MARK + DXF_HOLE + DXF_OUTLINE, HEADER + EXTENTS, LAYERS, '')),
  svgBroken('a path with a number missing', 107, 'L 80 5', 'L 80'),
  dxfBroken('a circle of radius NaN', 107, dxf(DXF_MARK + DXF_OUTLINE + tag([0, 'CIRCLE'], [8, 'CUT'], [10, 20], [20, 15], [40, 'NaN']))),
  // 2xx: units and size
  svgBroken('no size', 201, ' width="90mm" height="30mm"', ''),
  dxfBroken('no unit', 201, dxf(DXF_MARK + DXF_HOLE + DXF_OUTLINE, EXTENTS)),
  dxfBroken(
    'in inches',
    202,
    dxf(DXF_MARK + DXF_HOLE + DXF_OUTLINE, HEADER.replace('70\n4', '70\n1').replace('$MEASUREMENT\n70\n1', '$MEASUREMENT\n70\n0')),
  ),
  svgBroken('stretched along one axis', 203, 'height="30mm"', 'height="31mm" preserveAspectRatio="none"'),
  svgBroken('a viewBox in pixels', 204, SOUND_SVG, SOUND_SVG.replace('viewBox="0 0 90 30"', 'viewBox="0 0 340.157 113.386"')),
  dxfBroken(
    'drawn in metres',
    205,
    dxf(
      polyline([
        [0, 0],
        [0.08, 0],
        [0.08, 0.02],
        [0, 0.02],
      ]),
      HEADER,
    ),
  ),
  dxfBroken(
    'mm that call themselves imperial',
    206,
    dxf(DXF_MARK + DXF_HOLE + DXF_OUTLINE, HEADER.replace('$MEASUREMENT\n70\n1', '$MEASUREMENT\n70\n0')),
  ),
  dxfBroken('extents that leave something out', 207, dxf(DXF_MARK + DXF_HOLE + DXF_OUTLINE, HEADER + EXTENTS.replace('10\n90', '10\n60'))),
  svgBroken(
    'drawn over the edge of the page',
    208,
    'width="90mm" height="30mm" viewBox="0 0 90 30"',
    'width="80mm" height="30mm" viewBox="0 0 80 30"',
  ),
  svgBroken('a transform on the outermost element', 209, 'viewBox=', 'transform="scale(2)" viewBox='),
  // 3xx: geometry
  dxfBroken(
    'an open contour',
    301,
    dxf(
      DXF_MARK +
        polyline(
          [
            [5, 5],
            [85, 5],
            [85, 25],
            [5, 25],
          ],
          false,
        ),
    ),
  ),
  svgBroken('a contour that misses its start by 0.2 mm', 302, 'A 5 5 0 0 1 10 5 Z', 'A 5 5 0 0 1 9.8 5'),
  dxfBroken('a doubled line', 303, dxf(DXF_MARK + DXF_HOLE + DXF_OUTLINE + line(10, 5, 60, 5))),
  svgCut('a doubled circle', 303, '<circle cx="20" cy="15" r="3" fill="none" stroke="#000" stroke-width="0.1"/>'),
  dxfBroken(
    'a contour that crosses itself',
    304,
    dxf(
      polyline([
        [5, 5],
        [85, 25],
        [85, 5],
        [5, 25],
      ]),
    ),
  ),
  dxfBroken(
    'an edge without length',
    305,
    dxf(
      DXF_MARK +
        polyline([
          [5, 5],
          [85, 5],
          [85, 5],
          [85, 25],
          [5, 25],
        ]),
    ),
  ),
  dxfBroken(
    'an edge of 0.02 mm',
    306,
    dxf(
      DXF_MARK +
        polyline([
          [5, 5],
          [85, 5],
          [85.01, 5.02],
          [85, 25],
          [5, 25],
        ]),
    ),
  ),
  dxfBroken(
    'a contour of loose lines',
    307,
    dxf(DXF_MARK + line(5, 5, 85, 5) + line(85, 25, 85, 5) + line(5, 25, 85, 25) + line(5, 5, 5, 25)),
  ),
  dxfBroken('an arc of short lines', 308, dxf(DXF_MARK + polyline(shortLines) + DXF_OUTLINE)),
  svgCut('an ellipse', 309, `<ellipse cx="70" cy="15" rx="6" ry="3" ${CUT}/>`),
  dxfBroken('two cuts that cross', 310, dxf(DXF_MARK + DXF_OUTLINE + line(0.5, 10, 89, 12))),
  // 4xx: layers and lines
  dxfBroken('all on layer 0', 401, dxf(DXF_OUTLINE.replaceAll('8\nCUT', '8\n0'))),
  dxfBroken('a layer that is not declared', 402, dxf(DXF_MARK.replace('8\nMARK', '8\nSCORING') + DXF_OUTLINE)),
  svgCut('a hidden cut', 405, `<rect x="60" y="10" width="8" height="8" ${CUT} visibility="hidden"/>`),
  svgBroken('an outline cut before its hole', 409, `${HOLE}\n${OUTLINE}`, `${OUTLINE}\n${HOLE}`),
  // 5xx: text
  svgCut('a text with a font', 501, '<text x="30" y="15" font-size="4">LEFT</text>'),
];

/** Eight symbols, each of which draws the next ten times: 10^8 circles, from one page of text. */
function multiplying(): string {
  const uses = (next: number) => `<use href="#s${next}"/>`.repeat(10);
  const symbols = Array.from({ length: 8 }, (_, k) => `<symbol id="s${k}">${k === 7 ? HOLE : uses(k + 1)}</symbol>`);
  return SOUND_SVG.replace(HOLE, `<defs>${symbols.join('')}</defs>${uses(0)}`);
}
