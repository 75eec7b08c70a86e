import { readJson, readText } from '../files/read-file.ts';
import { parseHandText } from '../hand/read-hand.ts';
import { planHand } from '../pattern/plan-hand.ts';
import { readStripOptions } from '../pattern/strip/read-options.ts';
import { quote } from '../units/quote.ts';
import { describePlan } from './describe-plan.ts';
import { fail, warn } from './exit.ts';
import type { PlanFlags } from './plan-command.ts';
import { planJson } from './plan-json.ts';

/** Runs `plan`: reads everything, decides, reports; ends with 3 and the reasons when nothing is suggested though something is lacking. */
export async function plan(handFile: string, flags: PlanFlags): Promise<void> {
  const text = await readText(handFile);
  const hand = text.ok ? parseHandText(text.value, handFile) : text;
  const file = flags.options === undefined ? null : await readJson(flags.options);
  const options = readStripOptions([
    ...(file?.ok ? [{ origin: String(flags.options), values: file.value }] : []),
    { origin: 'flags', values: flags.differential === undefined ? {} : { differential: flags.differential } },
  ]);
  const problems = [hand, file, options].flatMap((r) => (r && !r.ok ? r.problems : []));
  if (!hand.ok || !options.ok || problems.length > 0) return fail(problems);
  const made = planHand(hand.value, options.value, { clinicianConfirms: flags.clinicianConfirms === true });
  if (!made.ok) return fail(made.problems);
  const warnings = [...hand.warnings, ...made.value.warnings];
  if (flags.json) process.stdout.write(`${JSON.stringify(planJson(hand.value, made.value, warnings), null, 2)}\n`);
  else {
    warn(warnings);
    process.stdout.write(describePlan(hand.value, made.value, drawArguments(handFile, flags)));
  }
  if (made.value.refusals.length > 0) fail(made.value.refusals);
}

/** As typed after `draw` in a shell; every argument in quotes that is not plain. */
function drawArguments(handFile: string, flags: PlanFlags): string {
  const words = [
    handFile,
    ...(flags.options === undefined ? [] : ['--options', flags.options]),
    ...(flags.differential === undefined ? [] : ['--differential', flags.differential]),
    ...(flags.clinicianConfirms ? ['--clinician-confirms'] : []),
  ];
  return words.map((word) => (/^[\w./,:-]+$/.test(word) ? word : quote(word))).join(' ');
}
