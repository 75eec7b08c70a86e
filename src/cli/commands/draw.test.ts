import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { asTyped, runCommand } from '../../../tests/run-command.ts';
import { inputsFromSvg } from '../../writers/inputs-text.ts';

const HAND = fileURLToPath(new URL('../../../fixtures/demo-hand-plate.json', import.meta.url));
const STRIP_HAND = fileURLToPath(new URL('../../../fixtures/demo-hand.json', import.meta.url));
let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'draw-plate-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const run = (flags: Record<string, string | boolean>, hand = HAND) =>
  runCommand('draw', hand, ...asTyped({ out: folder, plate: 'dorsal', ...flags }));

describe('draw --plate', () => {
  it('writes both formats, and the inputs in them say what was drawn', async () => {
    const said = await run({ plate: 'both', digits: 'little,ring', angle: '45°', wing: '10' });
    expect([said.err, said.exit]).toEqual(['', 0]);
    expect(readdirSync(folder).sort()).toEqual(['DEMO-02-plate-both_mm.dxf', 'DEMO-02-plate-both_mm.svg']);
    const inputs = inputsFromSvg(readFileSync(join(folder, 'DEMO-02-plate-both_mm.svg'), 'utf8'));
    expect(inputs.ok ? inputs.value : null).toMatchObject({
      kind: 'plate',
      plate: { faces: 'both', digits: ['ring', 'little'], angle: 45 },
      options: { wing: 10 },
    });
    expect(said.out).toContain('never a prescription');
  });

  it('reports as JSON', async () => {
    const said = await run({ plate: 'mp-extension-block', json: true });
    const report = JSON.parse(said.out);
    expect(report).toMatchObject({ plate: { id: 'mp-extension-block' }, angle: 0, faces: [{ face: 'palmar' }] });
    expect(report.files).toHaveLength(2);
  });

  it('takes digits and angle of a preset from the target and from --angle', async () => {
    const said = await run({ plate: 'single-digit-with-neighbours', angle: '50', json: true });
    expect(JSON.parse(said.out)).toMatchObject({ plate: { digits: ['long', 'ring', 'little'] }, angle: 50 });
  });

  it('names every wrong flag at once, with what would be right', async () => {
    const said = await run({ plate: 'dorsl', digits: 'rin', angle: '95', differential: '20', block: 'x' });
    expect(said.exit).toBe(2);
    for (const words of ['did you mean dorsal?', '"rin"', '0 to 90 degrees', '--differential', '--block'])
      expect(said.err).toContain(words);
    expect(readdirSync(folder)).toEqual([]);
  });

  it("takes the plan's angle where neither flag nor preset has one", async () => {
    // 45 + 45 (30 - 20) / (30 + 20) = 54, rounded up to the next 5: the design's plate model; common practice, no source.
    const said = await run({ json: true });
    expect(JSON.parse(said.out)).toMatchObject({ angle: 55 });
  });

  it('stops with the plan where the angle would be its, and draws an angle that is named with the sign as a caution', async () => {
    const json = JSON.parse(readFileSync(HAND, 'utf8'));
    const stopped = join(folder, 'stopped.json');
    writeFileSync(stopped, JSON.stringify({ ...json, target: { ...json.target, stopSigns: ['infection'] } }));
    const auto = await run({}, stopped);
    expect(auto.exit).toBe(3);
    expect(auto.err).toMatch(/error STOP_SIGN: .*the same day/);
    const named = await run({ angle: '40' }, stopped);
    expect(named.exit).toBe(0);
    expect(named.err).toContain('STOP_SIGN');
  });

  it('asks for the angle where the plan has none either: only one motion is lacking', async () => {
    const json = JSON.parse(readFileSync(HAND, 'utf8'));
    const one = join(folder, 'one.json');
    writeFileSync(one, JSON.stringify({ ...json, target: { ...json.target, pipFlexionDeficit: 0 } }));
    const said = await run({}, one);
    expect(said.err).toContain('Use --angle.');
    expect(readdirSync(folder)).toEqual(['one.json']);
  });
});

describe('draw --paper-reading', () => {
  const trial = (reading: string, ...more: readonly string[]) =>
    runCommand('draw', STRIP_HAND, '--block', 'ring-lowered-in-three', '--out', folder, '--force', '--paper-reading', reading, ...more);

  it("says that the band is the reading's, 1.96 mm either way of a strip for it; without a reading nothing of one", async () => {
    const { out } = await trial('4');
    const [, length, low, high] = /strip +([\d.]+) mm long \(95 % band ([\d.]+) to ([\d.]+) mm, of the paper reading\)/.exec(out) ?? [];
    expect(Math.abs(Number(high) - Number(low) - 2 * 1.96)).toBeLessThan(0.11);
    expect(Math.abs(Number(high) + Number(low) - 2 * Number(length))).toBeLessThan(0.21);
    const without = (await trial('none')).out;
    expect(without).toMatch(/long \(95 % band [\d.]+ to [\d.]+ mm\), /);
    expect(without).not.toContain('paper reading');
  });

  it('is refused outside the scale and outside what this hand can make, each with the range, and nothing is written', async () => {
    const off = await trial('16');
    expect([off.exit, off.err]).toEqual([2, expect.stringContaining('is 16 mm; -15 to 15 mm or none is allowed')]);
    const far = await trial('-15');
    expect(far.exit).toBe(3);
    const said =
      /-15 mm is outside what skin and air can make on this hand, (-\d+) to 15 mm\..* The nearest reading that can be is (-\d+) mm\./;
    const [, least, nearest] = said.exec(far.err) ?? [];
    expect([Number(least), readdirSync(folder)]).toEqual([Number(nearest), []]);
    expect((await trial(String(nearest))).exit).toBe(0);
  });
});
