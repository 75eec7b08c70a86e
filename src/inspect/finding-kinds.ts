/** How much a finding matters: `stop`, cut nothing from this file; `look`, see for yourself; `note`, good to know. */
export const SEVERITIES = ['note', 'look', 'stop'] as const;
export type Severity = (typeof SEVERITIES)[number];

/**
 * Every finding by its code, with its severity and why it has that one. Codes stay the same for good: 1xx structure, 2xx units and size,
 * 3xx geometry, 4xx layers and lines, 5xx text and what the file says of itself. docs/inspect.md is this table, held against it by a test.
 */
export const FINDING_KINDS: Readonly<Record<number, { readonly severity: Severity; readonly what: string; readonly why: string }>> = {
  101: { severity: 'stop', what: 'the file cannot be read', why: 'nothing is known of it' },
  102: { severity: 'stop', what: 'reading stopped at a limit', why: 'the rest is not known' },
  103: { severity: 'stop', what: 'nothing is drawn', why: 'there is nothing to cut' },
  104: { severity: 'look', what: 'kinds of elements that are not read', why: 'a machine may read them, or leave out something wanted' },
  105: { severity: 'stop', what: 'a reference to something that is not in the file', why: 'a part may be missing' },
  106: { severity: 'stop', what: 'the file breaks off', why: 'a part may be missing' },
  107: { severity: 'stop', what: 'a shape, transform or size that cannot be read', why: 'it is missing, or elsewhere than meant' },
  108: { severity: 'stop', what: 'a clip or mask takes part of the drawing away', why: 'machines cut what the screen does not show' },
  109: { severity: 'look', what: 'a rule of a style sheet that is not read', why: 'colours and widths may be other than stated here' },
  201: { severity: 'stop', what: 'no unit, or pixels', why: 'programs differ by a factor of up to 25.4' },
  202: { severity: 'stop', what: 'a unit other than mm', why: 'many machines take the number for mm' },
  203: { severity: 'stop', what: 'size and viewBox differ in shape', why: 'the drawing is stretched in some programs' },
  204: { severity: 'stop', what: 'one user unit is not 1 mm', why: 'programs that look only at the viewBox draw another size' },
  205: { severity: 'stop', what: 'no part has a plausible size', why: 'the unit is most likely wrong' },
  206: { severity: 'look', what: '$MEASUREMENT contradicts the unit', why: 'few programs go by it' },
  207: { severity: 'look', what: 'the declared extents leave out some of the drawing', why: 'a machine may place it wrongly' },
  208: { severity: 'stop', what: 'some of the drawing lies outside its page', why: 'it is cut off, or moved' },
  209: { severity: 'stop', what: 'the outermost element has a transform', why: 'programs that leave it out draw another size' },
  210: { severity: 'look', what: 'the PDF does not ask for printing without scaling', why: 'a viewer may fit it to the paper' },
  211: { severity: 'stop', what: 'the drawing does not fit the bed', why: 'the machine runs against its end' },
  301: { severity: 'stop', what: 'a contour is open', why: 'the part does not come free' },
  302: { severity: 'stop', what: 'a contour misses its own start', why: 'the part hangs, or a machine leaves the contour out' },
  303: { severity: 'stop', what: 'edges are drawn twice', why: 'a laser burns them twice' },
  304: { severity: 'stop', what: 'a contour crosses itself', why: 'no machine can tell inside from outside' },
  305: { severity: 'stop', what: 'edges without length', why: 'a machine stands still there' },
  306: { severity: 'stop', what: 'edges too short to follow', why: 'a machine stutters, a laser burns' },
  307: { severity: 'look', what: 'contours of loose pieces', why: 'a machine may cut them in any order' },
  308: { severity: 'look', what: 'an arc drawn as short lines', why: 'it is less round and slower, not wrong' },
  309: { severity: 'note', what: 'splines, ellipses, free curves', why: 'machines break them up, each in its own way' },
  310: { severity: 'look', what: 'two cuts cross', why: 'wanted at a crosswise cut, else a mistake' },
  312: { severity: 'look', what: 'contours smaller than 1 mm', why: 'specks fall into the machine' },
  314: { severity: 'look', what: 'entities that do not lie flat', why: 'their length is read from above' },
  401: { severity: 'note', what: 'no layer says that it is to be cut', why: 'usual where a drawing has no layers' },
  402: { severity: 'note', what: 'layers used and not declared', why: 'readers take the defaults' },
  403: { severity: 'note', what: 'layer names that strict readers refuse', why: 'old machines alone mind them' },
  405: { severity: 'look', what: 'hidden lines', why: 'some machines cut them all the same' },
  406: { severity: 'look', what: 'shapes without a stroke', why: 'a cutter that follows strokes sees nothing' },
  407: { severity: 'look', what: 'wide lines', why: 'some machines take them as areas' },
  408: { severity: 'look', what: 'dashed cuts', why: 'they are cut through, or in pieces' },
  409: { severity: 'look', what: 'something is cut or drawn on a part that is loose by then', why: 'it may have moved' },
  410: { severity: 'look', what: 'cuts of several colours', why: 'colours often say what a machine does with a line' },
  501: { severity: 'look', what: 'texts that are no strokes', why: 'most machines leave them out' },
  502: { severity: 'note', what: 'letters outside ASCII', why: 'readers take them by their own code page' },
  503: { severity: 'note', what: 'a text with a line break or control character', why: 'it may be shown otherwise' },
  504: { severity: 'stop', what: 'more than one kerf is stated', why: 'the size of the parts is not known' },
  505: { severity: 'stop', what: 'the files of a set differ', why: 'they are of different patterns' },
};

/** Unknown codes stop: nothing says that they are harmless. */
export function severityOf(code: number): Severity {
  return FINDING_KINDS[code]?.severity ?? 'stop';
}
