// Loaded before a program (NODE_OPTIONS=--import) or by a test: counts every call that changes the disk and makes one of them fatal.
// In a program the fault comes from FAULT_AT, FAULT_KIND and FAULT_LOG (a file that gets the names of all calls at the end).
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { dirname } from 'node:path';

/**
 * What happens at the call: `kill`, the process ends before it; `torn`, after half of a write; `lost-data`, and what was written to a file
 * and never flushed is lost, as after a power cut; `lost-names`, and so are new names whose folder was never flushed; EIO and ENOSPC, the
 * system says so and the program goes on; SIGINT and SIGTERM, it is asked to stop.
 * @typedef {'kill' | 'torn' | 'lost-data' | 'lost-names' | 'EIO' | 'ENOSPC' | 'SIGINT' | 'SIGTERM'} FaultKind
 */

/** Names of the calls since the last `arm`. @type {string[]} */
let calls = [];
/** @type {{ at: number, kind: FaultKind } | null} */
let fault = null;

/** Paths by handle, what of them is not flushed, and names that changed since their folder was flushed. */
const paths = new WeakMap();
const unflushed = new Set();
let renamed = [];

/** @param {number} at the how-manieth call fails, from 1; 0 only counts @param {FaultKind} kind */
export function arm(at, kind) {
  calls = [];
  fault = { at, kind };
  unflushed.clear();
  renamed = [];
}

/** @returns {readonly string[]} the names of the calls since `arm` */
export function disarm() {
  fault = null;
  return calls;
}

/** The next call: passes, or throws, or never returns. @param {string} name @param {(() => void)} [half] does half of a write */
function met(name, half) {
  if (fault === null) return;
  calls.push(name);
  if (calls.length !== fault.at) return;
  const { kind } = fault;
  if (kind === 'EIO' || kind === 'ENOSPC') throw Object.assign(new Error(`${kind}: made up, ${name}`), { code: kind });
  if (kind === 'SIGINT' || kind === 'SIGTERM') return void process.kill(process.pid, kind);
  if (kind === 'torn') half?.();
  if (kind === 'lost-data') for (const path of unflushed) if (real.existsSync(path)) real.truncateSync(path, 0);
  if (kind === 'lost-names') for (const undo of renamed.toReversed()) undo();
  process.kill(process.pid, 'SIGKILL');
  // The signal ends the process before anything more runs.
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0);
}

const real = { ...fs };
const promises = { ...fs.promises };
/** A lock is not flushed: after a power cut an empty one is broken, which has a test of its own. */
const isLock = (path) => /\.lock\b/.test(String(path));
const contentOf = (path) => (real.existsSync(path) && real.lstatSync(path).isFile() ? real.readFileSync(path) : null);
const put = (path, content) => (content === null ? real.rmSync(path, { force: true }) : real.writeFileSync(path, content));
const noteName = (path) => {
  if (fault === null) return;
  const before = contentOf(path);
  if (!isLock(path)) renamed.push(Object.assign(() => put(path, before), { folder: dirname(String(path)) }));
};
const noteData = (path) => {
  if (fault !== null && !isLock(path)) unflushed.add(String(path));
};

fs.promises.open = async (path, flags = 'r', ...rest) => {
  const writes = flags !== 'r';
  if (writes) met(`open ${flags}`);
  const handle = await promises.open(path, flags, ...rest);
  paths.set(handle, String(path));
  return handle;
};
fs.promises.writeFile = async (path, content, ...rest) => {
  const to = typeof path === 'object' && paths.has(path) ? paths.get(path) : path;
  met('writeFile', () => real.writeFileSync(to, content.slice(0, content.length / 2), ...rest));
  noteData(to);
  return promises.writeFile(path, content, ...rest);
};
fs.promises.rename = async (from, to) => {
  met('rename');
  noteName(from);
  noteName(to);
  if (unflushed.delete(String(from))) unflushed.add(String(to));
  return promises.rename(from, to);
};
fs.promises.link = async (from, to) => {
  met('link');
  noteName(to);
  if (unflushed.has(String(from))) unflushed.add(String(to));
  return promises.link(from, to);
};
fs.promises.copyFile = async (from, to, ...rest) => {
  met('copyFile');
  noteData(to);
  return promises.copyFile(from, to, ...rest);
};
for (const name of ['unlink', 'rm']) {
  fs.promises[name] = async (path, ...rest) => {
    met(name);
    noteName(path);
    return promises[name](path, ...rest);
  };
}
for (const name of ['mkdir', 'rmdir']) {
  fs.promises[name] = async (...args) => {
    met(name);
    return promises[name](...args);
  };
}

const own = await promises.open(process.execPath, 'r');
const Handle = Object.getPrototypeOf(own);
await own.close();
for (const name of ['appendFile', 'writeFile', 'write']) {
  const before = Handle[name];
  Handle[name] = async function (content, ...rest) {
    const path = paths.get(this);
    if (path === undefined) return before.call(this, content, ...rest);
    met(name, () => real.appendFileSync(path, content.slice(0, content.length / 2)));
    noteData(path);
    return before.call(this, content, ...rest);
  };
}
const sync = Handle.sync;
Handle.sync = async function () {
  const path = paths.get(this) ?? '';
  const isFolder = real.existsSync(path) && real.statSync(path).isDirectory();
  met(isFolder ? 'sync folder' : 'sync');
  await sync.call(this);
  if (isFolder) renamed = renamed.filter(({ folder }) => folder !== path);
  else unflushed.delete(path);
};
syncBuiltinESMExports();

if (process.env.FAULT_KIND) {
  arm(Number(process.env.FAULT_AT ?? 0), process.env.FAULT_KIND);
  const log = process.env.FAULT_LOG;
  if (log) process.on('exit', () => real.writeFileSync(log, calls.join('\n')));
}
