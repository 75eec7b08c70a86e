// Lists every package that runs with the command, with version and licence, from the lockfile's tree (npm ls --omit=dev), or fails for a
// licence that was not looked at. Usage: node scripts/licences.mjs
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Licences that allow use and passing on in any product when their text goes along. */
const LOOKED_AT = new Set([
  'MIT',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Apache-2.0',
  '0BSD',
  'Unlicense',
  'BlueOak-1.0.0',
  '(MIT AND Zlib)',
]);

const root = fileURLToPath(new URL('..', import.meta.url));
const { stdout } = spawnSync('npm', ['ls', '--omit=dev', '--all', '--json', '--long'], { cwd: root, encoding: 'utf8', maxBuffer: 64e6 });
const found = new Map();
collect(JSON.parse(stdout).dependencies ?? {});

const rows = [...found.values()].sort((a, b) => a.name.localeCompare(b.name, 'en'));
for (const { name, version, licence } of rows) console.log(`${name.padEnd(24)} ${version.padEnd(10)} ${licence}`);
const unknown = rows.filter(({ licence }) => !LOOKED_AT.has(licence));
console.log(`${rows.length} packages, ${unknown.length} with a licence to look at${unknown.map(({ name }) => `: ${name}`).join('')}`);
process.exitCode = unknown.length > 0 ? 1 : 0;

/** Of a package that names none but carries the text: the MIT licence by its words. */
function licenceOfText(path) {
  const file = readdirSync(path).find((name) => /^licen[cs]e/i.test(name));
  const text = file === undefined ? '' : readFileSync(join(path, file), 'utf8').replace(/\s+/g, ' ');
  return /Permission is hereby granted, free of charge, .* to deal in the Software without restriction/.test(text) ? 'MIT' : 'none named';
}

function collect(dependencies) {
  for (const [name, { version, path, dependencies: further }] of Object.entries(dependencies)) {
    if (version && path && !found.has(`${name}@${version}`)) {
      const { license, licenses } = JSON.parse(readFileSync(join(path, 'package.json'), 'utf8'));
      const named = typeof license === 'string' ? license : (license?.type ?? licenses?.map((l) => l.type).join(' OR '));
      const licence = named ?? licenceOfText(path);
      found.set(`${name}@${version}`, { name, version, licence });
    }
    collect(further ?? {});
  }
}
