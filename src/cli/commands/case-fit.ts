import { loadCase } from '../../files/case-store.ts';
import type { Case } from '../../record/case.ts';
import { type Closing, type ClosingFit, closingFit, closingsOf, FEWEST_STRIPS, type Spread } from '../../record/closing-fit.ts';
import { counted, plain, rounded } from '../../units/number.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { cautionsEnglish } from '../../words/cautions.ts';
import { defineCommand } from '../define-command.ts';
import { argument, flag } from '../flags/flag.ts';
import { jsonFlag } from '../flags/output-flags.ts';

/** `case fit`: how far strips were closed from where they were drawn, and the clearance that would have met them. */
export const caseFit = defineCommand({
  name: 'case fit',
  group: 'Keep a case',
  about: 'over closed cases: how far strips were closed from where they were drawn, and the clearance that would have met them',
  args: [argument('<files...>', 'case files (JSON)')],
  flags: [flag('--all', 'also cases that are not closed yet'), jsonFlag],
  read: ([paths], { all }) => readCases(paths, all === true),
  make: ({ records, all }) => {
    const taken = records.filter((r) => all || r.closed !== null);
    const open = records.filter((r) => !taken.includes(r));
    return success({ taken, open, fit: closingFit(taken.flatMap(closingsOf)) });
  },
  report: {
    text: ({ taken, open, fit }) => fitText(taken, open, fit),
    json: ({ taken, open, fit }, warnings) => ({
      cases: taken.length,
      leftOut: open.map((r) => r.code),
      invented: taken.some((r) => r.invented),
      strips: fit.closings,
      byModel: fit.byModel,
      byPaper: fit.byPaper,
      clearance: fit.clearance,
      fewest: FEWEST_STRIPS,
      suggested: fit.suggested === null ? null : { skinClearance: rounded(fit.suggested, 2) },
      warnings,
    }),
  },
});

interface Cases {
  readonly records: readonly Case[];
  readonly all: boolean;
}

async function readCases(paths: readonly string[], all: boolean): Promise<Result<Cases>> {
  const records: Case[] = [];
  const problems: Problem[] = [];
  for (const path of paths) {
    const read = await loadCase(path);
    if (read.ok) records.push(read.value);
    else problems.push(...read.problems);
  }
  return problems.length > 0 ? failure(...problems) : success({ records, all });
}

function fitText(taken: readonly Case[], open: readonly Case[], fit: ClosingFit): string {
  const lines = [
    `${counted(taken.length, 'case')}, ${counted(fit.closings.length, 'strip')} of which it was noted where they were closed${taken.some((r) => r.invented) ? ' (INVENTED cases among them)' : ''}`,
  ];
  if (open.length > 0) lines.push(`Left out, not closed yet (--all takes them): ${open.map((r) => r.code).join(', ')}`);
  if (fit.closings.length === 0)
    lines.push('', 'Note where a strip was closed at the visit at which it was made: case add --closed-at MM, + beyond the mark.');
  else
    lines.push(
      '',
      'mm from where it was drawn, + longer:',
      ...fit.closings.map(closingLine),
      '',
      ...spreadLines(fit),
      '',
      ...adviceLines(fit),
    );
  return `${lines.join('\n')}\n`;
}

function closingLine({ code, date, block, closedAt, paperReading, wouldMeet }: Closing): string {
  const how = paperReading === null ? '' : `, drawn for a paper reading of ${signed(paperReading)}`;
  const met = wouldMeet === null ? 'no clearance found that meets it' : `a clearance of ${plain(wouldMeet, 2)} would have met it`;
  return `  ${code}  ${date}  ${block}  ${signed(closedAt)}${how}; ${met}`;
}

function spreadLines({ byModel, byPaper, clearance }: ClosingFit): readonly string[] {
  const line = (name: string, of: Spread | null, show: (mm: number) => string) =>
    of === null
      ? []
      : [
          `${name}: median ${show(of.median)} mm of ${of.count}, half within ${plain(of.spread, 2)} of it, all ${show(of.least)} to ${show(of.most)}`,
        ];
  return [
    ...line('Closed, drawn by the model alone', byModel, signed),
    ...line('Closed, drawn for a paper reading', byPaper, signed),
    ...line('Clearance that would have met those drawn by the model alone', clearance, (value) => plain(value, 2)),
  ];
}

function adviceLines({ clearance, suggested }: ClosingFit): readonly string[] {
  if (suggested !== null)
    return [
      `For your own options file (--options): "skinClearance": ${plain(suggested, 2)}`,
      'It takes in how tightly you measure and drape. The paper trial says more of one hand; look at the skin after the first 20 minutes all the same.',
      cautionsEnglish.skin,
    ];
  const count = clearance?.count ?? 0;
  if (count < FEWEST_STRIPS)
    return [
      `Too few to change an option: ${count} of at least ${FEWEST_STRIPS} strips drawn by the model alone. Keep noting where they are closed.`,
    ];
  return [
    'The strips were closed tighter than a strip without any clearance: no option for that is safe. Measure snugly, not tightly, and make the paper trial.',
    cautionsEnglish.skin,
  ];
}

function signed(value: number): string {
  return `${value > 0 ? '+' : ''}${plain(value, 1)}`;
}
