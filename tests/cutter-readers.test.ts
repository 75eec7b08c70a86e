import { demoStrip, laidSheet } from './cutter-patterns.ts';
import { readersAgreeOn } from './readers-agree.ts';

// The plates have a file of their own.
readersAgreeOn([
  ['strip', demoStrip()],
  ['sheet', laidSheet()],
]);
