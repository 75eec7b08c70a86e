import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { BY_NIGHT } from '../by-night.ts';
import type { FaultKind } from './at-call.mjs';

/** The built command and the demo hand, for tests that break what is around the command. */

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));
export const COMMAND = join(ROOT, 'dist', 'knucklewright.js');
export const DEMO = join(ROOT, 'fixtures', 'demo-hand.json');
export const isRoot = process.getuid?.() === 0;

/** A test that starts the command many times, on a machine that may be busy with other things; ms. */
export const LONG = 600_000;

export interface Ended {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export function run(args: readonly string[], environment: NodeJS.ProcessEnv = {}): Ended {
  return spawnSync(process.execPath, [COMMAND, ...args], { encoding: 'utf8', cwd: tmpdir(), env: { ...process.env, ...environment } });
}

export function start(args: readonly string[]): ChildProcess {
  return spawn(process.execPath, [COMMAND, ...args], { cwd: tmpdir(), stdio: ['ignore', 'pipe', 'pipe'] });
}

/** When the process has ended, however it did. */
export function ended(child: ChildProcess): Promise<Ended> {
  let stdout = '';
  let stderr = '';
  child.stdout?.setEncoding('utf8').on('data', (text: string) => {
    stdout += text;
  });
  child.stderr?.setEncoding('utf8').on('data', (text: string) => {
    stderr += text;
  });
  return new Promise((done) => child.on('close', (status) => done({ status, stdout, stderr })));
}

export function scratchFolder(name: string): string {
  return mkdtempSync(join(tmpdir(), `${name}-`));
}

/** Names and contents of a folder's visible files; leftovers of a killed process are hidden ones. */
export function visibleFiles(folder: string): Readonly<Record<string, string>> {
  const names = readdirSync(folder).filter((name) => !name.startsWith('.'));
  return Object.fromEntries(names.sort().map((name) => [name, readFileSync(join(folder, name), 'utf8')]));
}

/** A stack trace or a word of Node's own: what no person should meet. */
export const INNARDS = /\n\s+at |node:internal|Unhandled|FAULT|Error:/;

/** Loaded before a program it makes one of its calls of the disk fatal; see at-call.mjs. */
const AT_CALL = `--import=${pathToFileURL(join(ROOT, 'tests', 'faults', 'at-call.mjs'))}`;

/** Runs a program of Node with a fault at the how-manieth call of the disk; 0 for none. */
export function runWithFault(program: string, args: readonly string[], at: number, kind: FaultKind): Ended {
  return spawnSync(process.execPath, [program, ...args], { encoding: 'utf8', cwd: tmpdir(), env: faultAt(at, kind) });
}

/** The same, not waited for. */
export function startWithFault(program: string, args: readonly string[], at: number, kind: FaultKind): ChildProcess {
  return spawn(process.execPath, [program, ...args], { cwd: tmpdir(), stdio: ['ignore', 'pipe', 'pipe'], env: faultAt(at, kind) });
}

function faultAt(at: number, kind: FaultKind): NodeJS.ProcessEnv {
  return { ...process.env, NODE_OPTIONS: AT_CALL, FAULT_AT: String(at), FAULT_KIND: kind };
}

/** The names of the calls of the disk that a program makes. */
export function callsOf(program: string, args: readonly string[]): readonly string[] {
  const folder = scratchFolder('calls');
  const log = join(folder, 'log');
  const env = { ...process.env, NODE_OPTIONS: AT_CALL, FAULT_AT: '0', FAULT_KIND: 'kill', FAULT_LOG: log };
  const { status, stderr } = spawnSync(process.execPath, [program, ...args], { encoding: 'utf8', cwd: tmpdir(), env });
  const calls = status === 0 ? readFileSync(log, 'utf8').split('\n') : [];
  rmSync(folder, { recursive: true });
  if (status !== 0) throw new Error(stderr);
  return calls;
}

/** By night, and where faults are counted, each of the calls, from 1; by day of each kind the last, which leaves most behind, but for folders. */
export function callsTried(calls: readonly string[]): readonly number[] {
  const every = BY_NIGHT || process.env.KNUCKLEWRIGHT_KILLS !== undefined || process.env.KNUCKLEWRIGHT_TELL !== undefined;
  const all = calls.map((_, k) => k + 1);
  return all.filter((at) => {
    const name = calls[at - 1] ?? '';
    return every || (calls.lastIndexOf(name) === at - 1 && !/^(mkdir|rmdir)$/.test(name));
  });
}

/** A line that scripts/reliability.mjs counts: so many faults of a kind were made, and what had to hold held after each. */
export function tellKills(kind: string, count: number, of: string): void {
  if (process.env.KNUCKLEWRIGHT_TELL !== undefined) process.stdout.write(`faults: ${count} | ${kind} | ${of}\n`);
}
