import { readHandFile } from '../../files/read-hand-file.ts';
import { chooseForHand, handCautions, plannedAngle, stopsFor } from '../../pattern/plan-hand.ts';
import { designFor } from '../../pattern/plate/read-plate.ts';
import { collect, failure, type Problem, type Result, success } from '../../units/result.ts';
import { kebabCase } from '../../units/typed-name.ts';
import { defineCommand } from '../define-command.ts';
import { type Drawing, drawnReport, drawRequest } from '../draw-request.ts';
import { confirmsFlag, dateFlag, readDateFlag } from '../flags/common-flags.ts';
import { namedBlock, namedPlate, readAngleFlag, readDigitsFlag } from '../flags/device-flags.ts';
import { argument, type FlagsOf, flag, flagProblem } from '../flags/flag.ts';
import {
  optionsFileFlag,
  PLATE_KEYS,
  readPlateOptionFlags,
  readStripOptionFlags,
  STRIP_KEYS,
  stripAndPlateOptionFlags,
} from '../flags/option-flags.ts';
import { outputFlags, readOutputPlan } from '../flags/output-flags.ts';
import { readShelfFlag, shelfFlag } from '../flags/shelf-flag.ts';

const flags = [
  flag('--block <id>', 'block by id (knucklewright blocks), a block file, or auto: what knucklewright plan puts first').default('auto'),
  confirmsFlag,
  flag('--plate <name>', 'draw a plate instead: dorsal, palmar or both, a plate by id (knucklewright plates), or a plate file'),
  flag('--digits <list>', 'plate: digits whose MP joints are held, neighbours with commas between'),
  flag('--angle <degrees>', "plate: MP flexion, 0 to 90; without it the preset's, else the plan's"),
  flag('--paper-trial', 'draw a paper strip as well, to be woven round the fingers and read before the plastic is cut (--paper-reading)'),
  shelfFlag,
  optionsFileFlag,
  dateFlag,
  outputFlags,
  stripAndPlateOptionFlags,
] as const;
type DrawFlags = FlagsOf<typeof flags>;

/** `draw`: from a hand file to pattern files. */
export const draw = defineCommand({
  name: 'draw',
  group: 'Suggest and draw',
  about: 'draw the strip, or with --plate the plate, for a measured hand, at full scale',
  examples: [
    'draw hand.json --out patterns',
    'draw hand.json --formats pdf --paper letter',
    'draw hand.json --formats svg --out - > strip.svg',
  ],
  standardInput: true,
  standardOutput: true,
  args: [argument('<hand>', 'hand file (JSON), see: knucklewright schema hand')],
  flags,
  read: ([handFile], given) => (given.plate === undefined ? readStrip(handFile, given) : readPlate(handFile, given.plate, given)),
  make: drawRequest,
  report: drawnReport,
});

async function readStrip(handFile: string, given: DrawFlags): Promise<Result<Drawing>> {
  const hand = await readHandFile(handFile);
  const options = await readStripOptionFlags(given);
  const confirmed = { clinicianConfirms: given.clinicianConfirms === true };
  // Without a hand or options there is nothing to choose by; their problems are told.
  const auto = hand.ok && options.ok ? chooseForHand(hand.value, options.value, confirmed) : null;
  const read = collect({
    hand,
    options,
    output: await readOutputPlan(given),
    date: readDateFlag(given.date),
    chosen: given.block === 'auto' ? (auto ?? failure<never>()) : await namedBlock(given.block),
    shelf: await readShelfFlag(given.shelf),
    applicable: rejectInapplicableFlags(given, 'strip'),
  });
  if (!read.ok) return read;
  const { chosen, output, shelf, ...inputs } = read.value;
  const request = {
    kind: 'strip',
    hand: inputs.hand,
    block: chosen.block,
    options: inputs.options,
    date: inputs.date,
    language: output.settings.pdf.language,
  } as const;
  return success({ request, why: chosen.why, output, paperTrial: given.paperTrial === true, shelf, keepsShelf: given.out !== undefined }, [
    ...read.warnings,
    ...handCautions(inputs.hand),
  ]);
}

async function readPlate(handFile: string, name: string, given: DrawFlags): Promise<Result<Drawing>> {
  const preset = await namedPlate(name);
  const read = collect({
    hand: await readHandFile(handFile),
    preset,
    digits: readDigitsFlag(given.digits),
    angle: readAngleFlag(given.angle),
    options: await readPlateOptionFlags(given, preset.ok ? [{ origin: preset.value.id, values: preset.value.options }] : []),
    output: await readOutputPlan(given),
    date: readDateFlag(given.date),
    applicable: rejectInapplicableFlags(given, 'plate'),
  });
  if (!read.ok) return read;
  const { hand, options, date, output, digits, angle } = read.value;
  const wishes = { clinicianConfirms: given.clinicianConfirms === true };
  // Without an angle of its own the plate is the plan's, and what stops the plan stops the plate.
  const stops = angle === null && read.value.preset.angle === null ? stopsFor(hand, wishes) : [];
  if (stops.length > 0) return failure(...stops);
  const planned = plannedAngle(hand, wishes);
  const plate = designFor(hand, read.value.preset, { digits, angle, planned });
  if (!plate.ok) return failure(...plate.problems.map(withFlag));
  const request = { kind: 'plate', hand, plate: plate.value, options, date, language: output.settings.pdf.language } as const;
  return success({ request, why: null, output }, [...read.warnings, ...handCautions(hand), ...plate.warnings]);
}

/** Says which flag answers a problem of the design. */
function withFlag(problem: Problem): Problem {
  const flagName = { PLATE_ANGLE: '--angle', NO_TARGET: '--digits' }[problem.code];
  return flagName ? { ...problem, message: `${problem.message} Use ${flagName}.` } : problem;
}

const KEYS: Readonly<Record<'strip' | 'plate', readonly string[]>> = {
  strip: ['paperTrial', ...STRIP_KEYS],
  plate: ['digits', 'angle', ...PLATE_KEYS],
};

/** Flags that mean nothing for what is drawn: they are refused, never passed over. */
export function rejectInapplicableFlags(flags: { readonly block: string }, drawn: 'strip' | 'plate'): Result<null> {
  const [mine, others] = drawn === 'strip' ? [KEYS.strip, KEYS.plate] : [KEYS.plate, KEYS.strip];
  const given = Object.entries(flags).flatMap(([key, value]) => (value === undefined ? [] : [key]));
  const what = drawn === 'strip' ? 'a plate; add --plate, or leave it out' : 'a strip; leave it out, or leave out --plate';
  const problems = others
    .filter((key) => !mine.includes(key) && given.includes(key))
    .map((key) => flagProblem(`--${kebabCase(key)}`, `belongs to ${what}`));
  if (drawn === 'plate' && flags.block !== 'auto') problems.push(flagProblem('--block', `belongs to ${what}`));
  return problems.length > 0 ? failure(...problems) : success(null);
}
