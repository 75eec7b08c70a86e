import type { Side } from '../../hand/digits.ts';
import type { Relief } from './strip-piece.ts';

/** A strip that a blank from stock is to serve; mm. */
export interface NeededStrip {
  /** The case code; null where nobody has one: lengths from a file, hands drawn from norms. */
  readonly code: string | null;
  readonly side: Side | null;
  readonly block: string | null;
  readonly length: number;
  /** As high as its edges span: the strip's width, and more where they follow the webs. */
  readonly height: number;
  readonly relief: readonly Relief[];
  /** Whether the little finger is among its digits; null where that is not known. */
  readonly withLittle: boolean | null;
  readonly invented: boolean;
}
