import { collect, success } from '../../units/result.ts';
import { resultOf } from '../bounded/reading-result.ts';
import { keptMachine } from '../cutter-plan.ts';
import { defineCommand } from '../define-command.ts';
import { drawnReport, drawRequest } from '../draw-request.ts';
import { argument } from '../flags/flag.ts';
import { outputFlags, readOutputPlan } from '../flags/output-flags.ts';

/** `redraw`: reads what a drawing carries, checks all of it anew, makes the pattern and writes it as `draw` does. */
export const redraw = defineCommand({
  name: 'redraw',
  group: 'Files and printers',
  about: 'draw a pattern again from the inputs that its own SVG, DXF or PDF carries',
  examples: ['redraw strip.svg --formats pdf', 'redraw - --formats dxf --out - < strip.svg > strip.dxf'],
  standardInput: true,
  standardOutput: true,
  args: [argument('<file>', 'SVG, DXF or PDF that knucklewright wrote')],
  flags: [outputFlags],
  // A drawing keeps its words and the cutter that it was made for.
  clinicLeaves: ['cutter', 'language'],
  read: async ([file], flags) => {
    const drawn = await resultOf('ownDrawing', file);
    const kept = drawn.ok ? keptMachine(drawn.value.inputs, file) : success(null);
    if (!kept.ok) return kept;
    // In the words that it had, unless others are asked for.
    const language = flags.language ?? (drawn.ok ? drawn.value.request.language : undefined) ?? 'en';
    const request = drawn.ok ? success({ ...drawn.value.request, language }, drawn.warnings) : drawn;
    const read = collect({ output: await readOutputPlan({ ...flags, language }, kept.value), request });
    return read.ok ? success({ ...read.value, why: `drawn again from ${file}` }, read.warnings) : read;
  },
  make: drawRequest,
  report: drawnReport,
});
