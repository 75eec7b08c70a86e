import { type Budget, type Finding, LIMITS, LimitReached, type ReadDrawing, Unreadable } from '../drawing.ts';
import type { Affine } from '../pen.ts';
import { interpret, type Reading, START, unpacked } from './pdf-contents.ts';
import { type Dict, dictOf, numberOf, numbersOf, type PdfObjects, pdfObjects, readable } from './pdf-objects.ts';

/** 72 pt are one inch (ISO 32000 user space). */
const MM_PER_POINT = 25.4 / 72;
const NO_LAYER = '(no layer)';

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
