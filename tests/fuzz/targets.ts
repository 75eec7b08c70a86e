import { COMMAND_TARGETS } from './command-targets.ts';
import { DRAWING_TARGETS } from './drawing-targets.ts';
import { FIELD_TARGETS } from './field-targets.ts';
import { FILE_TARGETS } from './file-targets.ts';
import { MACHINE_TARGETS } from './machine-targets.ts';
import { PAGE_TARGETS } from './page-targets.ts';
import { PLATE_TARGETS } from './plate-targets.ts';
import { RECORD_TARGETS } from './record-targets.ts';
import { REDRAW_TARGETS } from './redraw-targets.ts';
import { SAVING_TARGETS } from './saving-targets.ts';
import { TABLE_TARGETS } from './table-targets.ts';
import type { Target } from './target.ts';

/** Every way in. A new one joins a list of its kind, or brings its own, and is fuzzed from then on, in CI and by night. */
export const TARGETS: readonly Target[] = [
  ...FILE_TARGETS,
  ...FIELD_TARGETS,
  ...COMMAND_TARGETS,
  ...PAGE_TARGETS,
  ...DRAWING_TARGETS,
  ...PLATE_TARGETS,
  ...RECORD_TARGETS,
  ...REDRAW_TARGETS,
  ...MACHINE_TARGETS,
  ...TABLE_TARGETS,
  ...SAVING_TARGETS,
];
