import { describe, expect, it } from 'vitest';
import { cutterById, cutters, readCutter } from './cutter-profile.ts';
import { isPvc, laserAllowed } from './laser-material.ts';

const laser = cutterById('laser-if-allowed');
const knife = cutterById('knife');
if (!laser || !knife) throw new Error('a profile is missing');

const codes = (name: string | null, allowsLaser: boolean) => {
  const result = laserAllowed(laser, { name, allowsLaser });
  return result.ok ? [] : result.problems.map((p) => `${p.code} ${p.kind}`);
};

describe('laserAllowed', () => {
  it('asks for the name of the sheet and for the word that its safety sheet allows it, both at once', () => {
    expect(codes(null, false)).toEqual(['LASER_MATERIAL_UNNAMED refused', 'LASER_NOT_ALLOWED refused']);
    expect(codes('  ', true)).toEqual(['LASER_MATERIAL_UNNAMED refused']);
    expect(codes('polycaprolactone', false)).toEqual(['LASER_NOT_ALLOWED refused']);
    expect(codes('PVC', true)).toEqual(['LASER_MATERIAL_PVC refused']);
  });

  it('gives the caution as a warning each time', () => {
    const result = laserAllowed(laser, { name: 'polycaprolactone', allowsLaser: true });
    expect(result.ok && result.warnings.map((w) => w.code)).toEqual(['LASER_CAUTION']);
    expect(result.ok && result.warnings[0]?.message).toContain('Never laser a sheet that contains PVC');
  });

  it('asks nothing for a knife', () =>
    expect(laserAllowed(knife, { name: null, allowsLaser: false })).toMatchObject({ ok: true, warnings: [] }));

  it.each([
    'PVC',
    'P.V.C.',
    'p v c',
    'soft-PVC sheet 2 mm',
    'Polyvinyl chloride',
    'poly(vinyl chloride)',
    'polyvinylchlorid',
    'polychlorure de vinyle',
    'policloruro de vinilo',
    'cloruro di polivinile',
    'policloreto de vinila',
    'polyvinylklorid',
    'polivinilklorid',
    'polivinil klorür',
    'polivinil-klorid',
    'poli(chlorek winylu)',
    'PCW',
    'polyvinyylikloridi',
    'polüvinüülkloriid',
    'πολυβινυλοχλωρίδιο',
    'ПВХ',
    'поливинилхлорид',
    'полівінілхлорид',
    'Vinyl',
    'CAS 9002-86-2',
    '聚氯乙烯',
    'ポリ塩化ビニル',
    '폴리염화비닐',
  ])('takes %s for PVC', (name) => expect(isPvc(name)).toBe(true));

  it.each(['polycaprolactone', 'PCL 2.4 mm', 'polyester', 'trans-polyisoprene', 'cardboard', 'Polykaprolakton', 'ΠCΛ'])(
    'takes %s for none',
    (name) => expect(isPvc(name)).toBe(false),
  );
});

describe('cutter profiles', () => {
  it('are three', () => {
    expect(cutters().map((profile) => profile.id)).toEqual(['knife', 'pen-and-scissors', 'laser-if-allowed']);
  });

  it('are refused with every fault of form at once', () => {
    const broken = readCutter(
      { ...knife, kerf: -1, stroke: 9, layers: { ...knife.layers, MARK: { name: 'mark me', colour: 'red', dxfColour: 0 } }, more: 1 },
      'mine.json',
    );
    expect(broken.ok ? [] : broken.problems.map((p) => p.where)).toEqual(
      expect.arrayContaining(['kerf', 'stroke', 'layers.MARK.name', 'layers.MARK.colour', 'layers.MARK.dxfColour']),
    );
    expect(broken.ok ? [] : [...new Set(broken.problems.map((p) => p.code))]).toEqual(['CUTTER_FORM']);
  });

  it('may not give two layers one name, nor leave out the cut', () => {
    const same = readCutter({ ...knife, layers: { ...knife.layers, MARK: knife.layers.CUT } }, 'mine.json');
    expect(same.ok).toBe(false);
    const none = readCutter({ ...knife, layers: { ...knife.layers, CUT: { ...knife.layers.CUT, omit: true } } }, 'mine.json');
    expect(none.ok).toBe(false);
  });
});
