import { describe, expect, it } from 'vitest';
import demo from '../../fixtures/demo-hand.json' with { type: 'json' };
import { seeded, seededNormal } from '../units/chance.ts';
import { normHands } from './norm-hands.ts';
import { judgeMeasures } from './plausibility.ts';
import { type ReadMeasures, readMeasures } from './read-measures.ts';

const DEMO = readMeasures(demo, 'mm');

function withDigits(changes: ReadMeasures['digits'], palm: ReadMeasures['palm'] = {}, target: ReadMeasures['target'] = {}) {
  const digits = Object.fromEntries(
    Object.entries({ ...DEMO.digits, ...changes }).map(([d, m]) => [d, { ...DEMO.digits[d as 'ring'], ...m }]),
  );
  return judgeMeasures({ digits, palm, target }, 'mm');
}

const codes = (judged: { warnings: readonly { code: string; where?: string }[] }) => judged.warnings.map((w) => `${w.code} ${w.where}`);

describe('judgeMeasures(measures, unit)', () => {
  it('has nothing to say of the demo hand', () => {
    expect(judgeMeasures(DEMO, 'mm')).toEqual({ problems: [], warnings: [] });
  });

  // Greiner 1991: long >= index > ring > little; means of women and men at the PIP joint, and PIP breadths of men (second-hand).
  it('has nothing to say of the order in published means', () => {
    for (const means of [
      [61.2, 61.3, 57.4, 50.6],
      [68.4, 69.6, 64.9, 57.8],
    ]) {
      const [index = 0, long = 0, ring = 0, little = 0] = means;
      const digits = {
        index: { circumference: index },
        long: { circumference: long },
        ring: { circumference: ring },
        little: { circumference: little },
      };
      expect(judgeMeasures({ digits, palm: {}, target: {} }, 'mm').warnings).toEqual([]);
    }
    const breadths = { index: { width: 23 }, long: { width: 22.5 }, ring: { width: 21.4 }, little: { width: 19.2 } };
    expect(judgeMeasures({ digits: breadths, palm: {}, target: {} }, 'mm').warnings).toEqual([]);
  });

  it('warns of circumferences out of order, past the slack only', () => {
    expect(codes(withDigits({ ring: { width: 17.5, circumference: 59 } }))).toEqual([]);
    expect(codes(withDigits({ ring: { width: 17.5, circumference: 59.1 } }))).toEqual(['CIRCUMFERENCE_ORDER digits.ring.circumference']);
    // Index and long finger lie within a measuring error of each other in the published means (61.2 and 61.3, Greiner 1991): they have no order.
    expect(codes(withDigits({ index: { width: 18, circumference: 60 } }))).toEqual([]);
    expect(codes(withDigits({ long: { width: 18, circumference: 60 } }))).toEqual([]);
  });

  it('seldom warns of the order in hands drawn from norms', () => {
    const { hands } = normHands('mixed', 1000, seededNormal(seeded(3)));
    const warned = hands.filter(({ hand }) => {
      const { warnings } = judgeMeasures({ digits: hand.digits, palm: {}, target: {} }, 'mm');
      return warnings.some(({ code }) => code === 'CIRCUMFERENCE_ORDER' || code === 'WIDTH_ORDER');
    });
    expect(warned.length / hands.length).toBeLessThan(0.02);
  });

  it('compares neighbours in the order that were measured', () => {
    const digits = { long: { circumference: 57 }, little: { circumference: 60 } };
    expect(codes(judgeMeasures({ digits, palm: {}, target: {} }, 'mm'))).toEqual(['CIRCUMFERENCE_ORDER digits.little.circumference']);
  });

  it('warns of widths out of order', () => {
    expect(codes(withDigits({ little: { width: 18, circumference: 54 } }))).toEqual([]);
    expect(codes(withDigits({ little: { width: 18.1, circumference: 54 } }))).toEqual(['WIDTH_ORDER digits.little.width']);
  });

  it('refuses a palmar room that reaches the dorsal length, and warns of an odd ratio', () => {
    const judged = withDigits({ ring: { palmarRoom: 45, dorsalLength: 45 } });
    expect(judged.problems).toMatchObject([{ code: 'LENGTHS_CONTRADICT', where: 'digits.ring.palmarRoom', kind: 'refused' }]);
    expect(codes(withDigits({ ring: { palmarRoom: 32, dorsalLength: 45 } }))).toEqual(['LENGTH_RATIO_UNUSUAL digits.ring.palmarRoom']);
    expect(codes(withDigits({ ring: { palmarRoom: 13, dorsalLength: 45 } }))).toEqual(['LENGTH_RATIO_UNUSUAL digits.ring.palmarRoom']);
  });

  it('refuses a section that contradicts itself, and warns of a doubtful one', () => {
    expect(withDigits({ ring: { width: 13, circumference: 57 } }).problems).toMatchObject([
      { code: 'SECTION_IMPOSSIBLE', where: 'digits.ring' },
    ]);
    expect(codes(withDigits({ ring: { width: 14, circumference: 53 } }))).toEqual(['DEPTH_RATIO_UNUSUAL digits.ring']);
  });

  it('warns of a PIP joint thinner than the phalanx', () => {
    expect(codes(withDigits({ ring: { pipCircumference: 60 } }))).toEqual([]);
    expect(codes(withDigits({ ring: { pipCircumference: 52 } }))).toEqual(['PIP_THINNER digits.ring.pipCircumference']);
  });

  it('warns of a finger that tapers unusually, and refuses one that no finger does', () => {
    // 53 round, 25 mm from root to PIP crease: 6 degrees are 8.25 mm more at the root, 12 degrees 16.69.
    const root = (rootCircumference: number) => withDigits({ ring: { rootCircumference } });
    expect(codes(root(61.2))).toEqual([]);
    expect(codes(root(61.3))).toEqual(['TAPER_UNUSUAL digits.ring.rootCircumference']);
    expect(codes(root(44.7))).toEqual(['TAPER_UNUSUAL digits.ring.rootCircumference']);
    expect(root(69.6).problems).toEqual([]);
    expect(root(69.8).problems).toMatchObject([{ code: 'TAPER_IMPOSSIBLE', where: 'digits.ring.rootCircumference', kind: 'refused' }]);
  });

  it('warns of deficits that contradict each other', () => {
    const target = (values: ReadMeasures['target']) => codes(withDigits({}, {}, values));
    expect(target({ pipExtensionDeficit: 30, pipExtensionDeficitPassive: 35, pipFlexionDeficit: 70 })).toEqual([]);
    expect(target({ pipExtensionDeficit: 30, pipExtensionDeficitPassive: 36 })).toEqual([
      'PASSIVE_EXCEEDS_ACTIVE target.pipExtensionDeficitPassive',
    ]);
    expect(target({ pipFlexionDeficit: 30, pipFlexionDeficitPassive: 36 })).toEqual([
      'PASSIVE_EXCEEDS_ACTIVE target.pipFlexionDeficitPassive',
    ]);
    expect(target({ pipExtensionDeficit: 30, pipFlexionDeficit: 71 })).toEqual(['NO_MOTION_LEFT target']);
  });

  // ANSUR II (Gordon et al. 2014): mean breadth and circumference of women and men; ratio P5 to P95 2.31 to 2.49.
  it('takes the published palms, warns outside the published band, and refuses what no stadium is', () => {
    const palm = (handBreadth: number, handCircumference: number) => withDigits({}, { handBreadth, handCircumference });
    for (const [b, c] of [
      [78.15, 186.55],
      [88.26, 212.28],
      [80, 80 * 2.31],
      [80, 80 * 2.49],
    ] as const) {
      expect(palm(b, c)).toEqual({ problems: [], warnings: [] });
    }
    expect(codes(palm(80, 80 * 2.2))).toEqual(['PALM_RATIO_UNUSUAL handCircumference']);
    expect(codes(palm(80, 80 * 2.6))).toEqual(['PALM_RATIO_UNUSUAL handCircumference']);
    expect(palm(80, 160).problems).toMatchObject([{ code: 'PALM_IMPOSSIBLE', kind: 'refused' }]);
    expect(palm(80, 80 * 3.15).problems).toMatchObject([{ code: 'PALM_IMPOSSIBLE', kind: 'refused' }]);
  });

  const webs = (ringLittle: number, more: Partial<ReadMeasures['webs']['webSetback']> = {}, palm: ReadMeasures['palm'] = {}, scale = 1) => {
    const digits = Object.fromEntries(
      Object.entries(DEMO.digits).map(([d, m]) => [d, Object.fromEntries(Object.entries(m).map(([key, mm]) => [key, scale * mm]))]),
    );
    return judgeMeasures({ digits, palm, target: {}, webs: { webSetback: { ...more, 'ring-little': ringLittle } } }, 'mm');
  };

  it('warns of a web that lies far back for the size of the hand, and refuses one that cannot', () => {
    expect(webs(20.8, {}, { handBreadth: 80.1 })).toEqual({ problems: [], warnings: [] });
    expect(codes(webs(20.9, {}, { handBreadth: 80 }))).toEqual(['SETBACK_UNUSUAL webSetback.ring-little']);
    expect(codes(webs(28.7, {}, { handBreadth: 80 }))).toEqual(['SETBACK_UNUSUAL webSetback.ring-little']);
    const refused = webs(28.9, {}, { handBreadth: 80 });
    expect(refused.warnings).toEqual([]);
    expect(refused.problems).toEqual([
      {
        code: 'SETBACK_CONTRADICTS',
        where: 'webSetback.ring-little',
        message:
          'webSetback.ring-little: this web lies 28.9 mm behind the foremost, 0.361 of the hand breadth (80 mm); it must be at most 0.36 of it, 28.8 mm. Measure the web setbacks again, fingers straight and together, ruler along the long finger.',
        kind: 'refused',
        limit: 0.36 * 80,
      },
    ]);
    // Behind the foremost counts, not behind a web that was typed as 0 from somewhere else.
    expect(webs(28.9, { 'index-long': 10, 'long-ring': 10 }, { handBreadth: 80 })).toEqual({ problems: [], warnings: [] });
  });

  it("refuses a large hand's webs on a child's fingers, whose breadth was not measured: the strip there would be no strip", () => {
    const { problems } = webs(26, { 'index-long': 0, 'long-ring': 0 }, {}, 0.6);
    expect(problems).toMatchObject([{ code: 'SETBACK_CONTRADICTS', where: 'webSetback.ring-little', kind: 'refused' }]);
    expect(problems[0]?.message).toContain('mm, estimated)');
    expect(problems[0]?.message).toContain('measure handBreadth too');
    expect(webs(12.5 * 0.6, { 'index-long': 0, 'long-ring': 0 }, {}, 0.6)).toEqual({ problems: [], warnings: [] });
    // Published means (Greiner 1991 over ANSUR II), women and men; and nothing without a size to judge by.
    for (const [mm, handBreadth] of [
      [12.4, 78.15],
      [13.8, 88.26],
    ] as const)
      expect(webs(mm, { 'index-long': 0 }, { handBreadth }).warnings).toEqual([]);
    expect(judgeMeasures({ digits: {}, palm: {}, target: {}, webs: { webSetback: { 'ring-little': 30 } } }, 'mm').problems).toEqual([]);
  });

  it('never says anything of webs that were not measured', () => {
    const { hands } = normHands('mixed', 300, seededNormal(seeded(5)));
    for (const { hand } of hands) {
      for (const measured of [{}, { 'index-long': 0 }, { 'long-ring': 0 }]) {
        const { problems, warnings } = judgeMeasures({ digits: hand.digits, palm: {}, target: {}, webs: { webSetback: measured } }, 'mm');
        expect([...problems, ...warnings].filter(({ code }) => code.startsWith('SETBACK'))).toEqual([]);
      }
    }
  });
});
