import { plateEnglish } from '../../words/pattern/plate-english.ts';

/** The cautions of a larger piece in English, for what the command prints. */
export const PLATE_CAUTIONS: readonly string[] = Object.values(plateEnglish.caution);
