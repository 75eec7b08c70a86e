import type { Pattern } from '../pattern/pattern.ts';
import type { Result } from '../units/result.ts';

/** Every format that a pattern can be written in. */
export const WRITER_FORMATS = ['svg', 'dxf', 'pdf'] as const;

export type WriterFormat = (typeof WRITER_FORMATS)[number];

/** What a printed file has: pages, their paper, and whether a pattern goes over several of them. */
export interface PagesOfFile {
  readonly count: number;
  readonly paper: string;
  readonly orientation: 'portrait' | 'landscape';
  readonly tiled: boolean;
}

/** The one interface between a pattern and a file format. */
export interface PatternWriter {
  readonly format: WriterFormat;
  /** Ending of the file name, without the dot. */
  readonly extension: string;
  /**
   * The whole file, as text or as bytes; the same for the same pattern, whatever was written before. Does not throw on a pattern it
   * cannot write: unknown characters in labels (`LABEL_CHARACTERS_UNKNOWN`), numbers without a value (`NUMBER_NOT_WRITABLE`), paths of
   * one point (`PATH_TOO_SHORT`) and a drawing without a size (`EXTENTS_EMPTY`) are failures, all of them at once. It does not prove the pattern; that is done before.
   */
  write(pattern: Pattern): Result<string | Uint8Array>;
  /** The pages of the file, where the size of the drawing does not say what it is. */
  pages?(pattern: Pattern): PagesOfFile | null;
}
