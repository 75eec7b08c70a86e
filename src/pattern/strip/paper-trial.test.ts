import { describe, expect, it } from 'vitest';
import { handJson, handOf, SMALLEST, WORKED } from '../../../tests/hands.ts';
import { blockById, blocks } from '../../block/library.ts';
import { boxOf } from '../../geometry/path.ts';
import { readHand } from '../../hand/read-hand.ts';
import { makePattern } from '../make-pattern.ts';
import { requestFromInputs } from '../request-from-inputs.ts';
import { validatePattern } from '../validate-pattern.ts';
import { paperTrial } from './paper-trial.ts';
import { stripFigures } from './strip.ts';
import { DEFAULT_STRIP_OPTIONS, type StripOptions } from './strip-options.ts';

const hand = handOf(WORKED);
const figures = (id: string, changes: Partial<StripOptions> = {}) => {
  const block = blockById(id);
  return block ? stripFigures(hand, block, { ...DEFAULT_STRIP_OPTIONS, ...changes }) : null;
};

describe('a reading of the paper strip', () => {
  // Figures of an independent program: ring lowered in three, docs/model.md rule 15.
  it.each([
    [4, 0.76, 156.812],
    [-3, 0.304, 149.612],
  ])('%d mm gives the clearance %d and the path %d', (paperReading, clearance, length) => {
    const found = figures('ring-lowered-in-three', { paperReading });
    if (!found?.ok) throw new Error('not drawn');
    expect(Math.abs(found.value.options.skinClearance - clearance)).toBeLessThan(0.001);
    expect(Math.abs(found.value.path.pathLength - length)).toBeLessThan(0.01);
    // Two-sided 95 % of a reading with a standard deviation of 1 mm.
    expect(found.value.band.above).toBeCloseTo(1.96, 2);
  });

  it('of 0 leaves the strip as it is, and one that skin and air cannot make is refused', () => {
    const plain = figures('ring-lowered-in-three');
    const zero = figures('ring-lowered-in-three', { paperReading: 0 });
    if (!plain?.ok || !zero?.ok) throw new Error('not drawn');
    expect(zero.value.path.pathLength).toBeCloseTo(plain.value.path.pathLength, 9);
    const far = figures('long-and-ring-raised-in-four', { paperReading: -15 });
    expect(far?.ok === false && far.problems.map((p) => p.code)).toEqual(['PAPER_READING']);
  });

  it.each(blocks().map((b) => b.id))('%s: is believed within the range that a refusal names, and nowhere outside it', (id) => {
    const refused = figures(id, { paperReading: -15 });
    const said = refused?.ok === false ? (refused.problems[0]?.message ?? '') : '';
    const [, least, most] = /^paperReading: -15 mm is outside .* on this hand, (-\d+) to (\d+) mm\. /.exec(said) ?? [];
    expect(Number(least)).toBeGreaterThan(-15);
    for (const paperReading of [Number(least), Number(most)]) expect(figures(id, { paperReading })?.ok, said).toBe(true);
    expect(figures(id, { paperReading: Number(least) - 1 })?.ok).toBe(false);
    // 15 is the last on the scale.
    if (Number(most) < 15) expect(figures(id, { paperReading: Number(most) + 1 })?.ok).toBe(false);
  });

  it.each([
    ['en', '95 % band -2 to +2, of the paper reading', '95 % band -3.2 to +4.7'],
    ['de', '95-%-Bereich -2 bis +2, der Papierablesung', '95-%-Bereich -3,2 bis +4,7'],
    ['es', 'banda del 95 % -2 a +2, de la lectura en papel', 'banda del 95 % -3,2 a +4,7'],
  ] as const)(
    "has its own band, which the strip's sheet says in %s: 1.96 either way, else that of the measuring errors",
    (language, ofReading, ofErrors) => {
      const block = blockById('ring-lowered-in-three');
      const bandOn = (paperReading: StripOptions['paperReading']) => {
        const options = { ...DEFAULT_STRIP_OPTIONS, paperReading };
        const made = block ? makePattern({ kind: 'strip', hand, block, options, date: null, language }) : null;
        if (!made?.ok) throw new Error('not drawn');
        const texts = made.value.pattern.beside.labels.map((label) => label.text).join(' ');
        return /\((95[^)]*|banda[^)]*)\)/.exec(texts)?.[1];
      };
      expect(bandOn(4)).toBe(ofReading);
      expect(bandOn('none')).toBe(ofErrors);
    },
  );
});

describe('the paper strip', () => {
  it.each(blocks().map((b) => [b.id, b] as const))(
    '%s: is sound, has no allowance at its starting end, and its zero where the model says the ends meet',
    (_, block) => {
      for (const side of ['left', 'right'] as const)
        for (const measures of [WORKED, SMALLEST]) {
          const made = paperTrial(handOf(measures, side), block, DEFAULT_STRIP_OPTIONS, null);
          if (!made.ok) throw new Error(made.problems[0]?.message);
          expect(validatePattern(made.value).ok).toBe(true);
          const [part] = made.value.parts;
          if (!part) throw new Error('no part');
          const box = boxOf([part.outline]);
          const at = (title: string) => boxOf(part.marks.find((m) => m.title === title)?.paths ?? []).minX;
          const zero = at('0 mm on the scale');
          const fromEnd = Math.max(zero - box.minX, box.maxX - zero);
          expect(part.marks.filter((m) => m.role === 'paper-scale')).toHaveLength(31);
          expect(Math.abs(at('10 mm on the scale') - zero)).toBeCloseTo(10, 9);
          // The scale goes on beyond zero, where more length would be.
          expect(Math.abs(at('10 mm on the scale') - box.minX) > Math.abs(zero - box.minX)).toBe(zero - box.minX > box.maxX - zero);
          expect(box.maxX - box.minX - fromEnd).toBeCloseTo(22, 6);
          expect(requestFromInputs(made.value.inputs, 'paper.svg')).toMatchObject({ ok: false, problems: [{ code: 'INPUTS_OF_TRIAL' }] });
        }
    },
  );
});

describe('a paper strip where the strip itself can be drawn', () => {
  const steep = (differential: number) => ({ ...DEFAULT_STRIP_OPTIONS, width: 20, differential });

  it.each(blocks().map((b) => [b.id, b] as const))(
    '%s: holds nothing from some differential on, which is refused with the largest at which it holds; nothing can have been read of it',
    (_, block) => {
      const differential = [34, 35, 36, 37, 38, 39, 40].find((degrees) => {
        const paper = paperTrial(hand, block, steep(degrees), null);
        return !paper.ok && stripFigures(hand, block, steep(degrees)).ok;
      });
      if (differential === undefined) throw new Error('never refused');
      const refused = paperTrial(hand, block, steep(differential), null);
      const [problem] = refused.ok ? [] : refused.problems;
      expect(problem?.message).toMatch(
        /the paper strip runs straight past .* At \d+ degrees it holds; without a paper strip the strip can be drawn\.$/,
      );
      expect(paperTrial(hand, block, steep(problem?.limit ?? 0), null).ok).toBe(true);
      const read = stripFigures(hand, block, { ...steep(differential), paperReading: 3 });
      expect(read.ok ? [] : read.problems).toMatchObject([{ code: 'PAPER_NOT_LAID', where: 'paperReading' }]);
      expect(read.ok ? '' : read.problems[0]?.message).toMatch(
        / cannot have been read: .* Without a reading \(none\) the strip can be drawn\.$/,
      );
    },
  );

  it('is refused under its narrowest, with a block that was tried', () => {
    const narrow = readHand({
      ...handJson({
        index: [10.82228102372028, 35.595131750100215, 16.861412776634097, 31.97016133926809],
        long: [32.31642701057717, 95.74303445893266, 18.92119721043855, 30.574421307072043],
        ring: [9.991801153635606, 32.86699305707965, 20.156394839286804, 29.341887375339866],
        little: [9.973173982463777, 30.827573407736672, 17.5424295803532, 29.846114536747336],
      }),
      handBreadth: 120,
      webSetback: { 'index-long': 0, 'long-ring': 0, 'ring-little': 30 },
    });
    const bare = { thickness: 1.3300534130074084, skinClearance: 0, webGap: 0, crossingPlay: 0, proximalGap: 0, seamAllowance: 0 };
    const edges = { width: 12, minimumWidth: 5, freeFlexion: 110, differential: 1.7966707833111286, trim: 5, stretch: -0.1 };
    const options = { ...DEFAULT_STRIP_OPTIONS, ...bare, ...edges };
    const trialOf = (id: string) => {
      const block = blockById(id);
      if (!narrow.ok || !block) throw new Error(id);
      expect(stripFigures(narrow.value, block, options).ok).toBe(true);
      return paperTrial(narrow.value, block, options, null);
    };
    const refused = trialOf('long-raised-in-four');
    expect(refused.ok ? [] : refused.problems).toMatchObject([{ code: 'STRIP_TOO_NARROW', kind: 'refused' }]);
    const message = refused.ok ? '' : (refused.problems[0]?.message ?? '');
    // A strip of 4.89 mm was drawn before, with its scale.
    expect(message).toMatch(/^the paper strip would be 4\.89 mm wide .* and under 5 mm none is drawn/);
    expect(trialOf(/the block (\S+) keeps it/.exec(message)?.[1] ?? '').ok).toBe(true);
  });
});
