import { type Budget, type Finding, LIMITS, LimitReached, Unreadable } from '../drawing.ts';

export type DxfTag = readonly [code: number, value: string];

/** From one group 0 to the next. */
export interface DxfObject {
  readonly kind: string;
  readonly tags: readonly DxfTag[];
}

export interface DxfSections {
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
      throw new Unreadable(`line ${number} should be a group code and is "${code.slice(0, 30)}"`);
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
