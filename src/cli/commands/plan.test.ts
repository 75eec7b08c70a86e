import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { asTyped, runCommand } from '../../../tests/run-command.ts';

const DEMO = new URL('../../../fixtures/demo-hand.json', import.meta.url).pathname;
const FOLDER = mkdtempSync(join(tmpdir(), 'plan-'));
afterAll(() => rmSync(FOLDER, { recursive: true }));

/** A hand file that is the demo hand with other keys. */
function handFile(change: Record<string, unknown>): string {
  const path = join(FOLDER, 'a hand.json');
  writeFileSync(path, JSON.stringify({ ...JSON.parse(readFileSync(DEMO, 'utf8')), ...change }));
  return path;
}
const lacking = (digit: string, pipExtensionDeficit: number, pipFlexionDeficit: number, flags = {}) =>
  handFile({ target: { digit, pipExtensionDeficit, pipFlexionDeficit }, flags });

const planOf = (file: string, flags = {}) => runCommand('plan', file, ...asTyped(flags));
const drawOf = (file: string, flags = {}) => runCommand('draw', file, ...asTyped({ json: true, ...flags }));

describe('plan HAND.json', () => {
  it('tells a new user what to try first, why, and how to draw it', async () => {
    const { out, err, exit } = await planOf(DEMO);
    expect(exit).toBe(0);
    expect(err).toBe('');
    expect(out).toContain('DEMO-01, left hand (invented): ring finger');
    expect(out.indexOf('1. ring-lowered-in-three')).toBeGreaterThan(out.indexOf('Pencil test'));
    expect(out).toContain('differential 20 degrees (surveyed use 11 to 30)');
    expect(out).toContain('If it does not redirect: first a differential of 25 degrees, then ring-lowered-in-four.');
    expect(out).toContain(`To draw the first: knucklewright draw ${DEMO}`);
    expect(out).toContain('common practice, no source');
    expect(out).toContain('NCT06985459');
  });

  it('repeats what the drawing needs, in quotes where a shell wants them', async () => {
    const { out, err } = await planOf(lacking('ring', 0, 40, { hardEndFeel: true }), { differential: '35', clinicianConfirms: true });
    expect(out).toContain(`draw "${join(FOLDER, 'a hand.json')}" --differential 35 --clinician-confirms`);
    expect(err).toContain('DIFFERENTIAL_UNUSUAL');
  });

  it('names the blocks that cannot be made, by reason', async () => {
    const { digits } = JSON.parse(readFileSync(DEMO, 'utf8'));
    const { out, exit } = await planOf(
      handFile({
        target: { digit: 'little', pipExtensionDeficit: 0, pipFlexionDeficit: 40 },
        digits: { long: digits.long, ring: digits.ring, little: digits.little },
      }),
    );
    expect(exit).toBe(0);
    expect(out).toContain('1. ring-lowered-in-three');
    expect(out).toMatch(
      /Not makeable: long-lowered-in-four, ring-lowered-in-four, long-and-ring-lowered-in-four\n.*digits\.index: this digit was not measured/,
    );
  });

  it.each([
    [20, 40, 'MP joint at 30 degrees of flexion to begin with, range 0 to 45.'],
    [40, 40, 'MP joint at 45 degrees of flexion to begin with.'],
    [0, 0, 'Need: none.'],
  ])('says what extension lacking %d and flexion lacking %d call for: %s', async (e, f, words) => {
    const { out, exit } = await planOf(lacking('ring', e, f));
    expect(exit).toBe(0);
    expect(out).toContain(words);
    // The strip for the larger deficit follows the plate.
    expect(out.includes('Pencil test')).toBe(e > 0);
    if (e > 0) expect(out.indexOf('Strip, when its turn comes')).toBeGreaterThan(out.indexOf('Plate: MP joint'));
  });

  it('refuses with 3 and why, in words and in JSON, until the clinician confirms', async () => {
    const file = lacking('ring', 0, 40, { hardEndFeel: true, unprotectedRepair: true, swelling: true });
    const words = await planOf(file);
    expect(words.exit).toBe(3);
    expect(words.err).toMatch(/error UNPROTECTED_REPAIR: .*\nerror HARD_END_FEEL: .*--clinician-confirms/);
    expect(words.out).toMatch(/CAUTION\n.*Changing swelling/);
    expect(words.out).not.toMatch(/^1\. /m);
    const json = await planOf(file, { json: true });
    expect(json.exit).toBe(3);
    expect(JSON.parse(json.out)).toMatchObject({ need: 'pipFlexion', suggestions: [], mpAngle: null, mpRange: null });
    const confirmed = await planOf(file, { json: true, clinicianConfirms: true });
    expect(confirmed.exit).toBe(0);
    expect(JSON.parse(confirmed.out).suggestions[0].block).toEqual({
      id: 'ring-raised-in-three',
      places: { long: 'enclosed', ring: 'raised', little: 'enclosed' },
    });
  });

  it('ends with 3 for a stop sign, confirmed or not, and names whom to ask', async () => {
    const file = handFile({ target: { digit: 'ring', pipExtensionDeficit: 30, pipFlexionDeficit: 0, stopSigns: ['infection'] } });
    for (const clinicianConfirms of [false, true]) {
      const { out, err, exit } = await planOf(file, { clinicianConfirms });
      expect(exit).toBe(3);
      expect(err).toMatch(/error STOP_SIGN: .*surgeon or an emergency department the same day/);
      expect(out).toContain('Nothing is suggested');
      expect(out).not.toMatch(/^1\. |FIRST/m);
    }
    const json = JSON.parse((await planOf(file, { json: true })).out);
    expect(json).toMatchObject({ order: [], suggestions: [], stops: [{ rule: 'STOP_SIGN', sign: 'infection', ask: 'surgeonSameDay' }] });
  });

  it('plans for a slight deficit only with --anyway', async () => {
    const file = lacking('ring', 7, 0);
    expect((await planOf(file)).out).toContain('Need: none');
    expect((await planOf(file, { anyway: true })).out).toContain('1. ring-lowered-in-three');
  });

  it('prints JSON of the agreed form', async () => {
    const { out } = await planOf(DEMO, { json: true });
    const json = JSON.parse(out);
    expect(json).toMatchObject({
      need: 'pipExtension',
      lacking: { extension: 1, flexion: 0 },
      order: ['strip'],
      stops: [],
      alternatives: [],
    });
    expect(json).toMatchObject({ mpAngle: null, mpRange: null, cautions: [], invented: true });
    for (const s of json.suggestions) {
      expect(Object.keys(s.block)).toEqual(['id', 'places']);
      expect(s.differential).toBe(20);
      const points = Object.values<number>(s.terms).reduce((sum, p) => sum + p, 0);
      expect(s.score).toBeCloseTo(points, 9);
      expect(s.reasons).toHaveLength(Object.keys(s.terms).length);
      expect(Object.keys(json.scoring)).toEqual(Object.keys(s.terms));
    }
  });

  it('says every problem of flags and files at once, with 2 for wrong flags and 1 for wrong files', async () => {
    const { err, exit } = await planOf(join(FOLDER, 'none.json'), { differential: 'abc', options: join(FOLDER, 'no-options.json') });
    expect(exit).toBe(2);
    expect(err.match(/^error /gm)).toHaveLength(3);
    expect((await planOf(handFile({ target: undefined }))).exit).toBe(1);
  });

  it('takes options from a file, flags winning', async () => {
    const options = join(FOLDER, 'options.json');
    writeFileSync(options, JSON.stringify({ differential: 12, thickness: 1.6 }));
    const fromFile = JSON.parse((await planOf(DEMO, { json: true, options })).out);
    expect(fromFile.suggestions[0].differential).toBe(12);
    const fromFlag = JSON.parse((await planOf(DEMO, { json: true, options, differential: '15' })).out);
    expect(fromFlag.suggestions[0].differential).toBe(15);
  });
});

describe('draw --block auto', () => {
  it.each([
    ['ring', 25, 0],
    ['long', 0, 40],
    ['index', 25, 0],
    ['little', 0, 40],
  ])('draws what plan puts first, with its reason: %s lacking %d and %d', async (digit, e, f) => {
    for (const hypermobile of [[], ['little']]) {
      const file = lacking(digit, e, f, { hypermobile });
      const first = JSON.parse((await planOf(file, { json: true })).out).suggestions[0];
      const drawn = JSON.parse((await drawOf(file)).out);
      expect(drawn.block).toEqual(first.block);
      expect(drawn.flatLength).toBe(first.flatLength);
      expect(drawn.why).toContain(`the ${digit} finger lacks PIP`);
    }
  });

  it('refuses with 3 what plan refuses, both deficits and none; a hard end-feel until it is confirmed', async () => {
    for (const [e, f] of [
      [20, 40],
      [0, 0],
    ] as const)
      expect((await drawOf(lacking('ring', e, f))).exit).toBe(3);
    const hard = lacking('ring', 0, 40, { hardEndFeel: true });
    expect((await drawOf(hard)).exit).toBe(3);
    const confirmed = await drawOf(hard, { clinicianConfirms: true });
    expect(confirmed.exit).toBe(0);
    expect(JSON.parse(confirmed.out).warnings.map((w: { code: string }) => w.code)).toContain('HARD_END_FEEL');
  });
});
