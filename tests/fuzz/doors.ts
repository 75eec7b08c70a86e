import type { Door } from './door.ts';
import { DRAWING_DOORS } from './drawing-doors.ts';
import { FIELD_DOORS } from './field-doors.ts';
import { FILE_DOORS } from './file-doors.ts';
import { MACHINE_DOORS } from './machine-doors.ts';
import { PAGE_DOORS } from './page-doors.ts';
import { PLATE_DOORS } from './plate-doors.ts';
import { RECORD_DOORS } from './record-doors.ts';
import { REDRAW_DOORS } from './redraw-doors.ts';
import { SAVING_DOORS } from './saving-doors.ts';
import { TABLE_DOORS } from './table-doors.ts';

/** Every way in. A new one joins a list of its kind, or brings its own, and is fuzzed from then on, in CI and by night. */
export const DOORS: readonly Door[] = [
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
