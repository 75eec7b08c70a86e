import { type Budget, type Finding, Unreadable } from '../drawing.ts';

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
  for (const tag of tags) {
    const [code, value] = tag;
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
  const lines = text.split(/\r\n|\n|\r/);
  for (let k = 0; k + 1 < lines.length; k += 2) {
    const head = (lines[k] ?? '').trim();
    if (k % 2000 === 0) budget.check();
    if (!/^-?\d{1,4}$/.test(head)) {
      if (head === '' && lines.slice(k).every((line) => line.trim() === '')) return;
      throw new Unreadable(`line ${k + 1} should be a group code and is "${head.slice(0, 30)}"`);
    }
    const code = Number(head);
    const line = lines[k + 1] ?? '';
    yield [code, code === 1 || code === 3 || code === 999 ? line : line.trim()];
  }
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
  return object.tags.find((tag) => tag[0] === code)?.[1];
}

export function values(object: DxfObject, code: number): readonly string[] {
  return object.tags.flatMap((tag) => (tag[0] === code ? [tag[1]] : []));
}
