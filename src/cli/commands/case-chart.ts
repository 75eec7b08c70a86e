import { loadCase } from '../../files/case-store.ts';
import type { Case } from '../../record/case.ts';
import { caseChart as drawCaseChart } from '../../record/case-chart.ts';
import { collect, type Result, success } from '../../units/result.ts';
import type { Language } from '../../words/language.ts';
import { terminalSpeech } from '../../words/terminal/terminal-words.ts';
import { svgDrawingInNode } from '../../writers/svg/svg-node.ts';
import { defineCommand } from '../define-command.ts';
import { languageFlag, readLanguageFlag } from '../flags/common-flags.ts';
import { argument, flag } from '../flags/flag.ts';
import { forceFlag } from '../flags/output-flags.ts';
import { readEnding, saveFileAs } from '../save-file-as.ts';

/** `case chart`: the picture as SVG, written whole or not at all. */
export const caseChart = defineCommand({
  name: 'case chart',
  group: 'Keep a case',
  about: 'draw PIP motion by visit, what was made, and the band inside which no change is read',
  args: [argument('<file>', 'case file (JSON)')],
  flags: [flag('--out <file.svg>', 'picture to write').makeOptionMandatory(), languageFlag, forceFlag],
  read: async ([path], { out, force, language }) => {
    const read = collect({ ending: readEnding(out, ['svg'], '.svg, the one format of the chart'), record: await loadCase(path) });
    return read.ok
      ? success({ record: read.value.record, out, force: force === true, language: readLanguageFlag(language) }, read.warnings)
      : read;
  },
  make: ({ record, out, force, language }) => writeCaseChart(record, out, force, language),
  report: { text: (said) => said },
});

/** Writes the chart of a case; what was written, as one line. */
export async function writeCaseChart(record: Case, out: string, force: boolean, language: Language): Promise<Result<string>> {
  const drawing = drawCaseChart(record, undefined, language);
  if (!drawing.ok) return drawing;
  const text = svgDrawingInNode(drawing.value);
  if (!text.ok) return text;
  const saved = await saveFileAs(out, text.value, { force });
  if (!saved.ok) return saved;
  const { maxX, maxY } = drawing.value.extents;
  const { w, number } = terminalSpeech(language);
  return success(`${saved.value.path}   ${w.file.chart(number(maxX, 1), number(maxY, 1))}\n`);
}
