// Makes a release: page, command, notices, list of materials and their SHA-256 sums, the same bytes from every clone of a commit.
// Usage: npm run release [FOLDER]. Needs the Node and npm that releases are made with, and a tree without changes; --try takes any.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cp, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Another Node deflates otherwise, another npm packs otherwise. */
const MADE_WITH = { node: 'v20.20.2', npm: '11.19.1' };

const root = fileURLToPath(new URL('..', import.meta.url));
const given = process.argv.slice(2);
const isTry = given.includes('--try');
const folder = resolve(given.find((word) => !word.startsWith('--')) ?? join(root, 'out', 'release'));
const run = (command, ...args) => execFileSync(command, args, { cwd: root, encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] });

const faults = [];
const npm = run('npm', '--version').trim();
if (process.version !== MADE_WITH.node) faults.push(`this is Node ${process.version}; releases are made with ${MADE_WITH.node}`);
if (npm !== MADE_WITH.npm) faults.push(`this is npm ${npm}; releases are made with ${MADE_WITH.npm}`);
if (run('git', 'status', '--porcelain').trim() !== '') faults.push('the tree has changes that are not committed');
if (faults.length > 0 && !isTry) {
  console.error(`${faults.join('\n')}\nMend that, or make one that is no release with --try.`);
  process.exit(1);
}

const { version, description, license, engines, bin } = JSON.parse(await readFile(join(root, 'package.json'), 'utf8'));
// The date of the commit, so that it is the same whenever it is built.
const date = new Date(run('git', 'log', '-1', '--format=%cI').trim()).toISOString();
run(process.execPath, 'scripts/build.mjs');
const { components } = JSON.parse(await readFile(join(root, 'dist', 'sbom.json'), 'utf8'));

await rm(folder, { recursive: true, force: true });
await mkdir(folder, { recursive: true });
const staging = await mkdtemp(join(tmpdir(), 'release-'));
try {
  await cp(join(root, 'dist'), join(staging, 'dist'), { recursive: true });
  for (const name of ['README.md', 'LICENSE', 'CHANGELOG.md']) await cp(join(root, name), join(staging, name));
  const files = (await readdir(join(staging, 'dist'))).sort();
  const digest = await digestOf(join(staging, 'dist'), files);
  await writeFile(join(staging, 'dist', 'release.json'), `${JSON.stringify({ version, date, digest }, null, 2)}\n`);
  const manifest = { name: 'knucklewright', version, description, license, type: 'module', engines, bin };
  await writeFile(join(staging, 'package.json'), `${JSON.stringify(manifest, null, 2)}\n`);
  execFileSync('npm', ['pack', '--silent', '--ignore-scripts', '--pack-destination', folder], {
    cwd: staging,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  await cp(join(root, 'dist', 'knucklewright.html'), join(folder, `knucklewright-${version}.html`));
  await cp(join(root, 'dist', 'THIRD-PARTY-NOTICES.txt'), join(folder, 'THIRD-PARTY-NOTICES.txt'));
  const sbom = JSON.parse(await readFile(join(root, 'dist', 'sbom.json'), 'utf8'));
  await writeFile(join(folder, 'sbom.json'), `${JSON.stringify({ ...sbom, metadata: { timestamp: date, ...sbom.metadata } }, null, 2)}\n`);
  const sums = [];
  for (const name of (await readdir(folder)).sort()) sums.push(`${sha256(await readFile(join(folder, name)))}  ${name}`);
  await writeFile(join(folder, 'SHA256SUMS'), `${sums.join('\n')}\n`);
  console.log(`${folder}\n${sums.join('\n')}\n${digest}  what is installed (knucklewright --version --json)`);
  console.log(`${components.length} components of others${isTry ? '; a try, no release' : ''}`);
} finally {
  await rm(staging, { recursive: true, force: true });
}

function sha256(bytes) {
  return createHash('sha256').update(bytes).digest('hex');
}

/** As src/cli/installed.ts reckons it: names and contents of all files. */
async function digestOf(where, names) {
  const lines = [];
  for (const name of names) lines.push(`${sha256(await readFile(join(where, name)))}  ${name}\n`);
  return sha256(lines.join(''));
}
