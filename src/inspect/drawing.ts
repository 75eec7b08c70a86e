import type { Box, Point, Segment } from '../geometry/path.ts';
import type { Colour } from './colour.ts';

/** Something that is wrong with a file, or that a cutter would trip over; its code is one of FINDING_KINDS. */
export interface Finding {
  readonly code: number;
  readonly message: string;
  /** Where, mm from the drawing's own origin, y up. */
  readonly at?: Point;
}

/** One line as the file draws it. mm, y up; arcs of at most half a circle. */
export interface ReadCurve {
  readonly layer: string;
  /** The file's own word for it: `path`, `LINE`, `LWPOLYLINE`. */
  readonly kind: string;
  readonly closed: boolean;
  readonly segments: readonly Segment[];
  /** Width of the line in mm, null when the format or the file gives none; 0 when nothing is stroked. */
  readonly strokeWidth: number | null;
  /** Of the line, or of the area where no line is drawn; null where the file gives none. */
  readonly colour: Colour | null;
  readonly dashed: boolean;
  readonly hidden: boolean;
  /** The reader took some of it as chords; its short lines are the reader's, not the file's. */
  readonly flattened: boolean;
}

export interface ReadText {
  readonly layer: string;
  readonly text: string;
}

export interface ReadLayer {
  readonly name: string;
  /** Listed where the format lists its layers (DXF), or named by a group (SVG, PDF). */
  readonly declared: boolean;
}

/** A file as its reader understood it, before anything is judged. */
export interface ReadDrawing {
  readonly format: 'svg' | 'dxf' | 'pdf';
  /** Version that the file states, if it does. */
  readonly version: string | null;
  /** The unit that the file states; null when it states none. */
  readonly unit: string | null;
  /** Size of one of the file's own units in mm, as read. */
  readonly mmPerUnit: number;
  /** Page, viewBox or declared extents in mm; null when there is none. */
  readonly frame: Box | null;
  readonly layers: readonly ReadLayer[];
  readonly curves: readonly ReadCurve[];
  readonly texts: readonly ReadText[];
  /** Title, description and comments, a line each. */
  readonly notes: readonly string[];
  /** Curves that are neither lines nor circular arcs, taken as chords within `FLATTENING` mm. */
  readonly flattened: number;
  readonly findings: readonly Finding[];
}

/** Chord error of splines, ellipses and free curves, mm. */
export const FLATTENING = 0.005;

/** A reader stops here, so that no file can hold the computer up. */
export const LIMITS = {
  /** Of the file, and of all that its streams unpack to together. */
  bytes: 50_000_000,
  /** Depth of nested elements, blocks, forms. */
  depth: 64,
  /** Depth of blocks in blocks, symbols in symbols. */
  reuse: 8,
  /** Elements or entities that are read, repeated ones counted each time. */
  items: 100_000,
  segments: 100_000,
  /** Group codes of a DXF. */
  tags: 2_000_000,
  /** Pairs of edges or ends that are compared: a file of nothing but the same line again would ask for the square of its length. */
  comparisons: 300_000,
  /** Characters that are looked at beyond four times the file's own: what is used again is read again. */
  characters: 20_000_000,
  /** Findings of one code that are told one by one. */
  told: 20,
} as const;

/** Seconds of the processor that reading a file may take. */
export function readingSeconds(bytes: number): number {
  return Math.min(60, 4.5 + Math.max(0, bytes / 1e6 - 1));
}

/** Thrown inside a reader when a limit is reached; `inspectFile` makes finding 102 of it. */
export class LimitReached extends Error {}

/** Thrown inside a reader when the file cannot be read at all; `inspectFile` makes finding 101 of it. */
export class Unreadable extends Error {}

/** Counts what is read against the limits. */
export interface Budget {
  item(): void;
  segment(): void;
  /** Before so many pairs are compared, or edges copied. */
  compare(count?: number): void;
  /** Before so many characters are looked at. */
  characters(count: number): void;
  /** Before so many bytes of a packed stream are held. */
  unpacked(bytes: number): void;
  check(): void;
}

/** Milliseconds of the processor that this process has used: a busy machine does not make a file too slow. */
function processorTime(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** @param bytes size of the file that is read */
export function newBudget(bytes: number, now: () => number = processorTime): Budget {
  const seconds = readingSeconds(bytes);
  const end = now() + 1000 * seconds;
  const mostCharacters = LIMITS.characters + 4 * bytes;
  let items = 0;
  let segments = 0;
  let comparisons = 0;
  let characters = 0;
  let inflated = 0;
  const check = () => {
    if (now() > end) throw new LimitReached(`reading took more than ${seconds.toFixed(1)} seconds of the processor`);
  };
  return {
    check,
    item() {
      if (++items > LIMITS.items) throw new LimitReached(`more than ${LIMITS.items} elements`);
      if (items % 1000 === 0) check();
    },
    segment() {
      if (++segments > LIMITS.segments) throw new LimitReached(`more than ${LIMITS.segments} edges`);
      if (segments % 1000 === 0) check();
    },
    compare(count = 1) {
      comparisons += count;
      if (comparisons > LIMITS.comparisons)
        throw new LimitReached(`more than ${LIMITS.comparisons} pairs of edges lie in each other's way`);
    },
    characters(count) {
      characters += count;
      if (characters > mostCharacters) throw new LimitReached(`more than ${mostCharacters} characters, with what is used again`);
    },
    unpacked(more) {
      inflated += more;
      if (inflated > LIMITS.bytes) throw new LimitReached(`its streams unpack to more than ${LIMITS.bytes} bytes`);
    },
  };
}

/** What a file says of itself in its title, description or comments. Lengths in mm. */
export interface DeclaredSettings {
  /** Null when the file says nothing of a kerf. */
  readonly kerf: number | null;
  readonly leadIn: number;
  /** Width of hold-down bridges in the material; 0 without them. */
  readonly bridge: number;
  /** Edges stand apart as LINE and ARC on purpose. */
  readonly looseEdges: boolean;
  /** Arcs are drawn as short lines on purpose. */
  readonly shortLines: boolean;
  /** Two different kerfs are stated. */
  readonly unclear: boolean;
}

const NUMBER = String.raw`(\d+(?:\.\d+)?)`;

export function declaredSettings(notes: readonly string[]): DeclaredSettings {
  const text = notes.join('\n');
  const kerfs = [...text.matchAll(new RegExp(`\\bkerf ${NUMBER} mm`, 'gi'))].map(([, number]) => Number(number));
  const first = (pattern: string) => Number(new RegExp(pattern, 'i').exec(text)?.[1] ?? 0);
  return {
    kerf: kerfs[0] ?? null,
    leadIn: first(`lead-ins: quarter arcs of ${NUMBER} mm`),
    bridge: first(`bridges: \\d+ of ${NUMBER} mm`),
    looseEdges: /separate LINE and ARC/i.test(text),
    shortLines: /arcs as short lines/i.test(text),
    unclear: new Set(kerfs).size > 1,
  };
}
