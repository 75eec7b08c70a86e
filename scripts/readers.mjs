// Programs outside the project that read what it writes. The tests that need one say so (tests/readers.ts); this puts them in place.
import { spawn, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';

const readers = JSON.parse(readFileSync(new URL('./readers.json', import.meta.url), 'utf8'));

// Not each file flushed to the disk by itself, which is most of the time of an installation; a flush at its end is enough for readers.
const APT = ['-o', 'Acquire::Retries=1', '-o', 'Acquire::http::Timeout=20', '-o', 'Dpkg::Options::=--force-unsafe-io', '-q'];

/** The readers of the list that are not installed; `night` with those that the nightly run alone needs. */
export function missingReaders({ night = false } = {}) {
  return readers.filter(
    ({ detect: [command, ...args], night: byNight = false }) =>
      (night || !byNight) && spawnSync(command, args, { stdio: 'ignore' }).status !== 0,
  );
}

/**
 * Installs what is missing where that needs no question: as root, with apt-get. Elsewhere it says what is missing and how to install it.
 * Gives the readers that are still missing.
 */
export async function provideReaders(which = {}) {
  let missing = missingReaders(which);
  if (missing.length > 0 && canInstall()) {
    console.log(`installing readers for the tests: ${packages(missing)}`);
    await apt('update');
    await apt('install', '--yes', '--no-install-recommends', ...missing.map((reader) => reader.package));
    missing = missingReaders(which);
  }
  for (const reader of missing) console.log(`missing reader ${reader.name} (Debian package ${reader.package}): ${reader.purpose}`);
  if (missing.length > 0) console.log(`to install: sudo apt-get install ${packages(missing)}`);
  return missing;
}

function canInstall() {
  return process.getuid?.() === 0 && spawnSync('apt-get', ['--version'], { stdio: 'ignore' }).status === 0;
}

function apt(...args) {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  return new Promise((done) => {
    const end = (status) => {
      if (status !== 0) console.log(`apt-get ${args[0]} ended with ${status}`);
      done();
    };
    spawn('apt-get', [...APT, ...args], { stdio: ['ignore', 'ignore', 'inherit'], env })
      .on('close', end)
      .on('error', end);
  });
}

function packages(list) {
  return list.map((reader) => reader.package).join(' ');
}
