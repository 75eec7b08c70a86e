import { kerfTest, kerfTestWords } from '../../sheet/cutter/kerf-test.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { cautionsEnglish } from '../../words/cautions.ts';
import { terminalSpeech } from '../../words/terminal/terminal-words.ts';
import { defineCommand } from '../define-command.ts';
import { flagProblem } from '../flags/flag.ts';
import { type OutputPlan, outputFlags, readOutputPlan } from '../flags/output-flags.ts';
import { checkOutput, fileLine, type WrittenFile, writePatterns } from '../write-patterns.ts';

/** `kerf-test`: pieces that show what a tool takes away in one material. */
export const kerfTestCommand = defineCommand({
  name: 'kerf-test',
  group: 'Files and printers',
  about: 'pieces to cut from a scrap of one material, which show the kerf of the tool in it',
  args: [],
  flags: [outputFlags],
  read: async (_args, flags): Promise<Result<{ readonly output: OutputPlan; readonly material: string | null }>> => {
    if (flags.kerf !== undefined) return failure(flagProblem('--kerf', 'is what this test finds out; the pieces are cut without any'));
    const output = await readOutputPlan({ ...flags, kerf: '0' });
    return output.ok ? success({ output: output.value, material: flags.material ?? null }, output.warnings) : output;
  },
  make: async ({ output, material }): Promise<Result<{ readonly files: readonly WrittenFile[]; readonly material: string | null }>> => {
    const stem = ['kerf-test', ...(material?.toLowerCase().match(/[a-z0-9]+/g) ?? [])].join('-').slice(0, 60);
    const place = await checkOutput(output, [stem]);
    if (!place.ok) return place;
    const pattern = kerfTest(material);
    if (!pattern.ok) return pattern;
    const files = await writePatterns([{ stem, pattern: pattern.value }], output);
    return files.ok ? success({ files: files.value, material }, files.warnings) : files;
  },
  report: {
    text: ({ files, material }) =>
      `${[...files.map((file) => fileLine(file, terminalSpeech('en'))), ...kerfTestWords(material), cautionsEnglish.laser].join('\n')}\n`,
    json: ({ files, material }, warnings) => ({ material, files, warnings }),
    schema: 'knucklewright/kerf-test@1',
  },
});
