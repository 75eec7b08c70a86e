import type { Pattern } from '../../src/pattern/pattern.ts';
import { setIdOf } from '../../src/pattern/set-id.ts';
import { dxfWriter } from '../../src/writers/dxf/dxf.ts';
import { inputsFromDxf, inputsFromSvg } from '../../src/writers/inputs-text.ts';
import { svgNodeWriter } from '../../src/writers/svg/svg-node.ts';
import { hold, readable } from './must-hold.ts';

const SVG_ELEMENTS = new Set(['svg', 'title', 'desc', 'metadata', 'g', 'path']);
const SVG_ATTRIBUTES = new Set(
  'xmlns version xmlns:xlink xmlns:svgjs xmlns:inkscape inkscape:groupmode inkscape:label width height viewBox id data-part data-layer d fill stroke stroke-width data-role'.split(
    ' ',
  ),
);
const DXF_ENTITIES = new Set(['LWPOLYLINE', 'CIRCLE', 'LINE']);
const TAG = /<(\/?)([^\s/>]+)((?:\s+[^\s=]+="[^"<]*")*)\s*(\/?)>/y;

/** What a file carries: the inputs, and the id of the set that its writer put with them. */
function givenBack(value: unknown): string {
  const { set, ...inputs } = value as { readonly set?: unknown };
  return JSON.stringify([inputs, set]);
}

/** Writes the pattern in both formats and checks that nothing in its texts became an element, a group or another input. */
export function checkWritten(pattern: Pattern, given: string): void {
  const { set: _, ...own } = pattern.inputs;
  const inputs = JSON.stringify([own, setIdOf(pattern.inputs)]);
  const svg = readable(svgNodeWriter.write(pattern), given);
  const dxf = readable(dxfWriter.write(pattern), given);
  hold((svg === null) === (dxf === null), () => 'one format was written and the other was not');
  if (svg !== null) {
    checkSvg(String(svg));
    const back = inputsFromSvg(String(svg));
    hold(back.ok && givenBack(back.value) === inputs, () => 'the SVG does not give its inputs back');
  }
  if (dxf !== null) {
    checkDxf(String(dxf));
    const back = inputsFromDxf(String(dxf));
    hold(back.ok && givenBack(back.value) === inputs, () => 'the DXF does not give its inputs back');
  }
}

/** A strict little reader of XML: declaration, known elements and attributes, all closed, no entity but the five, nothing else. */
export function checkSvg(svg: string): void {
  const declaration = '<?xml version="1.0" encoding="UTF-8"?>\n';
  hold(svg.startsWith(declaration), () => 'no XML declaration');
  const open: string[] = [];
  let at = declaration.length;
  while (at < svg.length) {
    const next = svg.indexOf('<', at);
    const text = svg.slice(at, next < 0 ? svg.length : next);
    hold(!/&(?!amp;|lt;|gt;|quot;|apos;)/.test(text), () => `an entity in ${JSON.stringify(text.slice(0, 80))}`);
    // XML 1.0, production 2: what a document may hold.
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what it looks for
    hold(!/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Cs}/u.test(text), () => 'a character that XML does not allow');
    if (next < 0) break;
    TAG.lastIndex = next;
    const tag = TAG.exec(svg);
    hold(tag !== null, () => `no tag at ${JSON.stringify(svg.slice(next, next + 80))}`);
    const [whole, closing, name = '', attributes = '', alone] = tag;
    hold(SVG_ELEMENTS.has(name), () => `the element ${name}`);
    for (const [, attribute = ''] of attributes.matchAll(/\s+([^\s=]+)="/g)) {
      hold(SVG_ATTRIBUTES.has(attribute), () => `the attribute ${attribute}`);
    }
    for (const [, numbers = ''] of attributes.matchAll(/\s(?:d|width|height|viewBox)="([^"]*)"/g)) {
      hold(/^[MLAHVZmlahvz\d. -]*$/.test(numbers), () => `numbers ${JSON.stringify(numbers.slice(0, 80))}`);
    }
    if (closing) hold(open.pop() === name, () => `${name} is closed out of turn`);
    else if (!alone) open.push(name);
    at = next + whole.length;
  }
  hold(open.length === 0, () => `not closed: ${open.join(', ')}`);
}

/** Group codes and values in pairs, known entities only, numbers plain, one EOF at the end. */
export function checkDxf(dxf: string): void {
  hold(/^[\n -~]*$/.test(dxf), () => 'a character outside ASCII');
  const lines = dxf.trimEnd().split('\n');
  hold(lines.length % 2 === 0, () => 'an odd number of lines');
  let section = '';
  for (let k = 0; k < lines.length; k += 2) {
    const code = (lines[k] ?? '').trim();
    const value = (lines[k + 1] ?? '').trim();
    hold(/^\d{1,4}$/.test(code), () => `group code ${JSON.stringify(code)}`);
    if (code === '2' && (lines[k - 1] ?? '').trim() === 'SECTION') section = value;
    if (code === '0' && section === 'ENTITIES' && value !== 'ENDSEC') hold(DXF_ENTITIES.has(value), () => `the entity ${value}`);
    if (code === '0' && value === 'ENDSEC') section = '';
    if (Number(code) >= 10 && Number(code) < 60) hold(/^-?\d+(\.\d+)?$/.test(value), () => `group ${code} is ${JSON.stringify(value)}`);
    hold(value.length <= 255, () => `a line of ${value.length} characters`);
  }
  hold(lines.at(-1)?.trim() === 'EOF', () => 'no EOF');
}
