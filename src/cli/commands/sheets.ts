import type { CutPiece } from '../../sheet/plastic/cut-list.ts';
import type { CutList } from '../../sheet/plastic/read-cut-list.ts';
import { parseLength } from '../../units/length.ts';
import { quote } from '../../units/quote.ts';
import { collect, failure, type Result, success } from '../../units/result.ts';
import { resultOf } from '../bounded/reading-result.ts';
import { defineCommand } from '../define-command.ts';
import { dateFlag, readDateFlag } from '../flags/common-flags.ts';
import { argument, flag, flagProblem } from '../flags/flag.ts';
import { forShears, layoutFlags, readLayoutFlags } from '../flags/layout-flags.ts';
import { outputFlags, readOutputPlan } from '../flags/output-flags.ts';
import { layOutList, sheetsReportText } from '../lay-out-list.ts';

/** `sheets`: from a cut list to laid-out sheets of plastic. */
export const sheets = defineCommand({
  name: 'sheets',
  group: 'Many hands',
  about:
    'lay the pieces of a cut list out on sheets of plastic, so that they can be cut with shears, and say how many sheets are needed at least',
  examples: ['sheets week/cut-list.json --out week', 'sheets --sizes 184x28:7,205x36:12 --shears'],
  standardInput: true,
  args: [argument('[cut-list]', 'cut list (JSON or CSV) of batch or sizes, or any CSV with the columns length and width in mm')],
  flags: [
    flag('--sizes <list>', 'pieces typed here in place of a cut list: length x width : how many, as 168x20:8,176x20:10'),
    dateFlag,
    layoutFlags,
    outputFlags,
  ],
  read: async ([listPath], flags) =>
    collect({
      layout: await readLayoutFlags(flags),
      output: await readOutputPlan(forShears(flags)),
      date: readDateFlag(flags.date),
      list: await readList(listPath, flags.sizes),
    }),
  make: ({ list, layout, output, date }) => layOutList(list, layout, output, date),
  report: { text: sheetsReportText, json: ({ report }, warnings) => ({ ...report, warnings }) },
});

async function readList(path: string | undefined, sizes: string | undefined): Promise<Result<CutList>> {
  if (path !== undefined && sizes === undefined) return resultOf('cutList', path);
  if (path === undefined && sizes !== undefined) return typedSizes(sizes);
  return failure(flagProblem('sheets', 'give a cut list or --sizes, one of the two'));
}

function typedSizes(text: string): Result<CutList> {
  const pieces: CutPiece[] = [];
  for (const [i, item] of text.split(',').entries()) {
    const [, length = '', width = '', times = '1'] = /^\s*([^x×:]+)[x×]([^x×:]+?)(?::\s*(\d{1,5}))?\s*$/i.exec(item) ?? [];
    const sides = [length, width].map((side) => parseLength(side, 'mm'));
    const [along, across] = sides;
    if (!along?.ok || !across?.ok || Number(times) < 1)
      return failure(flagProblem('--sizes', `${quote(item)} is no size; write length x width : how many, as 168x20:8`));
    const code = `SIZE-${i + 1}`;
    pieces.push({
      id: code,
      code,
      side: null,
      block: null,
      plate: null,
      length: along.mm,
      width: across.mm,
      quantity: Number(times),
      marks: [],
      warnings: [],
      invented: false,
      hand: null,
    });
  }
  return success({ pieces, settings: null });
}
