import type { Box, LineArcPath, Point } from '../geometry/path.ts';
import type { Circle } from './pattern.ts';

/** A picture to look at, such as a chart: nothing of it is cut, so that it has pens and tones where a pattern has layers. mm, y up. */
export interface Drawing {
  readonly title: string;
  /** What the picture shows, in words, for whoever cannot see it. */
  readonly description: string;
  /** In the order of drawing: later ones lie on top. */
  readonly items: readonly (DrawnShape | DrawnText)[];
  readonly extents: Box;
}

/** Thickness of a line; writers choose the mm. */
export type Pen = 'fine' | 'medium' | 'heavy';

/** How dark a line or an area is. Meaning is never carried by tone alone: line style and words say it too. */
export type Tone = 'ink' | 'grey' | 'pale' | 'wash' | 'paper' | 'accent' | PictureTone;

/** Areas of a drawn hand and of what lies on it: lit, half in shadow, in shadow; `treated` is the finger that it is made for. */
export const PICTURE_TONES = [
  'skin',
  'skin-half',
  'skin-shadow',
  'treated',
  'treated-half',
  'treated-shadow',
  'nail',
  'strip',
  'strip-half',
  'strip-shadow',
  'done',
  'done-half',
  'done-shadow',
] as const;
export type PictureTone = (typeof PICTURE_TONES)[number];

export interface DrawnShape {
  readonly kind: 'shape';
  /** Machine-readable role, kebab-case. */
  readonly role: string;
  /** What a reader calls it. */
  readonly title: string;
  readonly paths: readonly LineArcPath[];
  readonly circles: readonly Circle[];
  /** Null: an area without an outline. */
  readonly pen: Pen | null;
  readonly tone: Tone;
  /** Tone of the area inside, or null. */
  readonly fill: Tone | null;
}

/** One line of text; `at` lies on the baseline. */
export interface DrawnText {
  readonly kind: 'text';
  readonly role: string;
  readonly text: string;
  readonly at: Point;
  /** Capital height in mm. */
  readonly height: number;
  readonly align: 'left' | 'center' | 'right';
  readonly tone: Tone;
  readonly strong: boolean;
}
