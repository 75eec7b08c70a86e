import * as z from 'zod';
import { readText } from '../files/read-file.ts';
import type { Pattern } from '../pattern/pattern.ts';
import { type CutterProfile, cutterById, cutters, readCutter } from '../sheet/cutter/cutter-profile.ts';
import { forCutter } from '../sheet/cutter/for-cutter.ts';
import { laserAllowed } from '../sheet/cutter/laser-material.ts';
import { CONTENTS, type MachineChoices, machineDrawing } from '../sheet/cutter/machine-drawing.ts';
import { getOwn, parseJsonText } from '../units/json-text.ts';
import { parseLength } from '../units/length.ts';
import { plain } from '../units/number.ts';
import { quote, visible } from '../units/quote.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';
import { didYouMean } from '../units/typed-name.ts';
import { DEFAULT_OUTPUT_SETTINGS, type DxfSettings, type OutputSettings } from '../writers/output-settings.ts';
import { readBed } from './flags/bed-flag.ts';
import type { CutterFlags } from './flags/cutter-flags.ts';
import { flagProblem } from './flags/flag.ts';

/** What the flags say of machines: how the pattern is made ready, and how the files look. */
export interface CutterPlan {
  /** Null: no machine was named and nothing is asked of one, so outlines stay the true edges, once round each. */
  readonly cutter: { readonly profile: CutterProfile; readonly shareEdges: boolean } | null;
  readonly settings: OutputSettings;
  /** How much of the drawing the files hold, and the bed that it must fit. */
  readonly machine: MachineChoices;
}

/** A profile is a page of text. */
const LARGEST_PROFILE = 64 * 1024;

/**
 * The plan that the flags ask for, with all their problems at once; a laser's caution comes as a warning. `kept`: what a drawing says that it was
 * made for, which holds where no flag says otherwise; the material and its permission are asked for anew.
 */
export async function readCutterPlan(flags: CutterFlags, kept: KeptMachine | null = null): Promise<Result<CutterPlan>> {
  const problems: Problem[] = [];
  const length = (flag: string, text: string | undefined, low: number, high: number): number | undefined => {
    if (text === undefined) return undefined;
    const read = parseLength(text, 'mm', { zero: true });
    if (!read.ok) problems.push(flagProblem(flag, read.reason));
    else if (read.mm < low || read.mm > high) problems.push(flagProblem(flag, `${plain(read.mm, 4)} mm is outside ${low} to ${high} mm`));
    else return read.mm;
    return undefined;
  };
  const asked = {
    kerf: length('--kerf', flags.kerf, 0, 6),
    leadIn: length('--lead-in', flags.leadIn, 0, 10),
    bridges: wholeNumber('--bridges', flags.bridges, 12, problems),
    bridgeWidth: length('--bridge-width', flags.bridgeWidth, 0.2, 5),
  };
  const given = Object.fromEntries(Object.entries(asked).filter(([, value]) => value !== undefined));
  const chordError = length('--dxf-chord-error', flags.dxfChordError, 0.001, 0.5);
  if (flags.dxfChordError !== undefined && flags.dxfArcs !== 'lines')
    problems.push(flagProblem('--dxf-chord-error', 'needs --dxf-arcs lines'));
  if (flags.bridgeWidth !== undefined && flags.bridges === undefined) problems.push(flagProblem('--bridge-width', 'needs --bridges'));
  const named =
    flags.cutter === undefined
      ? kept?.profile
        ? success(kept.profile)
        : null
      : flags.cutter === NO_CUTTER
        ? null
        : await namedCutter(flags.cutter);
  if (named && !named.ok) problems.push(...named.problems);
  const base = named?.ok ? named.value : null;
  const allowed = base
    ? laserAllowed(base, { name: flags.material ?? null, allowsLaser: flags.materialAllowsLaser === true })
    : success(null);
  if (!allowed.ok) problems.push(...allowed.problems);
  const bed = readBed(flags.bed);
  if (!bed.ok) problems.push(...bed.problems);
  const content = flags.content ?? kept?.content ?? (base ? 'cut-and-marks' : 'all');
  if (flags.testSquare === true && content === 'all')
    problems.push(
      flagProblem('--test-square', 'is in every drawing with all its content already; it goes with --content cut or cut-and-marks'),
    );
  if (problems.length > 0 || !bed.ok) return failure(...problems);
  const machine = { content, bed: bed.value ?? kept?.bed ?? null, testSquare: flags.testSquare ?? kept?.testSquare ?? false };
  const wanted = base !== null || Object.keys(given).length > 0 || flags.shareEdges === true;
  const profile = { ...(base ?? cutterById('knife')), ...given } as CutterProfile;
  const dxf = {
    form: flags.dxf ?? DEFAULT_OUTPUT_SETTINGS.dxf.form,
    arcs: flags.dxfArcs ?? DEFAULT_OUTPUT_SETTINGS.dxf.arcs,
    chordError: chordError ?? DEFAULT_OUTPUT_SETTINGS.dxf.chordError,
  } as DxfSettings;
  const settings = base
    ? { ...DEFAULT_OUTPUT_SETTINGS, layers: base.layers as OutputSettings['layers'], stroke: base.stroke, order: base.order, dxf }
    : { ...DEFAULT_OUTPUT_SETTINGS, dxf };
  return success(
    { cutter: wanted ? { profile, shareEdges: flags.shareEdges === true } : null, settings, machine },
    allowed.ok ? allowed.warnings : [],
  );
}

/** The pattern as the plan's machine cuts it; without a machine, or without a part to cut, as it is. */
export function readyForCutter(pattern: Pattern, { cutter, machine }: CutterPlan): Result<Pattern> {
  if (pattern.parts.length === 0) return success(pattern);
  const cut = cutter ? forCutter(pattern, cutter.profile, { shareEdges: cutter.shareEdges }) : success(pattern);
  if (!cut.ok) return cut;
  const drawn = machineDrawing(cut.value, machine);
  if (!drawn.ok) return drawn;
  const warnings = [...cut.warnings, ...drawn.warnings];
  if (!cutter && machine.content === 'all' && machine.bed === null) return success(drawn.value, warnings);
  const { inputs } = drawn.value;
  const kept = { ...(inputs.cutter as object | undefined), ...machine };
  return success({ ...drawn.value, inputs: { ...inputs, cutter: kept } }, warnings);
}

/** Turns off what a drawing was made for. */
const NO_CUTTER = 'none';

/** What a drawing carries of the machine it was made for. */
export interface KeptMachine extends MachineChoices {
  readonly profile: CutterProfile | null;
}

const KeptMachineForm = z.object({
  profile: z.unknown().optional(),
  content: z.enum(CONTENTS).default('all'),
  bed: z.object({ width: z.number().positive(), height: z.number().positive() }).nullable().default(null),
  testSquare: z.boolean().default(false),
});

/** The machine in a drawing's inputs; null when it was made for none. Drawings of earlier versions carry only the profile's id and kerf. */
export function keptMachine(inputs: unknown, source: string): Result<KeptMachine | null> {
  const found = getOwn(inputs, 'cutter');
  if (found === undefined) return success(null);
  const read = KeptMachineForm.safeParse(found);
  if (!read.success) {
    const message = `${visible(source)}: what it says of its machine cannot be read; name the machine with --cutter, or --cutter none.`;
    return failure({ code: 'CUTTER_FORM', where: 'inputs.cutter', message, kind: 'input' });
  }
  const { profile, ...choices } = read.data;
  const named = getOwn(found, 'id');
  const earlier = typeof named === 'string' ? cutterById(named) : undefined;
  if (profile === undefined) {
    const kerf = getOwn(found, 'kerf');
    return success({ ...choices, profile: earlier ? { ...earlier, ...(typeof kerf === 'number' ? { kerf } : {}) } : null });
  }
  const cutter = readCutter(profile, source);
  return cutter.ok ? success({ ...choices, profile: cutter.value }) : cutter;
}

async function namedCutter(name: string): Promise<Result<CutterProfile>> {
  const known = cutterById(name);
  if (known) return success(known);
  if (!/[/\\.]/.test(name)) {
    const ids = cutters().map((profile) => profile.id);
    return failure(flagProblem('--cutter', `there is no cutter ${quote(name)}${didYouMean(name, ids, 'the cutters are')}`));
  }
  const text = await readText(name, LARGEST_PROFILE);
  const json = text.ok ? parseJsonText(text.value, name) : text;
  return json.ok ? readCutter(json.value, name) : json;
}

function wholeNumber(flag: string, text: string | undefined, high: number, problems: Problem[]): number | undefined {
  if (text === undefined) return undefined;
  const value = /^\d{1,3}$/.test(text.trim()) ? Number(text) : Number.NaN;
  if (value <= high) return value;
  problems.push(flagProblem(flag, `${quote(text)} is not a whole number from 0 to ${high}`));
  return undefined;
}
