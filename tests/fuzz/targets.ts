import { DRAWING_DOORS } from './drawing-targets.ts';
import { FIELD_DOORS } from './field-targets.ts';
import { FILE_DOORS } from './file-targets.ts';
import { MACHINE_DOORS } from './machine-targets.ts';
import { PAGE_DOORS } from './page-targets.ts';
import { PLATE_DOORS } from './plate-targets.ts';
import { RECORD_DOORS } from './record-targets.ts';
import { REDRAW_DOORS } from './redraw-targets.ts';
import { SAVING_DOORS } from './saving-targets.ts';
import { TABLE_DOORS } from './table-targets.ts';
import type { Target } from './target.ts';

/** Every way in. A new one joins a list of its kind, or brings its own, and is fuzzed from then on, in CI and by night. */
export const TARGETS: readonly Target[] = [
  ...FILE_DOORS,
  ...FIELD_DOORS,
  ...PAGE_DOORS,
  ...DRAWING_DOORS,
  ...PLATE_DOORS,
  ...RECORD_DOORS,
  ...REDRAW_DOORS,
  ...MACHINE_DOORS,
  ...TABLE_DOORS,
  ...SAVING_DOORS,
];
