import { inflateSync } from 'node:zlib';
import { type Budget, LIMITS, LimitReached, Unreadable } from '../drawing.ts';
import { type PdfValue, pdfLexer } from './pdf-values.ts';

export interface PdfObject {
  readonly value: PdfValue;
  /** The bytes of its stream as they stand in the file, one character each; null when it has none. */
  readonly raw: string | null;
}

/** The objects of a PDF, found by looking for them, not by its table: a table may be broken, compressed or missing. */
export interface PdfObjects {
  /** The value itself, or what the reference leads to. */
  resolve(value: PdfValue | undefined): PdfValue | undefined;
  object(value: PdfValue | undefined): PdfObject | undefined;
  /** The unpacked stream, unpacked once however often it is asked for; null when it is packed in a way that is not read. */
  content(object: PdfObject): string | null;
  readonly all: ReadonlyMap<number, PdfObject>;
}

const OBJECT = /(\d{1,10})[\0\t\n\f\r ]+\d{1,5}[\0\t\n\f\r ]+obj(?![a-zA-Z])/g;
export function pdfObjects(bytes: Uint8Array, budget: Budget): PdfObjects {
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');
  const all = new Map<number, PdfObject>();
  let from = 0;
  for (;;) {
    OBJECT.lastIndex = from;
    const found = OBJECT.exec(text);
    if (!found) break;
    budget.item();
    const lexer = pdfLexer(text, OBJECT.lastIndex);
    const value = lexer.next();
    if (!value) break;
    from = lexer.position();
    const begins = /^[\0\t\n\f\r ]*stream(\r\n|\n|\r)/.exec(text.slice(from, from + 40));
    let raw: string | null = null;
    if (begins && value.kind === 'dict') {
      const start = from + begins[0].length;
      const stated = value.value.get('Length');
      const length =
        stated?.kind === 'number' && /^\s*endstream/.test(text.slice(start + stated.value, start + stated.value + 20)) ? stated.value : -1;
      const end = length >= 0 ? start + length : text.indexOf('endstream', start);
      if (end < 0) throw new Unreadable('a stream has no end: the file may be cut off');
      raw = text.slice(start, end);
      from = end;
    }
    all.set(Number(found[1]), { value, raw });
  }
  const resolve = (value: PdfValue | undefined): PdfValue | undefined => {
    let current = value;
    for (let k = 0; current?.kind === 'ref' && k < 16; k++) current = all.get(current.value)?.value;
    return current?.kind === 'ref' ? undefined : current;
  };
  const unpacked = new Map<PdfObject, string>();
  const content = (object: PdfObject): string | null => {
    if (object.raw === null || object.value.kind !== 'dict') return null;
    const filter = resolve(object.value.value.get('Filter'));
    const names = filter?.kind === 'array' ? filter.value.map((f) => resolve(f)) : filter ? [filter] : [];
    if (names.length === 0) return object.raw;
    const [only] = names;
    if (names.length > 1 || only?.kind !== 'name' || !['FlateDecode', 'Fl'].includes(only.value)) return null;
    const known = unpacked.get(object);
    if (known !== undefined) return known;
    const text = inflated(object.raw);
    budget.unpacked(text.length);
    unpacked.set(object, text);
    return text;
  };
  for (const object of [...all.values()]) unpackObjects(object, all, content, budget);
  const object = (value: PdfValue | undefined): PdfObject | undefined => {
    if (value?.kind === 'ref') return all.get(value.value);
    return value ? { value, raw: null } : undefined;
  };
  if (/\/Encrypt[\0\t\n\f\r ]+\d/.test(text)) throw new Unreadable('the PDF is encrypted');
  return { resolve, object, content, all };
}

/** Taking a PDF's values apart takes about as long for one sign as other texts for so many. */
export const CHARACTERS_A_VALUE_SIGN = 4;

function inflated(raw: string): string {
  try {
    return inflateSync(Buffer.from(raw, 'latin1'), { maxOutputLength: LIMITS.bytes }).toString('latin1');
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ERR_BUFFER_TOO_LARGE')
      throw new LimitReached(`a stream unpacks to more than ${LIMITS.bytes} bytes`);
    throw new Unreadable('a packed stream is damaged');
  }
}

/** Objects packed into an object stream (ISO 32000, 7.5.7). What stands in the file itself wins over them. */
function unpackObjects(object: PdfObject, all: Map<number, PdfObject>, content: PdfObjects['content'], budget: Budget): void {
  if (object.value.kind !== 'dict') return;
  const dict = object.value.value;
  const [type, count, first] = [dict.get('Type'), dict.get('N'), dict.get('First')];
  if (type?.kind !== 'name' || type.value !== 'ObjStm' || count?.kind !== 'number' || first?.kind !== 'number') return;
  const text = content(object);
  if (text === null) return;
  const heads = pdfLexer(text.slice(0, first.value));
  for (let k = 0; k < Math.min(count.value, LIMITS.items); k++) {
    budget.item();
    const [id, offset] = [heads.next(), heads.next()];
    if (id?.kind !== 'number' || offset?.kind !== 'number') return;
    const lexer = pdfLexer(text, first.value + offset.value);
    const value = lexer.next();
    budget.characters(CHARACTERS_A_VALUE_SIGN * (lexer.position() - first.value - offset.value));
    if (value && !all.has(id.value)) all.set(id.value, { value, raw: null });
  }
}
