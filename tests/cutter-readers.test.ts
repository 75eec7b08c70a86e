import { demoStrip, laidSheet } from './cutter-patterns.ts';
import { readersAgreeOn } from './readers-agree.ts';

// The plates have a file of their own. Of the sheet what is cut and its plan: its lists are letters like a strip's, and of a bracket at the very
// edge LibreCAD prints the ends and not the bulge.
const sheet = laidSheet();
readersAgreeOn([
  ['strip', demoStrip()],
  ['sheet', { ...sheet, beside: { ...sheet.beside, labels: [] } }],
]);
