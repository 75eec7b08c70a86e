import { polyline } from '../../geometry/path.ts';
import type { Label, Mark, Pattern } from '../../pattern/pattern.ts';
import { digestOf } from '../../pattern/set-id.ts';
import { GEOMETRY_VERSION } from '../../pattern/strip/geometry-version.ts';
import { wrapText } from '../../pattern/text-lines.ts';
import { type Language, spokenIn } from '../../words/language.ts';
import { type PlasticWords, plasticWords } from '../../words/plastic/plastic-words.ts';
import { type Speech, speechIn } from '../../words/speech.ts';
import { blockName } from './piece-part.ts';
import type { Assigned, StockSize } from './size-plan.ts';

/** A4 upright (ISO 216), mm. */
const PAGE = { width: 210, height: 297 };
const MARGIN = 15;
const INNER = PAGE.width - 2 * MARGIN;
const TEXT = 2.2;
const SMALL = 1.8;
const PITCH = 4.2;
const HEADING = 3.5;
/** Where each column of the list begins, mm from the left margin. */
const COLUMNS = { id: 0, size: 24, quantity: 52, serves: 74, codes: 112 } as const;
/** Bag labels stand in columns and rows to be cut apart, mm. */
const LABEL = { width: 60, height: 36, columns: 3, rows: 7 } as const;
const LABEL_EDGE = 3;

/** Sizes with what is cut of each, and who takes which. */
export interface SizeList {
  readonly sizes: readonly StockSize[];
  /** Blanks to cut of each size. */
  readonly pieces: readonly number[];
  /** Only strips with a code are named. */
  readonly assigned: readonly Assigned[];
  readonly invented: boolean;
}

/** The sizes to print: what to cut and for whom, then a label for each bag, as pages of A4 drawn on INFO alone. */
export function sizePages(list: SizeList, language: Language = 'en'): readonly Pattern[] {
  const words = wordsIn(language);
  const pages = [...tablePages(list, words), ...labelPages(list, words)];
  const members = digestOf(list);
  return pages.map((drawn, k) =>
    pageOf(drawn, `${words.w.sizes.title(`${k + 1}`, `${pages.length}`)}${mark(list, words)}`, members, language),
  );
}

interface Drawn {
  readonly marks: readonly Mark[];
  readonly labels: readonly Label[];
}

/** What the pages are worded with. */
interface Words {
  readonly w: PlasticWords;
  readonly speech: Speech;
  readonly mm: (value: number) => string;
  readonly sizeText: (length: number, width: number) => string;
  readonly nameOf: (one: Assigned) => string;
}

function wordsIn(language: Language): Words {
  const [w, speech] = [plasticWords(language), speechIn(language)];
  const mm = (value: number) => speech.number(value, 1);
  return {
    w,
    speech,
    mm,
    sizeText: (length, width) => `${mm(length)} x ${mm(width)}`,
    nameOf: ({ strip: { code, side } }) => [code ?? '', side ? w.side[side] : ''].filter((text) => text !== '').join(' '),
  };
}

const mark = ({ invented }: SizeList, { w }: Words) => (invented ? `   ${w.sizes.invented}` : '');

function tablePages({ sizes, pieces, assigned }: SizeList, { w, sizeText, nameOf }: Words): readonly Drawn[] {
  const takers = (id: string) => assigned.filter(({ strip, size }) => strip.code !== null && size?.id === id).map(nameOf);
  const singly = assigned.filter(({ size, strip }) => size === null && strip.code !== null);
  const rows = [
    ...sizes.map((size, k) => ({
      id: size.id,
      size: sizeText(size.length, size.width),
      quantity: String(pieces[k] ?? 0),
      serves: w.sizes.serves[size.serves],
      codes: takers(size.id).join(', '),
    })),
    ...singly.map((one) => ({
      id: w.sizes.singly,
      size: sizeText(one.strip.length, one.strip.height),
      quantity: '1',
      serves: '',
      codes: nameOf(one),
    })),
  ].map((row) => ({ ...row, lines: wrapText(row.codes, INNER - COLUMNS.codes, SMALL) }));
  const drawn: { labels: Label[]; marks: Mark[] }[] = [];
  let y = 0;
  for (const row of rows) {
    const height = Math.max(1, row.lines.length) * PITCH + 1;
    if (drawn.length === 0 || y - height < MARGIN) {
      const head = { labels: [] as Label[], marks: [] as Mark[] };
      y = PAGE.height - MARGIN - HEADING - 2 * PITCH;
      for (const [key, text] of Object.entries(w.sizes.head))
        head.labels.push(word(text, MARGIN + COLUMNS[key as keyof typeof COLUMNS], y, SMALL));
      head.marks.push(lineAt(y - 1.4));
      drawn.push(head);
      y -= PITCH + 1;
    }
    const page = drawn.at(-1);
    for (const key of ['id', 'size', 'quantity', 'serves'] as const)
      if (row[key] !== '') page?.labels.push(word(row[key], MARGIN + COLUMNS[key], y));
    for (const [k, text] of row.lines.entries())
      if (text !== '') page?.labels.push(word(text, MARGIN + COLUMNS.codes, y - k * PITCH, SMALL));
    y -= height;
  }
  return drawn;
}

/** A label for the bag of each size, then one for each hand in the order of the sizes. */
function labelPages(list: SizeList, { w, speech, mm, sizeText, nameOf }: Words): readonly Drawn[] {
  const { sizes, pieces, assigned } = list;
  const made = list.invented ? [w.sizes.invented] : [];
  const ofSizes = sizes.map((size, k) => [
    size.id,
    w.sizes.bag(sizeText(size.length, size.width), `${pieces[k] ?? 0}`),
    w.sizes.serves[size.serves],
    ...made,
  ]);
  const order = (one: Assigned) => (one.size === null ? sizes.length : sizes.indexOf(one.size));
  const named = assigned.filter(({ strip }) => strip.code !== null).toSorted((a, b) => order(a) - order(b));
  const ofHands = named.map((one) => {
    const { strip, size, cutOff, trimUsed } = one;
    const relief = strip.relief.map(({ digit, depth }) => `${speech.hand.short[digit]} ${mm(depth)}`).join(', ');
    return [
      nameOf(one),
      size === null ? w.sizes.bagSingly(sizeText(strip.length, strip.height)) : `${size.id}, ${sizeText(size.length, size.width)} mm`,
      strip.block === null ? '' : blockName(strip.block, speech),
      size === null ? '' : trimUsed > 0 ? w.sizes.trim(mm(trimUsed)) : w.sizes.cutOff(mm(cutOff)),
      relief === '' ? '' : w.sizes.cutBack(relief),
      ...made,
    ].filter((text) => text !== '');
  });
  const all = [...ofSizes, ...ofHands];
  const perPage = LABEL.columns * LABEL.rows;
  return Array.from({ length: Math.ceil(all.length / perPage) }, (_, page) => {
    const marks: Mark[] = [];
    const labels: Label[] = [];
    for (const [k, lines] of all.slice(page * perPage, (page + 1) * perPage).entries()) {
      const x = MARGIN + (k % LABEL.columns) * LABEL.width;
      const top = PAGE.height - MARGIN - HEADING - PITCH - Math.floor(k / LABEL.columns) * LABEL.height;
      marks.push(boxAt(x, top));
      let y = top - LABEL_EDGE - HEADING;
      for (const [line, text] of lines.entries()) {
        for (const part of wrapText(text, LABEL.width - 2 * LABEL_EDGE, line === 0 ? HEADING : SMALL)) {
          labels.push(word(part, x + LABEL_EDGE, y, line === 0 ? HEADING : SMALL));
          y -= line === 0 ? HEADING + 1.5 : SMALL * 1.9;
        }
      }
    }
    return { marks, labels };
  });
}

function pageOf({ marks, labels }: Drawn, title: string, members: string, language: Language): Pattern {
  return {
    kind: 'page',
    title,
    parts: [],
    beside: { marks, labels: [word(title, MARGIN, PAGE.height - MARGIN - HEADING, HEADING), ...labels] },
    extents: { minX: 0, minY: 0, maxX: PAGE.width, maxY: PAGE.height },
    inputs: {
      schema: 'knucklewright/inputs@1',
      geometryVersion: GEOMETRY_VERSION,
      date: null,
      kind: 'page',
      page: 'sizes',
      members,
      ...spokenIn(language),
    },
    warnings: [],
  };
}

function word(text: string, x: number, y: number, height: number = TEXT): Label {
  return { layer: 'INFO', text, at: { x, y }, height, align: 'left', angle: 0 };
}

function lineAt(y: number): Mark {
  const path = polyline([
    { x: MARGIN, y },
    { x: PAGE.width - MARGIN, y },
  ]);
  return { layer: 'INFO', role: 'table-head', title: 'line under the head', paths: [path], circles: [] };
}

function boxAt(x: number, top: number): Mark {
  const [right, low] = [x + LABEL.width, top - LABEL.height];
  const corners = [
    { x, y: top },
    { x, y: low },
    { x: right, y: low },
    { x: right, y: top },
  ];
  return { layer: 'INFO', role: 'bag-label', title: 'edge of a bag label', paths: [polyline(corners, true)], circles: [] };
}
