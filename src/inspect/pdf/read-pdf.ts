import { type Box, segmentBox, unionBox } from '../../geometry/path.ts';
import { type Affine, compose, IDENTITY, largestScale } from '../affine.ts';
import { hexOfShares } from '../colour.ts';
import {
  type Budget,
  type Finding,
  LIMITS,
  LimitReached,
  type ReadCurve,
  type ReadDrawing,
  type ReadText,
  Unreadable,
} from '../drawing.ts';
import { newPen, type Run } from '../pen.ts';
import { CHARACTERS_A_VALUE_SIGN, type PdfObject, type PdfObjects, pdfObjects } from './pdf-objects.ts';
import { type PdfValue, pdfLexer } from './pdf-values.ts';

/** 72 pt are one inch (ISO 32000 user space). */
const MM_PER_POINT = 25.4 / 72;
const NO_LAYER = '(no layer)';

interface Reading {
  readonly budget: Budget;
  readonly objects: PdfObjects;
  readonly curves: ReadCurve[];
  readonly texts: ReadText[];
  readonly layers: Set<string>;
  readonly unread: Map<string, number>;
  flattened: number;
  /** Paintings that a clip may take something from. */
  clipped: number;
}

interface State {
  readonly matrix: Affine;
  readonly width: number;
  readonly dashed: boolean;
  readonly stroke: string | null;
  readonly fill: string | null;
  /** What is drawn outside is not shown; `shape` for a clip that is no upright rectangle. mm */
  readonly clip: Box | 'shape' | null;
}

const START: Omit<State, 'matrix'> = { width: 1, dashed: false, stroke: '#000000', fill: '#000000', clip: null };
/** Rounding of written coordinates at a clip, mm. */
const CLIP_ROUNDING = 0.05;

type Dict = ReadonlyMap<string, PdfValue>;

/** The lines of a PDF in mm, y up, pages side by side: paths, forms and layers (optional content) of the page contents. */
export function readPdf(bytes: Uint8Array, budget: Budget): ReadDrawing {
  const objects = pdfObjects(bytes, budget);
  const pages = pagesOf(objects, budget);
  if (pages.length === 0) throw new Unreadable('the PDF has no page');
  const reading: Reading = { budget, objects, curves: [], texts: [], layers: new Set(), unread: new Map(), flattened: 0, clipped: 0 };
  const findings: Finding[] = [];
  let right = 0;
  let top = 0;
  for (const page of pages) {
    const box = numbersOf(page.get('MediaBox'), objects);
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = box;
    const unit = numberOf(page.get('UserUnit'), objects) ?? 1;
    if (!(x1 !== x0 && y1 !== y0)) findings.push({ code: 107, message: 'a page has no size (MediaBox)' });
    if (unit !== 1) findings.push({ code: 204, message: `a page has a UserUnit of ${unit}: many readers leave it out` });
    const mm = MM_PER_POINT * unit;
    const matrix: Affine = [mm, 0, 0, mm, right - Math.min(x0, x1) * mm, -Math.min(y0, y1) * mm];
    interpret(contentsOf(page, reading), resourcesOf(page, objects), { matrix, ...START }, 0, NO_LAYER, reading);
    right += Math.abs(x1 - x0) * mm;
    top = Math.max(top, Math.abs(y1 - y0) * mm);
  }
  for (const [kind, count] of reading.unread) findings.push({ code: 104, message: `${count} ${kind} not read: a cutter cannot follow it` });
  if (reading.clipped > 0)
    findings.push({
      code: 108,
      message: `${reading.clipped} paths reach beyond a clip, which hides some of them: a machine cuts it all the same`,
    });
  if (!statesNoScaling(objects))
    findings.push({
      code: 210,
      message: 'the PDF does not ask for printing without scaling (PrintScaling None): viewers may fit it to the paper',
    });
  const version = /%PDF-(\d\.\d)/.exec(Buffer.from(bytes.subarray(0, 1024)).toString('latin1'))?.[1] ?? null;
  return {
    format: 'pdf',
    version,
    unit: 'pt',
    mmPerUnit: MM_PER_POINT,
    frame: { minX: 0, minY: 0, maxX: right, maxY: top },
    layers: [...reading.layers].map((name) => ({ name, declared: name !== NO_LAYER })),
    curves: reading.curves,
    texts: reading.texts,
    notes: [...reading.texts.map((text) => text.text), ...infoTexts(objects)],
    flattened: reading.flattened,
    findings,
  };
}

function dictOf(value: PdfValue | undefined, objects: PdfObjects): Dict | null {
  const found = objects.resolve(value);
  return found?.kind === 'dict' ? found.value : null;
}

function numberOf(value: PdfValue | undefined, objects: PdfObjects): number | null {
  const found = objects.resolve(value);
  return found?.kind === 'number' ? found.value : null;
}

function numbersOf(value: PdfValue | undefined, objects: PdfObjects): readonly number[] {
  const found = objects.resolve(value);
  return found?.kind === 'array' ? found.value.map((one) => numberOf(one, objects) ?? 0) : [];
}

function isType(dict: Dict | null, type: string): boolean {
  const found = dict?.get('Type');
  return found?.kind === 'name' && found.value === type;
}

/** Pages in the order of the page tree, with what they inherit. Without a catalogue, every page object in the file's order. */
function pagesOf(objects: PdfObjects, budget: Budget): readonly Dict[] {
  const dicts = [...objects.all.values()].flatMap(({ value }) => (value.kind === 'dict' ? [value.value] : []));
  const catalogue = dicts.findLast((dict) => isType(dict, 'Catalog'));
  const pages: Dict[] = [];
  const seen = new Set<Dict>();
  const visit = (dict: Dict | null, inherited: Dict, depth: number): void => {
    if (!dict || seen.has(dict)) return;
    if (depth > LIMITS.depth) throw new LimitReached(`the page tree is more than ${LIMITS.depth} deep`);
    budget.item();
    seen.add(dict);
    const own = new Map([...inherited, ...[...dict].filter(([key]) => ['MediaBox', 'Resources', 'Rotate'].includes(key))]);
    const kids = objects.resolve(dict.get('Kids'));
    if (kids?.kind === 'array') for (const kid of kids.value) visit(dictOf(kid, objects), own, depth + 1);
    else pages.push(new Map([...own, ...dict]));
  };
  if (catalogue) visit(dictOf(catalogue.get('Pages'), objects), new Map(), 0);
  return pages.length > 0 ? pages : dicts.filter((dict) => isType(dict, 'Page'));
}

function contentsOf(page: Dict, reading: Reading): string {
  const { objects } = reading;
  const contents = page.get('Contents');
  const found = objects.resolve(contents);
  const parts = found?.kind === 'array' ? found.value : contents ? [contents] : [];
  return parts.map((part) => unpacked(objects.object(part), reading)).join('\n');
}

function unpacked(object: PdfObject | undefined, reading: Reading): string {
  const text = object ? reading.objects.content(object) : '';
  // Counted at each use, before anything is made of it.
  reading.budget.characters(CHARACTERS_A_VALUE_SIGN * (text?.length ?? 0));
  if (text === null) reading.unread.set('packed stream', (reading.unread.get('packed stream') ?? 0) + 1);
  return text ?? '';
}

function resourcesOf(owner: Dict, objects: PdfObjects): Dict {
  return dictOf(owner.get('Resources'), objects) ?? new Map();
}

function statesNoScaling(objects: PdfObjects): boolean {
  return [...objects.all.values()].some(({ value }) => {
    const preferences =
      value.kind === 'dict' && isType(value.value, 'Catalog') ? dictOf(value.value.get('ViewerPreferences'), objects) : null;
    const scaling = preferences?.get('PrintScaling');
    return scaling?.kind === 'name' && scaling.value === 'None';
  });
}

function infoTexts(objects: PdfObjects): readonly string[] {
  return [...objects.all.values()].flatMap(({ value }) => {
    if (value.kind !== 'dict' || !(value.value.has('Producer') || value.value.has('Creator'))) return [];
    return ['Title', 'Subject', 'Keywords'].flatMap((key) => {
      const text = objects.resolve(value.value.get(key));
      return text?.kind === 'string' ? [readable(text.value)] : [];
    });
  });
}

/** UTF-16 with its mark, else one byte a letter. */
function readable(bytes: string): string {
  if (!bytes.startsWith('\u00fe\u00ff')) return bytes;
  return new TextDecoder('utf-16be').decode(Uint8Array.from(bytes.slice(2), (c) => c.charCodeAt(0)));
}

/** What WinAnsiEncoding puts at 0x80 to 0x9f (ISO 32000, Annex D); elsewhere it is Latin-1. Node's decoder of windows-1252 leaves these as they are. */
const WIN_ANSI_80 = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

/** Codes of a shown text as the standard fonts read them; a font of its own codes has no letters here. */
function shown(codes: string): string {
  return codes.replace(/[\u0080-\u009f]/g, (c) => WIN_ANSI_80[c.charCodeAt(0) - 0x80] ?? c);
}

/** Runs the commands of a content stream (ISO 32000, Annex A): state, paths, forms, marked content, colours of the device, clips. */
function interpret(content: string, resources: Dict, start: State, depth: number, outer: string, reading: Reading): void {
  if (depth > LIMITS.reuse) throw new LimitReached(`forms stand more than ${LIMITS.reuse} deep in each other`);
  const { objects, budget } = reading;
  const lexer = pdfLexer(content);
  const saved: State[] = [];
  // The layer that holds within each marked piece: its own, or that of the piece around it.
  const marked: string[] = [];
  let state = start;
  let path = newPen(state.matrix, budget);
  let fresh = true;
  let args: PdfValue[] = [];
  let clipping = false;
  const layer = () => marked.at(-1) ?? outer;
  const n = (k: number) => {
    const value = args[k];
    return value?.kind === 'number' ? value.value : 0;
  };
  const begin = () => {
    if (fresh) path = newPen(state.matrix, budget);
    fresh = false;
    return path.pen;
  };
  const paint = (stroked: boolean, painted: boolean) => {
    if (painted && !fresh) {
      reading.layers.add(layer());
      reading.flattened += path.drawn.flattened;
      if (path.drawn.runs.some((run) => isClipped(run, state.clip))) reading.clipped++;
      const hex = stroked ? state.stroke : state.fill;
      const strokeWidth = stroked ? state.width * largestScale(state.matrix) : 0;
      const curve = (run: Run): ReadCurve => ({
        layer: layer(),
        kind: 'path',
        closed: run.closed,
        segments: run.segments,
        strokeWidth,
        colour: hex === null ? null : { hex, aci: null },
        dashed: state.dashed,
        hidden: false,
        flattened: path.drawn.flattened > 0,
      });
      for (const run of path.drawn.runs) reading.curves.push(curve(run));
    }
    if (clipping && !fresh) state = { ...state, clip: narrowed(state.clip, path.drawn.runs) };
    clipping = false;
    fresh = true;
  };
  const colour = (which: 'stroke' | 'fill') => () => {
    state = { ...state, [which]: hexOfArgs(args) };
  };
  const text = (value: PdfValue | undefined): string => {
    if (value?.kind === 'string') return shown(value.value);
    return value?.kind === 'array' ? shown(value.value.map((one) => (one.kind === 'string' ? one.value : '')).join('')) : '';
  };
  const commands: Readonly<Record<string, () => void>> = {
    q: () => void (saved.length < 10_000 && saved.push(state)),
    Q: () => {
      state = saved.pop() ?? state;
    },
    cm: () => {
      state = { ...state, matrix: compose(state.matrix, [n(0), n(1), n(2), n(3), n(4), n(5)]) };
    },
    w: () => {
      state = { ...state, width: n(0) };
    },
    d: () => {
      const [dashes] = args;
      state = { ...state, dashed: dashes?.kind === 'array' && dashes.value.length > 0 };
    },
    RG: colour('stroke'),
    G: colour('stroke'),
    K: colour('stroke'),
    SC: colour('stroke'),
    SCN: colour('stroke'),
    rg: colour('fill'),
    g: colour('fill'),
    k: colour('fill'),
    sc: colour('fill'),
    scn: colour('fill'),
    W: () => {
      clipping = true;
    },
    'W*': () => {
      clipping = true;
    },
    m: () => begin().move(n(0), n(1)),
    l: () => begin().line(n(0), n(1)),
    c: () => begin().cubic(n(0), n(1), n(2), n(3), n(4), n(5)),
    v: () => {
      const pen = begin();
      pen.cubic(pen.at().x, pen.at().y, n(0), n(1), n(2), n(3));
    },
    y: () => begin().cubic(n(0), n(1), n(2), n(3), n(2), n(3)),
    h: () => begin().close(),
    re: () => {
      const pen = begin();
      pen.move(n(0), n(1));
      pen.line(n(0) + n(2), n(1));
      pen.line(n(0) + n(2), n(1) + n(3));
      pen.line(n(0), n(1) + n(3));
      pen.close();
    },
    S: () => paint(true, true),
    s: () => {
      begin().close();
      paint(true, true);
    },
    f: () => paint(false, true),
    F: () => paint(false, true),
    'f*': () => paint(false, true),
    B: () => paint(true, true),
    'B*': () => paint(true, true),
    b: () => {
      begin().close();
      paint(true, true);
    },
    'b*': () => {
      begin().close();
      paint(true, true);
    },
    n: () => paint(false, false),
    Tj: () => void reading.texts.push({ layer: layer(), text: text(args[0]) }),
    TJ: () => void reading.texts.push({ layer: layer(), text: text(args[0]) }),
    "'": () => void reading.texts.push({ layer: layer(), text: text(args[0]) }),
    '"': () => void reading.texts.push({ layer: layer(), text: text(args[2]) }),
    BDC: () => void marked.push(contentLayer(args, resources, objects) ?? layer()),
    BMC: () => void marked.push(layer()),
    EMC: () => void marked.pop(),
    Do: () => drawForm(args[0], resources, state, depth, layer(), reading),
    ID: () => {
      const end = content.slice(lexer.position()).search(/\sEI(?=\s|$)/);
      lexer.jump(end < 0 ? content.length : lexer.position() + end + 3);
      reading.unread.set('inline image', (reading.unread.get('inline image') ?? 0) + 1);
    },
  };
  for (let value = lexer.next(); value !== null; value = lexer.next()) {
    if (value.kind !== 'word') {
      args.push(value);
      if (args.length > 1000) args = [];
      continue;
    }
    budget.item();
    if (Object.hasOwn(commands, value.value)) commands[value.value]?.();
    args = [];
  }
}

/** Grey, red-green-blue or the four inks as `#rrggbb`, by the simple rules of ISO 32000, 10.3; null for patterns and other spaces. */
function hexOfArgs(args: readonly PdfValue[]): string | null {
  const shares = args.flatMap((value) => (value.kind === 'number' ? [value.value] : []));
  const [a = 0, b = 0, c = 0, black = 0] = shares;
  if (shares.length !== args.length) return null;
  if (shares.length === 1) return hexOfShares(a, a, a);
  if (shares.length === 3) return hexOfShares(a, b, c);
  return shares.length === 4 ? hexOfShares(1 - Math.min(1, a + black), 1 - Math.min(1, b + black), 1 - Math.min(1, c + black)) : null;
}

/** The clip within which both lie: a path of one upright rectangle narrows it, any other path makes it a shape. */
function narrowed(clip: State['clip'], runs: readonly Run[]): State['clip'] {
  const [only, more] = runs;
  const upright = ({ from, to, bulge }: Run['segments'][number]) =>
    bulge === 0 && (Math.abs(from.x - to.x) < 1e-6 || Math.abs(from.y - to.y) < 1e-6);
  if (!only || more || only.segments.length !== 4 || !only.segments.every(upright) || clip === 'shape') return 'shape';
  const box = unionBox(only.segments.map(segmentBox));
  if (clip === null) return box;
  return {
    minX: Math.max(clip.minX, box.minX),
    minY: Math.max(clip.minY, box.minY),
    maxX: Math.min(clip.maxX, box.maxX),
    maxY: Math.min(clip.maxY, box.maxY),
  };
}

function isClipped(run: Run, clip: State['clip']): boolean {
  if (clip === null || run.segments.length === 0) return false;
  if (clip === 'shape') return true;
  const box = unionBox(run.segments.map(segmentBox));
  return Math.max(clip.minX - box.minX, clip.minY - box.minY, box.maxX - clip.maxX, box.maxY - clip.maxY) > CLIP_ROUNDING;
}

/** The name of the optional content that a marked piece belongs to; null when it is marked for another reason. */
function contentLayer([tag, properties]: readonly PdfValue[], resources: Dict, objects: PdfObjects): string | null {
  if (tag?.kind !== 'name' || tag.value !== 'OC' || properties?.kind !== 'name') return null;
  const group = dictOf(dictOf(resources.get('Properties'), objects)?.get(properties.value), objects);
  const name = objects.resolve(group?.get('Name'));
  return name?.kind === 'string' ? readable(name.value) : null;
}

function drawForm(name: PdfValue | undefined, resources: Dict, state: State, depth: number, layer: string, reading: Reading): void {
  const { objects } = reading;
  const entry = name?.kind === 'name' ? dictOf(resources.get('XObject'), objects)?.get(name.value) : undefined;
  const object = objects.object(entry);
  if (object?.value.kind !== 'dict') return;
  const dict = object.value.value;
  const subtype = dict.get('Subtype');
  if (subtype?.kind === 'name' && subtype.value === 'Form') {
    const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = numbersOf(dict.get('Matrix'), objects);
    const inner = { ...state, matrix: compose(state.matrix, compose([a, b, c, d, e, f], IDENTITY)) };
    interpret(unpacked(object, reading), dictOf(dict.get('Resources'), objects) ?? resources, inner, depth + 1, layer, reading);
  } else reading.unread.set('image', (reading.unread.get('image') ?? 0) + 1);
}
