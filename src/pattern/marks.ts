import type { LineArcPath, Point } from '../geometry/path.ts';

export interface Circle {
  readonly center: Point;
  readonly radius: number;
}

/** One meaning drawn by one or more strokes; dashes are strokes of their own, so that every machine draws them alike. */
export interface Mark {
  readonly layer: 'MARK' | 'INFO';
  /** Machine-readable role, kebab-case, e.g. `midline-palmar`. */
  readonly role: string;
  /** What a reader calls it, e.g. `ring midline, palmar pass`. */
  readonly title: string;
  readonly paths: readonly LineArcPath[];
  readonly circles: readonly Circle[];
}

/** A line of text drawn as single strokes (SVG, DXF) or set as text (PDF). `at` lies on the baseline. */
export interface Label {
  readonly layer: 'MARK' | 'INFO';
  readonly text: string;
  readonly at: Point;
  /** Capital height in mm. */
  readonly height: number;
  readonly align: 'left' | 'center' | 'right';
  /** Turn of the baseline, degrees counter-clockwise. */
  readonly angle: number;
}

/** Marks and labels that belong together, e.g. a view or a table. */
export interface Drawn {
  readonly marks: readonly Mark[];
  readonly labels: readonly Label[];
}
