import type { Box, LineArcPath } from '../geometry/path.ts';
import type { Warning } from '../units/result.ts';
import type { MakingNotes } from './making-notes.ts';
import type { Drawn, Label, Mark } from './marks.ts';

/**
 * A flat pattern at full scale, mm, y up, free of any file format. Writers read it, `validatePattern` proves it.
 * Layers: CUT is cut, MARK is drawn on the plastic (or scored), INFO stays beside the part and is not for the machine.
 */
export type Layer = 'CUT' | 'MARK' | 'INFO';

export type { Circle, Drawn, Label, Mark } from './marks.ts';

/** One stroke of a cutter round a part, ready to be cut: the whole contour, or a piece of it with its lead-in. */
export interface CutStroke {
  readonly role: 'hole' | 'outline';
  readonly path: LineArcPath;
}

/** What was done to the outlines for a machine; absent: nothing, the outlines are the true edges. */
export interface Cutting {
  /** Id of the cutter profile. */
  readonly cutter: string;
  /** Width that the tool takes away, mm; the outlines have been moved by half of it. */
  readonly kerf: number;
  /** Of the profile. */
  readonly title: string;
  /** Quarter arcs in the waste before each cut, mm; 0: none. */
  readonly leadIn: number;
  /** How many hold each part, and how long each is, mm. */
  readonly bridges: number;
  readonly bridgeWidth: number;
  /** Edges of neighbours that are cut once. */
  readonly sharedEdges: number;
  /** Each part is finished before the next is begun; else each tool does all of its work at once. */
  readonly partByPart: boolean;
  /** What the machine knows the layers by; null: left out. */
  readonly layers: { readonly CUT: string; readonly MARK: string | null; readonly INFO: string | null };
}

/** One piece to cut. */
export interface Part {
  readonly id: string;
  readonly title: string;
  readonly outline: LineArcPath;
  readonly holes: readonly LineArcPath[];
  readonly marks: readonly Mark[];
  readonly labels: readonly Label[];
  /** In the order of cutting, holes before the outline; absent: each hole and the outline once round. */
  readonly cuts?: readonly CutStroke[];
}

/** What travels with the file, so that it can be drawn again. */
export interface PatternInputs {
  readonly schema: 'knucklewright/inputs@1';
  /** Version of the geometry: patterns from the same inputs and the same version are the same. */
  readonly geometryVersion: string;
  /** ISO date given by the person, or null; never the clock. */
  readonly date: string | null;
  /** Everything else needed to draw the pattern again, as plain JSON. */
  readonly [key: string]: unknown;
}

/** Lines to be read beside a drawing, in this order; the heading may be empty. */
export interface ReadingList {
  readonly heading: string;
  readonly lines: readonly string[];
}

export interface Pattern {
  readonly kind: 'strip' | 'plate' | 'sheet' | 'page';
  readonly title: string;
  readonly parts: readonly Part[];
  /** What stands beside the parts: section view, table, 50 mm square. */
  readonly beside: Drawn;
  /** Everything that is drawn lies inside; its lower left corner is (0, 0). */
  readonly extents: Box;
  readonly inputs: PatternInputs;
  /** What the printed sheet says beside the outline; a pattern without it prints its parts alone. */
  readonly notes?: MakingNotes;
  /** What is to be read beside a sheet of plastic: on a printed page set anew, in a drawing part of `beside`. */
  readonly lists?: readonly ReadingList[];
  /** A paper strip to try first: on paper it has a page of its own. Its `lists` are the words of that page. */
  readonly paperTrial?: Pattern;
  readonly warnings: readonly Warning[];
  readonly cutting?: Cutting;
}
