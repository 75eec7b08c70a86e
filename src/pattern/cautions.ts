/** The cautions in English, for what the command prints. */
export { cautionsEnglish as CAUTIONS, pencilTestEnglish as PENCIL_TEST } from '../words/cautions/english.ts';
