import { type Box, segmentBox, unionBox } from '../../geometry/path.ts';
import { hexOfShares } from '../colour.ts';
import { type Budget, LIMITS, LimitReached, type ReadCurve, type ReadText } from '../drawing.ts';
import { type Affine, compose, IDENTITY, largestScale, newPen, type Run } from '../pen.ts';
import {
  CHARACTERS_A_VALUE_SIGN,
  type Dict,
  dictOf,
  numbersOf,
  type PdfObject,
  type PdfObjects,
  type PdfValue,
  pdfLexer,
  readable,
} from './pdf-objects.ts';

/** What is gathered while the contents of a PDF are read. */
export interface Reading {
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

/** The state of graphics (ISO 32000, 8.4), as far as lines need it. */
export interface GraphicsState {
  readonly matrix: Affine;
  readonly width: number;
  readonly dashed: boolean;
  readonly stroke: string | null;
  readonly fill: string | null;
  /** What is drawn outside is not shown; `shape` for a clip that is no upright rectangle. mm */
  readonly clip: Box | 'shape' | null;
}

/** With which each page begins. */
export const START: Omit<GraphicsState, 'matrix'> = { width: 1, dashed: false, stroke: '#000000', fill: '#000000', clip: null };
/** Rounding of written coordinates at a clip, mm. */
const CLIP_ROUNDING = 0.05;

/** A stream without its filters; empty, and counted as not read, where a filter is not known. */
export function unpacked(object: PdfObject | undefined, reading: Reading): string {
  const text = object ? reading.objects.content(object) : '';
  // Counted at each use, before anything is made of it.
  reading.budget.characters(CHARACTERS_A_VALUE_SIGN * (text?.length ?? 0));
  if (text === null) reading.unread.set('packed stream', (reading.unread.get('packed stream') ?? 0) + 1);
  return text ?? '';
}

/** What WinAnsiEncoding puts at 0x80 to 0x9f (ISO 32000, Annex D); elsewhere it is Latin-1. Node's decoder of windows-1252 leaves these as they are. */
const WIN_ANSI_80 = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

/** Codes of a shown text as the standard fonts read them; a font of its own codes has no letters here. */
function shown(codes: string): string {
  return codes.replace(/[\u0080-\u009f]/g, (c) => WIN_ANSI_80[c.charCodeAt(0) - 0x80] ?? c);
}

/** Runs the commands of a content stream (ISO 32000, Annex A): state, paths, forms, marked content, colours of the device, clips. */
export function interpret(content: string, resources: Dict, start: GraphicsState, depth: number, outer: string, reading: Reading): void {
  if (depth > LIMITS.reuse) throw new LimitReached(`forms stand more than ${LIMITS.reuse} deep in each other`);
  const { objects, budget } = reading;
  const lexer = pdfLexer(content);
  const saved: GraphicsState[] = [];
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
function narrowed(clip: GraphicsState['clip'], runs: readonly Run[]): GraphicsState['clip'] {
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

function isClipped(run: Run, clip: GraphicsState['clip']): boolean {
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

function drawForm(name: PdfValue | undefined, resources: Dict, state: GraphicsState, depth: number, layer: string, reading: Reading): void {
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
