import type { Severity } from '../../inspect/finding-kinds.ts';
import { type Inspection, type InspectSettings, notRead } from '../../inspect/inspection.ts';
import { readRoleRules } from '../../inspect/roles.ts';
import { collect, failure, type Problem, type Result, success } from '../../units/result.ts';
import { BoundedReading } from '../bounded/bounded-reading.ts';
import { defineCommand } from '../define-command.ts';
import { describeInspection } from '../describe-inspection.ts';
import { EXIT } from '../exit.ts';
import { bedFlag, readBed } from '../flags/bed-flag.ts';
import { argument, flag } from '../flags/flag.ts';
import { jsonFlag } from '../flags/output-flags.ts';
import { isStandardInput } from '../standard-input.ts';

interface Inspected {
  readonly file: string;
  readonly found: Inspection;
}

/** Which findings end with exit 3. */
const FAILING: Readonly<Record<'stop' | 'look' | 'never', readonly Severity[]>> = { stop: ['stop'], look: ['stop', 'look'], never: [] };

/** `inspect`: exit 1 when a file cannot be read at all, 3 with findings of the severity that is asked for, else 0. */
export const inspect = defineCommand({
  name: 'inspect',
  group: 'Files and printers',
  about: "read SVG, DXF or PDF back, ours or anybody else's: parts, sizes, layers, units, and what a cutter would trip over",
  examples: ['inspect strip.dxf --bed 610x457', 'inspect *.svg --fail-on look --json'],
  standardInput: true,
  args: [argument('<files...>', 'the files; what each is, is told by its content')],
  flags: [
    flag('--fail-on <severity>', 'findings that end with exit 3')
      .choices(['stop', 'look', 'never'] as const)
      .default('stop' as const),
    flag('--roles <rules>', "which lines are for what, before their layers' names: '#f00=cut,layer:SCORE=mark,aci:5=mark'"),
    bedFlag,
    jsonFlag,
  ],
  read: async (args, flags) => {
    const read = collect({
      bed: readBed(flags.bed),
      roles: flags.roles === undefined ? success([]) : readRoleRules(flags.roles, '--roles'),
    });
    if (!read.ok) return read;
    const { bed, roles } = read.value;
    const settings: InspectSettings = { roles, ...(bed ? { bed } : {}) };
    return success({ files: args[0], settings, failing: FAILING[flags.failOn] });
  },
  make: async ({
    files,
    settings,
    failing,
  }): Promise<Result<{ readonly done: readonly Inspected[]; readonly failing: readonly Severity[] }>> => {
    const done: Inspected[] = [];
    const problems: Problem[] = [];
    const reading = new BoundedReading();
    try {
      for (const file of files) {
        const read = await reading.read('inspect', file, settings);
        if (read.stopped !== null) done.push({ file, found: notRead(null, { code: 102, message: `stopped reading: ${read.stopped}` }) });
        else if (read.value.ok) done.push({ file, found: read.value.value });
        else problems.push(...read.value.problems);
      }
    } finally {
      reading.close();
    }
    return problems.length > 0 ? failure(...problems) : success({ done, failing });
  },
  report: {
    text: ({ done }) => done.map(({ file, found }) => describeInspection(found, file)).join('\n'),
    json: ({ done }) => {
      const found = done.map((one) => ({ file: one.file, ...one.found }));
      const [only, more] = found;
      const isAlone = only !== undefined && more === undefined && !isStandardInput(only.file);
      return isAlone ? only : { schema: 'knucklewright/inspections@1', files: found };
    },
  },
  exit: ({ done, failing }) => {
    const findings = done.flatMap(({ found }) => found.findings);
    if (findings.some(({ code }) => code === 101 || code === 102)) return EXIT.badInput;
    return findings.some(({ severity }) => failing.includes(severity)) ? EXIT.refused : EXIT.done;
  },
});
