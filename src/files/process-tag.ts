import { createHash, randomBytes } from 'node:crypto';
import { readFileSync, readlinkSync } from 'node:fs';
import { hostname } from 'node:os';

/**
 * A process as a word that fits into a file's name: computer, start of the system, process namespace, number, start of the process, and
 * something random, so that no two tags are the same. What a system does not tell stands as zeros. `tagPattern` matches it.
 */
export type ProcessTag = string;

/** What the writer of a tag is by now. `unknown`: this computer, but it cannot be told; `elsewhere`: another computer. */
export type Fate = 'alive' | 'dead' | 'unknown' | 'elsewhere';

const SHORT = 8;
const NONE = '0'.repeat(SHORT);
export const TAG_PATTERN = String.raw`[0-9a-f]{8}-[0-9a-f]{8}-[0-9a-f]{8}-\d{1,10}-\d{1,20}-[0-9a-f]{12}`;
const TAG = new RegExp(`^${TAG_PATTERN}$`);

interface Place {
  readonly computer: string;
  /** Changes with every start of the system. */
  readonly boot: string;
  /** Process numbers mean something only inside their namespace: containers of one computer have one each. */
  readonly namespace: string;
}

let here: Place | null = null;
let ownStart: string | null = null;

/** A new tag of this process. */
export function newTag(): ProcessTag {
  const { computer, boot, namespace } = place();
  ownStart ??= startOf(process.pid)?.ticks ?? '0';
  return [computer, boot, namespace, process.pid, ownStart, randomBytes(6).toString('hex')].join('-');
}

/** The process number in a tag; null when the text is no tag. */
export function pidOfTag(tag: string): number | null {
  return TAG.test(tag) ? Number(tag.split('-')[3]) : null;
}

/** Whether the process that made the tag still runs. A number that another process has by now is no life: on Linux the start tells them apart. */
export function fateOf(tag: ProcessTag): Fate {
  const pid = pidOfTag(tag);
  if (pid === null) return 'unknown';
  const [computer = '', boot = '', namespace = '', , start = ''] = tag.split('-');
  const now = place();
  if (computer !== now.computer) return 'elsewhere';
  if (boot !== now.boot) return boot === NONE || now.boot === NONE ? 'unknown' : 'dead';
  if (namespace !== now.namespace) return 'unknown';
  const found = startOf(pid);
  if (found === null || start === '0') return isGone(pid) ? 'dead' : 'unknown';
  return found.ticks === start && !found.ended ? 'alive' : 'dead';
}

/** Whether no process of this computer has the number. */
export function isGone(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return false;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'ESRCH';
  }
}

function place(): Place {
  // Two computers may have one name, and copies of a system one id; both together are the same only for the same computer.
  here ??= {
    computer: short(`${hostname()}\n${textOf('/etc/machine-id')}`),
    boot: short(textOf('/proc/sys/kernel/random/boot_id')),
    namespace: short(namespaceOf()),
  };
  return here;
}

/** When a process started, in clock ticks since the system's start, and whether it has ended and only waits to be counted. From proc(5), `stat`. */
function startOf(pid: number): { readonly ticks: string; readonly ended: boolean } | null {
  const text = textOf(`/proc/${pid}/stat`);
  // The second field is the program's name in brackets, which may itself hold brackets and blanks.
  const fields = text.slice(text.lastIndexOf(')') + 2).split(' ');
  const [state = '', ticks = ''] = [fields[0], fields[19]];
  return /^\d+$/.test(ticks) ? { ticks, ended: state === 'Z' || state === 'X' } : null;
}

function namespaceOf(): string {
  try {
    return readlinkSync('/proc/self/ns/pid');
  } catch {
    return '';
  }
}

/** Empty where the system has no such file. */
function textOf(path: string): string {
  try {
    return readFileSync(path, 'utf8').trim();
  } catch {
    return '';
  }
}

function short(text: string): string {
  return text === '' ? NONE : createHash('sha256').update(text).digest('hex').slice(0, SHORT);
}
