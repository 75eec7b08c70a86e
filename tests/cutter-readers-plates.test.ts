import type { Pattern } from '../src/pattern/pattern.ts';
import { cutterById } from '../src/sheet/cutter/cutter-profile.ts';
import { forCutter } from '../src/sheet/cutter/for-cutter.ts';
import { plateLike, sheetOf } from './cutter-patterns.ts';
import { presetPlate } from './demo-plate.ts';
import { readersAgreeOn } from './readers-agree.ts';

const knife = cutterById('knife');
if (!knife) throw new Error('no knife');
const cutReady = forCutter(sheetOf([plateLike('A')], 90, 110), { ...knife, kerf: 0.2, leadIn: 2, bridges: 3 }, { shareEdges: false });
if (!cutReady.ok) throw new Error(JSON.stringify(cutReady.problems));

const PATTERNS: readonly (readonly [string, Pattern])[] = [
  ['plate-with-holes', sheetOf([plateLike('A')], 90, 110)],
  ['plate', presetPlate('mp-immobilisation-dorsal').pattern],
  ['plate-with-kerf', cutReady.value],
];
readersAgreeOn(PATTERNS);
