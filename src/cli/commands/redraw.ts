import { requestFromDrawing } from '../../files/file-inputs.ts';
import { collect, success } from '../../units/result.ts';
import { defineCommand } from '../define-command.ts';
import { drawnReport, drawRequest } from '../draw-request.ts';
import { argument } from '../flags/flag.ts';
import { outputFlags, readOutputPlan } from '../flags/output-flags.ts';

/** `redraw`: reads what a drawing carries, checks all of it anew, makes the pattern and writes it as `draw` does. */
export const redraw = defineCommand({
  name: 'redraw',
  group: 'Files and printers',
  about: 'draw a pattern again from the inputs that its own SVG, DXF or PDF carries',
  args: [argument('<file>', 'SVG, DXF or PDF that knucklewright wrote')],
  flags: [outputFlags],
  read: async ([file], flags) => {
    const read = collect({ output: await readOutputPlan(flags), request: await requestFromDrawing(file) });
    return read.ok ? success({ ...read.value, why: `drawn again from ${file}` }, read.warnings) : read;
  },
  make: drawRequest,
  report: drawnReport,
});
