import { BINARY_DXF } from '../../units/file-format.ts';
import { quote } from '../../units/quote.ts';
import { type Budget, type Finding, LIMITS, LimitReached, Unreadable } from '../drawing.ts';

export type DxfTag = readonly [code: number, value: string];

/** From one group 0 to the next. */
export interface DxfObject {
  readonly kind: string;
  readonly tags: readonly DxfTag[];
}

interface DxfSections {
  readonly sections: ReadonlyMap<string, readonly DxfTag[]>;
  readonly comments: readonly string[];
  readonly findings: readonly Finding[];
}

/** The tags of a DXF by section. Throws Unreadable when no section is there. */
export function dxfSections(tags: Iterable<DxfTag>): DxfSections {
  const sections = new Map<string, DxfTag[]>();
  const comments: string[] = [];
  const findings: Finding[] = [];
  let section: DxfTag[] | null = null;
  let named = true;
  let ended = false;
  let count = 0;
  for (const tag of tags) {
    const [code, value] = tag;
    if (++count > LIMITS.tags) throw new LimitReached(`more than ${LIMITS.tags} group codes`);
    if (code === 999) comments.push(value);
    else if (!named) {
      named = true;
      section = [];
      sections.set(value.trim(), section);
    } else if (code === 0 && value === 'EOF') ended = true;
    else if (code === 0 && value === 'SECTION') named = false;
    else if (code === 0 && value === 'ENDSEC') section = null;
    else section?.push(tag);
    if (ended) break;
  }
  if (sections.size === 0) throw new Unreadable('no SECTION is in the file');
  if (!ended) findings.push({ code: 106, message: 'the file has no EOF at its end: it may be cut off' });
  if (section !== null) findings.push({ code: 106, message: 'the last SECTION has no ENDSEC' });
  return { sections, comments, findings };
}

/** The tags of an ASCII DXF. Throws Unreadable when the lines do not pair up as group code and value. */
export function* textTags(text: string, budget: Budget): Generator<DxfTag> {
  const line = linesOf(text);
  for (let number = 1; ; number += 2) {
    const head = line();
    const value = line();
    if (head === null || value === null) return;
    if (number % 4000 === 1) budget.check();
    const code = head.trim();
    if (!/^-?\d{1,4}$/.test(code)) {
      if (code === '' && value.trim() === '' && onlyBlanks(line)) return;
      throw new Unreadable(`line ${number} should be a group code and is ${quote(code)}`);
    }
    yield [Number(code), code === '1' || code === '3' || code === '999' ? value : value.trim()];
  }
}

/** The lines of a text one after the other, whatever ends them; null behind the last. All at once they would take many times the text's room. */
function linesOf(text: string): () => string | null {
  let at = 0;
  const end = /\r\n|\n|\r/g;
  return () => {
    if (at > text.length) return null;
    end.lastIndex = at;
    const found = end.exec(text);
    const line = text.slice(at, found?.index ?? text.length);
    at = found ? found.index + found[0].length : text.length + 1;
    return line;
  };
}

function onlyBlanks(line: () => string | null): boolean {
  for (let next = line(); next !== null; next = line()) if (next.trim() !== '') return false;
  return true;
}

export function objectsOf(tags: readonly DxfTag[]): readonly DxfObject[] {
  const objects: { kind: string; tags: DxfTag[] }[] = [];
  for (const tag of tags) {
    if (tag[0] === 0) objects.push({ kind: tag[1], tags: [] });
    else objects.at(-1)?.tags.push(tag);
  }
  return objects;
}

/** The first value under a group code. */
export function value(object: DxfObject, code: number): string | undefined {
  if (object.tags.length > LOOKED_THROUGH) return byCode(object).get(code)?.[0];
  return object.tags.find((tag) => tag[0] === code)?.[1];
}

export function values(object: DxfObject, code: number): readonly string[] {
  if (object.tags.length > LOOKED_THROUGH) return byCode(object).get(code) ?? [];
  return object.tags.flatMap((tag) => (tag[0] === code ? [tag[1]] : []));
}

/** An object of more tags is sorted by code once: a block may be inserted again and again. */
const LOOKED_THROUGH = 32;
const sortedObjects = new WeakMap<DxfObject, ReadonlyMap<number, readonly string[]>>();

function byCode(object: DxfObject): ReadonlyMap<number, readonly string[]> {
  const known = sortedObjects.get(object);
  if (known) return known;
  const sorted = new Map<number, string[]>();
  for (const [code, text] of object.tags) {
    const list = sorted.get(code);
    if (list) list.push(text);
    else sorted.set(code, [text]);
  }
  sortedObjects.set(object, sorted);
  return sorted;
}

type Kind = 'text' | 'double' | 'int16' | 'int32' | 'int64' | 'bool' | 'bytes';

/** What the value after a group code is, up to each code (DXF reference, "Group Code Value Types"). */
const KINDS: readonly (readonly [last: number, kind: Kind])[] = [
  [9, 'text'],
  [59, 'double'],
  [79, 'int16'],
  [99, 'int32'],
  [109, 'text'],
  [149, 'double'],
  [169, 'int64'],
  [179, 'int16'],
  [239, 'double'],
  [289, 'int16'],
  [299, 'bool'],
  [309, 'text'],
  [319, 'bytes'],
  [369, 'text'],
  [389, 'int16'],
  [399, 'text'],
  [409, 'int16'],
  [419, 'text'],
  [429, 'int32'],
  [439, 'text'],
  [459, 'int32'],
  [469, 'double'],
  [999, 'text'],
  [1003, 'text'],
  [1004, 'bytes'],
  [1009, 'text'],
  [1059, 'double'],
  [1070, 'int16'],
  [1071, 'int32'],
];

/** The tags of a binary DXF, its values as the text form would write them. Throws Unreadable when it breaks off within a tag. */
export function* binaryTags(bytes: Uint8Array, budget: Budget): Generator<DxfTag> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const letters = new TextDecoder('utf-8');
  let at = BINARY_DXF.length;
  // Release 12 and older write a group code as one byte, so that the first tag, 0 SECTION, has no second zero.
  const short = bytes[at + 1] !== 0;
  const take = (length: number) => {
    const from = at;
    at += length;
    if (at > bytes.byteLength) throw new Unreadable('the binary DXF breaks off within a value');
    return from;
  };
  const readCode = () => {
    if (!short) return view.getInt16(take(2), true);
    const code = view.getUint8(take(1));
    return code === 255 ? view.getInt16(take(2), true) : code;
  };
  const readValue = (kind: Kind): string => {
    if (kind === 'double') return String(view.getFloat64(take(8), true));
    if (kind === 'int16') return String(view.getInt16(take(2), true));
    if (kind === 'int32') return String(view.getInt32(take(4), true));
    if (kind === 'int64') return String(view.getBigInt64(take(8), true));
    if (kind === 'bool') return String(view.getUint8(take(1)));
    if (kind === 'bytes') {
      const length = view.getUint8(take(1));
      take(length);
      return '';
    }
    const end = bytes.indexOf(0, at);
    if (end < 0) throw new Unreadable('the binary DXF breaks off within a text');
    return letters.decode(bytes.subarray(take(end + 1 - at), end));
  };
  for (let count = 0; at < bytes.byteLength; count++) {
    if (count % 2000 === 0) budget.check();
    const code = readCode();
    const kind = KINDS.find(([last]) => code <= last)?.[1];
    if (kind === undefined || code < 0) throw new Unreadable(`the binary DXF holds the group code ${code}, which has no kind`);
    yield [code, readValue(kind)];
  }
}
