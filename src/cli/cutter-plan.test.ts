import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import knife from '../../templates/cutters/knife.json' with { type: 'json' };
import { WHOLE_DRAWING } from '../sheet/cutter/machine-drawing.ts';
import { DEFAULT_OUTPUT_SETTINGS } from '../writers/output-settings.ts';
import { SCHEMAS } from './commands/schema.ts';
import { readCutterPlan } from './cutter-plan.ts';
import type { CutterFlags } from './flags/cutter-flags.ts';

const scratch = mkdtempSync(join(tmpdir(), 'cutter-flags-'));
afterAll(() => rmSync(scratch, { recursive: true }));

const messages = async (flags: CutterFlags) => {
  const plan = await readCutterPlan(flags);
  return plan.ok ? [] : plan.problems.map((p) => p.message);
};

describe('readCutterPlan', () => {
  it('asks nothing of a machine without flags', async () => {
    expect(await readCutterPlan({ dxf: '2007', dxfArcs: 'bulge' })).toEqual({
      ok: true,
      value: { cutter: null, settings: DEFAULT_OUTPUT_SETTINGS, machine: WHOLE_DRAWING },
      warnings: [],
    });
  });

  it('lays flags over the profile', async () => {
    const plan = await readCutterPlan({
      cutter: 'pen-and-scissors',
      kerf: '0,15',
      leadIn: '2 mm',
      bridges: '3',
      dxf: 'r12',
      dxfArcs: 'lines',
      dxfChordError: '0.02',
    });
    expect(plan.ok && plan.value.cutter?.profile).toMatchObject({ id: 'pen-and-scissors', kerf: 0.15, leadIn: 2, bridges: 3 });
    expect(plan.ok && plan.value.settings).toMatchObject({
      stroke: 0.4,
      order: 'layer-by-layer',
      dxf: { form: 'r12', arcs: 'lines', chordError: 0.02 },
    });
    expect(plan.ok && plan.value.settings.layers.CUT.name).toBe('OUTLINE');
  });

  it('takes a kerf without a profile for the knife, in our own layers', async () => {
    const plan = await readCutterPlan({ kerf: '0.2' });
    expect(plan.ok && [plan.value.cutter?.profile.id, plan.value.cutter?.profile.kerf]).toEqual(['knife', 0.2]);
  });

  it("reads a person's own profile by its path, and says what is wrong with a broken one", async () => {
    const file = join(scratch, 'mine.json');
    writeFileSync(file, JSON.stringify({ ...knife, id: 'mine', kerf: 0.1 }));
    const plan = await readCutterPlan({ cutter: file });
    expect(plan.ok && plan.value.cutter?.profile.id).toBe('mine');
    writeFileSync(file, JSON.stringify({ ...knife, kerf: 'wide' }));
    expect((await messages({ cutter: file }))[0]).toContain('kerf');
    expect((await messages({ cutter: join(scratch, 'none.json') }))[0]).toContain('does not exist');
  });

  it('names what it does not know or what is out of range, all at once', async () => {
    expect(await messages({ cutter: 'knive' })).toEqual(['--cutter: there is no cutter "knive"; did you mean knife?']);
    expect(await messages({ kerf: '9', leadIn: 'x', bridges: '1.5' })).toHaveLength(3);
    expect(await messages({ bridgeWidth: '1' })).toEqual(['--bridge-width: needs --bridges.']);
    expect(await messages({ dxfChordError: '0.1' })).toEqual(['--dxf-chord-error: needs --dxf-arcs lines.']);
  });

  it('refuses a laser without material and word, as refused and not as a wrong input (exit 3)', async () => {
    const plan = await readCutterPlan({ cutter: 'laser-if-allowed' });
    expect(plan.ok ? [] : plan.problems.map((p) => [p.code, p.kind])).toEqual([
      ['LASER_MATERIAL_UNNAMED', 'refused'],
      ['LASER_NOT_ALLOWED', 'refused'],
    ]);
    const allowed = await readCutterPlan({ cutter: 'laser-if-allowed', material: 'polycaprolactone', materialAllowsLaser: true });
    expect(allowed.ok && allowed.warnings.map((w) => w.code)).toEqual(['LASER_CAUTION']);
  });
});

describe('schema', async () => {
  it('knows the cutter profile', () => expect(SCHEMAS.cutter()).toMatchObject({ type: 'object', additionalProperties: false }));
});
