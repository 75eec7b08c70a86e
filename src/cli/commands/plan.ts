import { readHandFile } from '../../files/read-hand-file.ts';
import { planHand } from '../../pattern/plan-hand.ts';
import { quote } from '../../units/quote.ts';
import { collect, success } from '../../units/result.ts';
import { defineCommand } from '../define-command.ts';
import { describePlan, planJson } from '../describe-plan.ts';
import { confirmsFlag, languageFlag, readLanguageFlag } from '../flags/common-flags.ts';
import { argument, flag } from '../flags/flag.ts';
import { optionsFileFlag, readStripOptionFlags } from '../flags/option-flags.ts';
import { jsonFlag } from '../flags/output-flags.ts';

/** `plan`: from a hand file with deficits to strip and plate in their order, with the ranked blocks and the plate's angle. Refusals end with 3 after the report. */
export const plan = defineCommand({
  name: 'plan',
  group: 'Suggest and draw',
  about: 'suggest what to make for the target digit, strip or plate, best first, and why; or say what stops it and whom to ask',
  examples: ['plan hand.json', 'plan - --json < hand.json'],
  standardInput: true,
  args: [argument('<hand>', 'hand file (JSON) with a target and its PIP deficits, see: knucklewright schema hand')],
  flags: [
    flag('--differential <degrees>', 'MP angle between held and enclosed digits (default: 20)'),
    optionsFileFlag,
    confirmsFlag,
    flag('--anyway', 'plan a device for a deficit of 5 to 9 degrees too, where no motion lacks 10'),
    languageFlag,
    jsonFlag,
  ],
  read: async ([handFile], flags) => {
    const read = collect({ hand: await readHandFile(handFile), options: await readStripOptionFlags(flags) });
    if (!read.ok) return read;
    const wishes = { clinicianConfirms: flags.clinicianConfirms === true, anyway: flags.anyway === true };
    const language = readLanguageFlag(flags.language);
    return success({ ...read.value, wishes, language, drawArguments: drawArguments(handFile, flags) }, read.warnings);
  },
  make: ({ hand, options, wishes, ...said }) => {
    const made = planHand(hand, options, wishes);
    return made.ok ? success({ hand, plan: made.value, ...said }, made.value.warnings) : made;
  },
  report: {
    text: (made) => describePlan(made.hand, made.plan, made.drawArguments, made.language),
    json: (made, warnings) => planJson(made.hand, made.plan, warnings),
  },
  exit: (made) => made.plan.refusals,
});

/** As typed after `draw` in a shell; every argument in quotes that is not plain. */
function drawArguments(
  handFile: string,
  flags: { readonly options?: string; readonly differential?: string; readonly clinicianConfirms?: true },
): string {
  const words = [
    handFile,
    ...(flags.options === undefined ? [] : ['--options', flags.options]),
    ...(flags.differential === undefined ? [] : ['--differential', flags.differential]),
    ...(flags.clinicianConfirms ? ['--clinician-confirms'] : []),
  ];
  return words.map((word) => (/^[\w./,:-]+$/.test(word) ? word : quote(word))).join(' ');
}
