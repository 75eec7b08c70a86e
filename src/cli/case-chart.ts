import { basename, dirname } from 'node:path';
import { loadCase } from '../files/case-store.ts';
import { saveFiles } from '../files/save-file.ts';
import { caseChart } from '../record/case-chart.ts';
import { plain } from '../units/number.ts';
import { svgDrawingInNode } from '../writers/svg/svg-drawing-node.ts';
import { fail, warn } from './exit.ts';
import { flagProblem } from './flags/flag-problem.ts';

/** Runs `case chart`: the picture as SVG, written whole or not at all. */
export async function caseChartFile(
  path: string,
  { out, force = false }: { readonly out: string; readonly force?: boolean },
): Promise<void> {
  if (!/\.svg$/i.test(out)) return fail([flagProblem('--out', `"${out}" must end in .svg, the one format of the chart`)]);
  const record = await loadCase(path);
  if (!record.ok) return fail(record.problems);
  const drawing = caseChart(record.value);
  if (!drawing.ok) return fail(drawing.problems);
  const text = svgDrawingInNode(drawing.value);
  if (!text.ok) return fail(text.problems);
  const saved = await saveFiles(dirname(out), [{ name: basename(out), content: text.value }], { force });
  if (!saved.ok) return fail(saved.problems);
  warn(record.warnings);
  const { maxX, maxY } = drawing.value.extents;
  process.stdout.write(`${saved.value[0]?.path}   chart ${plain(maxX, 1)} x ${plain(maxY, 1)} mm\n`);
}
