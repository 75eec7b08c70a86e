import type { PatternRequest } from '../../pattern/make-pattern.ts';
import { getOwn } from '../../units/json-text.ts';
import { collect, success, type Warning } from '../../units/result.ts';
import type { WriterFormat } from '../../writers/writer.ts';
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
  about: 'draw a pattern again from the inputs that its own SVG, DXF or PDF carries, with the paper strip if it had one',
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
    if (!read.ok) return read;
    const { trial, left } = drawn.ok ? keptTrial(drawn.value, read.value.output.formats, flags, file) : { trial: false, left: [] };
    return success({ ...read.value, paperTrial: trial, why: { kind: 'redrawn' as const, file } }, [...read.warnings, ...left]);
  },
  make: drawRequest,
  report: drawnReport,
});

/** Whether the drawing had a paper strip with it, and the warning where that cannot come again: beside a drawing that is printed no other file is written. */
function keptTrial(
  { request, inputs }: { readonly request: PatternRequest; readonly inputs: unknown },
  formats: readonly WriterFormat[],
  flags: object,
  file: string,
): { readonly trial: boolean; readonly left: readonly Warning[] } {
  if (getOwn(inputs, 'paperTrial') !== true || request.kind !== 'strip' || request.version !== undefined) return { trial: false, left: [] };
  if (getOwn(flags, 'isPrinted') !== true || formats.every((format) => format === 'pdf')) return { trial: true, left: [] };
  return {
    trial: false,
    left: [
      {
        code: 'PAPER_STRIP_LEFT',
        where: '--out',
        message: `${file} has a paper strip with it, which is a drawing of its own and was not written`,
        next: 'name a folder with --out, or ask for a PDF, which has it on a page',
      },
    ],
  };
}
