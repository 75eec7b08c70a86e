import type { Box } from '../../geometry/path.ts';
import type { MakingNotes } from '../../pattern/making-notes.ts';
import type { Language } from '../../words/language.ts';
import type { Measure } from './page.ts';
import type { PageContent } from './pattern-pages.ts';
import type { ClinicLines } from './sheet-settings.ts';

/** Where and how a paper is laid out: its free room on the page (mm from the page's lower left corner), the text measure, the language. */
export interface PaperRoom {
  readonly box: Box;
  readonly measure: Measure;
  readonly language: Language;
  readonly clinic: ClinicLines;
}

/** Makes the papers that go with a pattern. */
export interface PaperMaker {
  /** The making in pictures; none where there are none, or the paper is too small for them. */
  readonly story: (notes: MakingNotes, room: PaperRoom) => readonly PageContent[];
  /** The patient's sheet; null where the room is too small for it. */
  readonly handout: (notes: MakingNotes, room: PaperRoom) => readonly PageContent[] | null;
}
