import { execFileSync, spawnSync } from 'node:child_process';
import { appendFileSync, cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { COMMAND, run, scratchFolder } from './faults/commands.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const folder = scratchFolder('release');
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const stated = (command: string) => JSON.parse(execFileSync(process.execPath, [command, '--version', '--json'], { encoding: 'utf8' }));

describe('knucklewright --version --json', () => {
  it('hashes what is installed now, and sees a changed file', () => {
    const copy = join(folder, 'copy');
    cpSync(join(ROOT, 'dist'), copy, { recursive: true });
    const before = stated(join(copy, 'knucklewright.js'));
    expect(before).toMatchObject({ schema: 'knucklewright/version@1', released: false, date: null });
    expect(before.digest).toBe(stated(COMMAND).digest);
    appendFileSync(join(copy, 'knucklewright.html'), ' ');
    expect(stated(join(copy, 'knucklewright.js')).digest).not.toBe(before.digest);
  });

  it.each(['', '{"digest": "6a78', 'null', '[]', '{"digest": 1}'])('takes a damaged note of the release for none: %s', (note) => {
    const copy = join(folder, 'noted');
    cpSync(join(ROOT, 'dist'), copy, { recursive: true });
    writeFileSync(join(copy, 'release.json'), note);
    expect(stated(join(copy, 'knucklewright.js'))).toMatchObject({ digest: stated(COMMAND).digest, released: false, date: null });
  });

  it('leaves --version as it is', () => {
    expect(run(['--version']).stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});

/** Two builds, two packings and an installation: by night. */
if (process.env.KNUCKLEWRIGHT_NIGHTLY !== undefined) describe('a release', releases);

function releases(): void {
  const release = (name: string) => {
    const clone = mkdtempSync(join(tmpdir(), `${name}-`));
    execFileSync('git', ['clone', '--quiet', '--depth', '1', `file://${ROOT}`, clone]);
    symlinkSync(join(ROOT, 'node_modules'), join(clone, 'node_modules'));
    // The link is no change of the tree, but git sees one: a release is refused, and a try is made of it.
    const refused = spawnSync(process.execPath, ['scripts/release.mjs', join(folder, 'refused')], { cwd: clone, encoding: 'utf8' });
    expect(refused).toMatchObject({ status: 1, stderr: expect.stringContaining('the tree has changes that are not committed') });
    expect(existsSync(join(folder, 'refused'))).toBe(false);
    execFileSync(process.execPath, ['scripts/release.mjs', '--try', join(folder, name)], { cwd: clone, stdio: 'ignore' });
    rmSync(clone, { recursive: true, force: true });
    return join(folder, name);
  };

  it('has the same bytes from two clones, and installs offline as the one that was released', { timeout: 600_000 }, () => {
    const [one, two] = [release('one'), release('another')];
    expect(readdirSync(one).sort()).toEqual([
      'SHA256SUMS',
      'THIRD-PARTY-NOTICES.txt',
      ...readdirSync(one).filter((name) => /^knucklewright-/.test(name)),
      'sbom.json',
    ]);
    for (const name of readdirSync(one)) expect(readFileSync(join(two, name)).equals(readFileSync(join(one, name))), name).toBe(true);
    expect(spawnSync('sha256sum', ['--check', '--quiet', 'SHA256SUMS'], { cwd: one }).status).toBe(0);

    const prefix = join(folder, 'installed');
    const tarball = readdirSync(one).find((name) => name.endsWith('.tgz')) ?? '';
    execFileSync('npm', ['install', '--global', '--offline', '--no-audit', '--no-fund', '--prefix', prefix, join(one, tarball)], {
      stdio: 'ignore',
    });
    const command = join(prefix, 'lib', 'node_modules', 'knucklewright', 'dist', 'knucklewright.js');
    const said = stated(command);
    expect(said.released).toBe(true);
    expect(said.date).toMatch(/^\d{4}-\d\d-\d\dT/);
    expect(readdirSync(join(prefix, 'lib', 'node_modules', 'knucklewright'))).not.toContain('node_modules');
    const drawn = spawnSync(process.execPath, [command, 'draw', join(ROOT, 'fixtures', 'demo-hand.json'), '--out', join(folder, 'drawn')]);
    expect(drawn.status).toBe(0);
    expect(
      spawnSync(process.execPath, [
        command,
        'inspect',
        ...readdirSync(join(folder, 'drawn'))
          .filter((name) => /svg|dxf/.test(name))
          .map((name) => join(folder, 'drawn', name)),
      ]).status,
    ).toBe(0);
    appendFileSync(join(prefix, 'lib', 'node_modules', 'knucklewright', 'dist', 'reader.js'), ' ');
    expect(stated(command).released).toBe(false);
  });
}
