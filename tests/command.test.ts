import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { handJson, WORKED } from './hands.ts';
import { runCommandIn } from './run-command.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const COMMAND = join(ROOT, 'dist', 'knucklewright.js');
const DEMO = join(ROOT, 'fixtures', 'demo-hand.json');
const scratch = mkdtempSync(join(tmpdir(), 'command-'));
let folders = 0;
const folder = () => join(scratch, `f${folders++}`);

afterAll(() => rmSync(scratch, { recursive: true }));

/** As it is shipped, in a process of its own; one test shows that it is the same. */
function runBuilt(...args: readonly string[]) {
  return spawnSync(process.execPath, [COMMAND, ...args], { encoding: 'utf8', cwd: scratch });
}

async function run(...args: readonly string[]) {
  const { exit, out, err } = await runCommandIn(scratch, ...args);
  return { status: exit, stdout: out, stderr: err };
}

function file(name: string, content: unknown): string {
  const path = join(scratch, name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}

describe('draw', () => {
  it('writes both files at once, named _mm, says why this block, warns of heat, and ends with the true sizes', () => {
    const out = folder();
    const { status, stdout } = runBuilt('draw', DEMO, '--out', out);
    expect(status).toBe(0);
    expect(readdirSync(out).sort()).toEqual(['DEMO-01-ring-lowered-in-three_mm.dxf', 'DEMO-01-ring-lowered-in-three_mm.svg']);
    expect(stdout).toContain('the ring finger lacks PIP extension');
    expect(stdout).toContain('Water at 60 C burns');
    expect(stdout.trimEnd().split('\n').at(-1)).toMatch(/\.dxf {3}drawing [\d.]+ x [\d.]+ mm, strip 177\.7 x 20 mm, at 1:1$/);
  });

  it('--json prints the report and writes nothing; with --out it writes too', async () => {
    const { status, stdout } = await run('draw', DEMO, '--json', '--block', 'ring-raised-in-four');
    expect(status).toBe(0);
    const report = JSON.parse(stdout);
    expect(report).toMatchObject({ block: { id: 'ring-raised-in-four' }, closure: 'tacked', flatWidth: 20, files: [] });
    expect(Math.abs(report.pathLength - 189.56)).toBeLessThan(0.01);
    const out = folder();
    const written = JSON.parse((await run('draw', DEMO, '--json', '--out', out, '--formats', 'dxf')).stdout);
    expect(written.files).toMatchObject([{ format: 'dxf', width: expect.any(Number), height: expect.any(Number) }]);
    expect(readdirSync(out)).toHaveLength(1);
  });

  it('takes options from a file and lets flags win; inches are understood', async () => {
    const options = file('options.json', { width: 18, thickness: '1/16 in', differential: 25 });
    const { stdout } = await run('draw', DEMO, '--json', '--options', options, '--width', '16');
    const inputs = JSON.parse(stdout);
    expect(inputs.flatWidth).toBe(16);
    const thin = JSON.parse((await run('draw', DEMO, '--json', '--thickness', '1.5875', '--differential', '25', '--width', '16')).stdout);
    expect(inputs.pathLength).toBe(thin.pathLength);
  });

  it('takes a block file of the same form, and refuses one that breaks a rule with exit 3', async () => {
    const places = { index: 'enclosed', long: 'raised', ring: 'enclosed' };
    const own = file('own.json', { schema: 'knucklewright/block@1', id: 'own', places });
    expect(JSON.parse((await run('draw', DEMO, '--json', '--block', own)).stdout).block).toEqual({ id: 'own', places });
    const bad = file('bad.json', { schema: 'knucklewright/block@1', id: 'bad', places: { ...places, ring: 'lowered' } });
    const { status, stderr } = await run('draw', DEMO, '--json', '--block', bad);
    expect(status).toBe(3);
    expect(stderr).toContain('both border digits must be enclosed');
  });

  it('reports every problem of every input at once with exit 1, and writes nothing', async () => {
    const hand = file('hand.json', { ...handJson(WORKED), side: 'up', colour: 1 });
    const out = folder();
    const { status, stderr, stdout } = await run(
      'draw',
      hand,
      '--block',
      'long-risen',
      '--width',
      '99',
      '--formats',
      'bmp',
      '--date',
      '2026-02-30',
      '--out',
      out,
    );
    // Wrong flags are wrong usage, whatever else is wrong.
    expect(status).toBe(2);
    expect(stdout).toBe('');
    for (const what of ['side', 'colour', 'long-risen', 'width is 99 mm', 'bmp', '2026-02-30']) expect(stderr).toContain(what);
    expect(
      stderr
        .trimEnd()
        .split('\n')
        .every((line) => /^error [A-Z_]+: /.test(line)),
    ).toBe(true);
    expect(() => readdirSync(out)).toThrow();
  });

  it('does not overwrite unless told to', async () => {
    const out = folder();
    await run('draw', DEMO, '--out', out);
    const name = join(out, 'DEMO-01-ring-lowered-in-three_mm.svg');
    writeFileSync(name, 'mine');
    const { status, stderr } = await run('draw', DEMO, '--out', out);
    expect(status).toBe(1);
    expect(stderr).toContain('--force');
    expect(readFileSync(name, 'utf8')).toBe('mine');
    expect((await run('draw', DEMO, '--out', out, '--force')).status).toBe(0);
    expect(readFileSync(name, 'utf8')).toContain('<svg');
  });

  it('refuses what is not makeable with exit 3: a strip that would hold nothing, both deficits, none', async () => {
    const worked = file('worked.json', handJson(WORKED));
    const steep = await run('draw', worked, '--block', 'ring-raised-in-three', '--differential', '45', '--width', '20', '--json');
    expect(steep).toMatchObject({ status: 3, stderr: expect.stringContaining('ring finger and would hold nothing') });
    // The offer was tried and holds.
    const [, offered = ''] = /At (\d+) degrees it holds/.exec(steep.stderr) ?? [];
    expect(
      (await run('draw', worked, '--block', 'ring-raised-in-three', '--differential', offered, '--width', '20', '--json')).status,
    ).toBe(0);
    for (const [name, e, f] of [
      ['both.json', 20, 30],
      ['none.json', 0, 0],
    ] as const) {
      const target = { digit: 'ring', pipExtensionDeficit: e, pipFlexionDeficit: f };
      expect((await run('draw', file(name, { ...handJson(WORKED), target }), '--json')).status).toBe(3);
    }
  });

  // On the drawing in the reader's words, elsewhere by the key of the hand file.
  it('flags estimated lengths in the report, in the words and in the drawing', async () => {
    const json = JSON.parse(readFileSync(DEMO, 'utf8'));
    delete json.digits.ring.palmarRoom;
    const hand = file('estimated.json', json);
    const out = folder();
    const { stdout, stderr } = await run('draw', hand, '--out', out, '--formats', 'svg');
    expect(stdout).toMatch(/ESTIMATED +ring: palmar room/);
    expect(stderr).toContain('warning ESTIMATED');
    expect(JSON.parse((await run('draw', hand, '--json')).stdout).estimated).toEqual(['digits.ring.palmarRoom']);
    expect(readFileSync(join(out, readdirSync(out)[0] ?? ''), 'utf8')).toContain('ESTIMATED, not measured: ring: palmar room');
  });
});

describe('usage', () => {
  it.each([
    [['draw'], 2],
    [['drawn'], 2],
    [['draw', DEMO, '--closure', 'glued'], 2],
    [['draw', DEMO, '--colour', 'red'], 2],
    [['schema', 'foot'], 2],
    [['--help'], 0],
    [['draw', '--help'], 0],
    [['--version'], 0],
  ] as const)('%s exits %d', async (args, status) => {
    expect((await run(...args)).status).toBe(status);
  });

  it('explains every option of the model in draw --help', async () => {
    const { stdout } = await run('draw', '--help');
    const keys =
      'width thickness skin-clearance web-gap crossing-play proximal-gap pip-clearance minimum-width differential closure seam seam-allowance trim stretch';
    for (const key of keys.split(' ')) expect(stdout).toContain(`--${key} <`);
  });

  it('lists ten blocks with a sketch, or as JSON', async () => {
    const { stdout } = await run('blocks');
    expect(stdout.match(/╭/g)?.length).toBeGreaterThanOrEqual(10);
    const { schema, blocks } = JSON.parse((await run('blocks', '--json')).stdout);
    expect([schema, blocks.length]).toEqual(['knucklewright/blocks-report@1', 10]);
  });

  it.each(['hand', 'block', 'options'])('prints the JSON Schema of %s', async (kind) => {
    expect(JSON.parse((await run('schema', kind)).stdout)).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      type: 'object',
    });
  });
});

describe('page --save', () => {
  it('takes a name with blanks, saves the page as it was built, and does not replace it unasked', () => {
    const { status, stdout } = runBuilt('page', '--save', 'my page.html');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^my page\.html {3}\d+ kB, opens in a browser without a network\n$/);
    expect(readFileSync(join(scratch, 'my page.html'))).toEqual(readFileSync(join(ROOT, 'dist', 'knucklewright.html')));
    expect(runBuilt('page', '--save', 'my page.html')).toMatchObject({ status: 1, stderr: expect.stringContaining('my page.html exists') });
  });
});
