import type { Command } from 'commander';
import { DIGITS, SIDES } from '../hand/digits.ts';

const MOTION = '<deficit/flexion>';

/** `case`: the visits of one hand, what was made, and what they suggest. */
export function addCaseCommand(program: Command): void {
  const parent = program.command('case').description('keep the visits of a case: measure, make, see, make again');
  addNew(parent);
  addAdd(parent);
  parent
    .command('show')
    .description('show a case as a table')
    .argument('<file>', 'case file (JSON)')
    .option('--json', 'print it as JSON')
    .action(async (file: string, flags: { json?: boolean }) => (await import('./case-show.ts')).caseShow(file, flags.json === true));
  parent
    .command('chart')
    .description('draw PIP motion by visit, what was made, and the band inside which no change is read')
    .argument('<file>', 'case file (JSON)')
    .requiredOption('--out <file.svg>', 'picture to write')
    .option('--force', 'replace a file that exists')
    .action(async (file: string, flags: { out: string; force?: boolean }) => (await import('./case-chart.ts')).caseChartFile(file, flags));
  parent
    .command('report')
    .description('print a case: chart, visits, what was made, what next')
    .argument('<file>', 'case file (JSON)')
    .requiredOption('--out <file.pdf>', 'PDF to write; a name in .svg gets the chart alone')
    .option('--paper <paper>', 'a4, letter, a3, or width x height in mm as 210x300', 'a4')
    .option('--paper-margin <length>', 'what the printer leaves white on each side (default: 10 mm)')
    .option('--force', 'replace a file that exists')
    .action(async (file: string, flags: import('./case-report.ts').CaseReportFlags) =>
      (await import('./case-report.ts')).caseReportFile(file, flags),
    );
  parent
    .command('next')
    .description('what the last two visits suggest, each rule with its source')
    .argument('<file>', 'case file (JSON)')
    .option('--json', 'print it as JSON')
    .action(async (file: string, flags: { json?: boolean }) => (await import('./case-next.ts')).caseNext(file, flags.json === true));
}

/** The flags of `case new` as commander gives them. */
export interface CaseNewFlags {
  readonly code?: string;
  readonly side?: string;
  readonly digit?: string;
  readonly hand?: string;
  readonly note?: string;
  readonly invented?: boolean;
}

function addNew(parent: Command): void {
  parent
    .command('new')
    .description('open a case: a file without visits yet')
    .argument('<file>', 'case file to write (JSON)')
    .option('--code <code>', 'case code of capital letters, digits and hyphens; never a name or a date of birth')
    .option('--side <side>', `hand: ${SIDES.join(' or ')}`)
    .option('--digit <digit>', `digit to be treated: ${DIGITS.join(', ')}`)
    .option('--hand <file>', 'hand file (JSON); gives code, side and target digit where the flags do not')
    .option('--note <text>', 'one line; never who the person is')
    .option('--invented', 'mark the case as made up')
    .action(async (file: string, flags: CaseNewFlags) => (await import('./case-new.ts')).caseNew(file, flags));
}

/** The flags of `case add` as commander gives them. */
export interface CaseAddFlags {
  readonly visit?: string;
  readonly date?: string;
  readonly mpActive?: string;
  readonly mpPassive?: string;
  readonly pipActive?: string;
  readonly pipPassive?: string;
  readonly dipActive?: string;
  readonly dipPassive?: string;
  readonly otherMp?: string;
  readonly otherPip?: string;
  readonly otherDip?: string;
  readonly hand?: string;
  readonly circumference?: string;
  readonly pipCircumference?: string;
  readonly pattern?: string;
  readonly block?: string;
  readonly differential?: string;
  readonly options?: string;
  readonly plateAngle?: string;
  readonly plateFaces?: string;
  readonly flatLength?: string;
  readonly fits?: string;
  readonly redirects?: string;
  readonly marks?: string;
  readonly comment?: string;
  readonly wear?: string;
  readonly json?: boolean;
}

function addAdd(parent: Command): void {
  parent
    .command('add')
    .description('add a visit; at a terminal it asks for what the flags do not say, in the order of measuring')
    .argument('<file>', 'case file (JSON)')
    .option('--visit <file>', 'visit as JSON, see: knucklewright schema visit; flags win over it')
    .option('--date <date>', 'day of the visit, YYYY-MM-DD; never taken from the clock')
    .option('--hand <file>', 'hand file (JSON) measured at this visit')
    .option('--circumference <length>', 'circumference of the treated digit')
    .option('--pip-circumference <length>', 'PIP circumference of the treated digit')
    .option(`--mp-active ${MOTION}`, 'MP motion, as 0/85; hyper 10/85 goes 10 degrees beyond straight')
    .option(`--mp-passive ${MOTION}`, 'the same, moved by the examiner')
    .option(`--pip-active ${MOTION}`, 'PIP motion, as 25/85 (needed)')
    .option(`--pip-passive ${MOTION}`, 'the same, moved by the examiner')
    .option(`--dip-active ${MOTION}`, 'DIP motion, as 0/60')
    .option(`--dip-passive ${MOTION}`, 'the same, moved by the examiner')
    .option(`--other-mp ${MOTION}`, "active MP motion of the other hand's digit")
    .option(`--other-pip ${MOTION}`, "active PIP motion of the other hand's digit")
    .option(`--other-dip ${MOTION}`, "active DIP motion of the other hand's digit")
    .option('--pattern <file>', 'made: the pattern that was cut, as knucklewright wrote it (SVG, DXF or PDF)')
    .option('--block <id>', 'made: a strip with this block')
    .option('--differential <degrees>', 'made: differential of the strip')
    .option('--options <file>', 'made: options file of the strip (JSON)')
    .option('--plate-angle <degrees>', 'made: a plate that holds the MP joint at this angle')
    .option('--plate-faces <faces>', 'made: dorsal, palmar or both (default: dorsal)')
    .option('--flat-length <mm>', 'made: length of the flat pattern (default: as drawn from the hand in the case)')
    .option('--fits <yes|no>', 'seen: whether it fits')
    .option('--redirects <yes|no>', 'seen: whether it redirects the motion to the PIP joint')
    .option('--marks <yes|no>', 'seen: whether it leaves marks on the skin that stay')
    .option('--comment <text>', 'seen: one line; never who the person is')
    .option('--wear <hours>', 'hours worn a day since the visit before, 0 to 24')
    .option('--json', 'print the case as JSON afterwards')
    .action(async (file: string, flags: CaseAddFlags) => (await import('./case-add.ts')).caseAdd(file, flags));
}
