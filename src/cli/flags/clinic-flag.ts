import { readJson } from '../../files/read-file.ts';
import { getOwn } from '../../units/json-text.ts';
import { type Result, success } from '../../units/result.ts';
import { CLINIC_FLAGS, CLINIC_OPTIONS, type ClinicFlag, type ClinicSettings, readClinicFile } from '../clinic-file.ts';
import { type AnyOption, flag } from './flag.ts';

/** Names the clinic's file for one run. Every command that takes a value such a file may hold has it. */
export const clinicFlag = flag(
  '--clinic <file>',
  "the clinic's own file, see: knucklewright schema clinic (default: KNUCKLEWRIGHT_CLINIC, else none); none: without it",
);
const NONE = 'none';
const VARIABLE = 'KNUCKLEWRIGHT_CLINIC';

/** Flags as a command gets them once the clinic's file was read. */
export interface WithClinic {
  readonly fromClinic?: ClinicSettings | undefined;
}

/** Where a value came from. */
export interface ValueSource {
  readonly from: 'flag' | 'options' | 'clinic' | 'default';
  readonly value?: unknown;
}

/** Where the values came from that a clinic's file may hold, by their names; `file` is that file, or null. */
export interface ValuesFrom {
  readonly file: string | null;
  readonly values: Readonly<Record<string, ValueSource>>;
}

/** What is settled by a clinic's file for a command: the flags with what it says where the person said nothing, and where each value came from. */
export interface Settled<Flags> {
  readonly flags: Flags & WithClinic;
  readonly valuesFrom: ValuesFrom;
}

const keyOf = (option: AnyOption): string => option.attributeName();

/** Whether a command takes a value that a clinic's file may hold. */
export function usesClinic(options: readonly AnyOption[]): boolean {
  const keys: readonly string[] = [...CLINIC_FLAGS, 'options'];
  return options.some((option) => keys.includes(keyOf(option)));
}

/**
 * Flags win over the options file, that over the clinic's file, that over defaults. Fails as `readClinicFile`.
 * @param isGiven whether the person typed the flag of this key
 * @param leaves what the command takes from elsewhere where no flag says it
 */
export async function settleClinic<Flags extends object>(
  flags: Flags,
  options: readonly AnyOption[],
  isGiven: (key: string) => boolean,
  leaves: readonly ClinicFlag[] = [],
  environment: NodeJS.ProcessEnv = process.env,
): Promise<Result<Settled<Flags>>> {
  const typed = getOwn(flags, 'clinic');
  const path = typeof typed === 'string' ? typed : environment[VARIABLE];
  const read = path === undefined || path === '' || path === NONE ? success(null) : await readClinicFile(path);
  if (!read.ok) return read;
  const clinic = read.value;
  const keys = options.map(keyOf);
  const own = CLINIC_FLAGS.filter((key) => keys.includes(key) && !leaves.includes(key));
  const taken = Object.fromEntries(
    own.flatMap((key) => (clinic?.flags[key] === undefined || isGiven(key) ? [] : [[key, clinic.flags[key]]])),
  );
  const optionsFile = keys.includes('options') ? getOwn(flags, 'options') : undefined;
  const written = typeof optionsFile === 'string' ? await readJson(optionsFile) : null;
  const values: Record<string, ValueSource> = {};
  for (const key of own) {
    if (isGiven(key)) values[key] = { from: 'flag', value: getOwn(flags, key) };
    else if (key in taken) values[key] = { from: 'clinic', value: taken[key] };
    else values[key] = { from: 'default', ...(getOwn(flags, key) === undefined ? {} : { value: getOwn(flags, key) }) };
  }
  for (const key of keys.includes('options') ? CLINIC_OPTIONS : []) {
    const inFile = written?.ok ? getOwn(written.value, key) : undefined;
    const inClinic = clinic?.options[key];
    if (isGiven(key)) values[key] = { from: 'flag', value: getOwn(flags, key) };
    else if (inFile !== undefined) values[key] = { from: 'options', value: inFile };
    else if (inClinic !== undefined) values[key] = { from: 'clinic', value: inClinic };
    else values[key] = { from: 'default' };
  }
  const settled = { ...flags, ...taken, ...(clinic === null ? {} : { fromClinic: clinic }) };
  return success({ flags: settled, valuesFrom: { file: clinic?.path ?? null, values } });
}
