import { describe, expect, it } from 'vitest';
import { handJson, WORKED } from '../../tests/hands.ts';
import { sampleCourse } from '../../tests/sample-course.ts';
import { blockById } from '../block/library.ts';
import { readHand } from '../hand/read-hand.ts';
import { stripFigures } from '../pattern/strip/strip.ts';
import { DEFAULT_STRIP_OPTIONS, type StripOptions } from '../pattern/strip/strip-options.ts';
import { closingFit, closingsOf, FEWEST_STRIPS } from './closing-fit.ts';

const ID = 'ring-lowered-in-three';
const block = blockById(ID);
const hand = { ...handJson(WORKED), code: 'TEST-1' };

function pathAt(changes: Partial<StripOptions>): number {
  const read = readHand(hand);
  const found = read.ok && block ? stripFigures(read.value, block, { ...DEFAULT_STRIP_OPTIONS, ...changes }) : null;
  if (!found?.ok) throw new Error('no strip');
  return found.value.path.pathLength;
}

const drawn = pathAt({});
/** Where a strip ends that is drawn with the usual clearance and closed as one with another. */
const off = (skinClearance: number) => pathAt({ skinClearance }) - drawn;

/** A case whose strip was closed so far from its mark, mm. */
function closed(closedAt: number, options: Partial<StripOptions> = {}, rest: object = { hand }) {
  const record = sampleCourse([[0, '25/85', { made: 'strip for extension, 20', closedAt }]], rest as Record<string, unknown>);
  const file = structuredClone(record.file) as unknown as { visits: { made: Record<string, unknown> }[] };
  const made = file.visits[0]?.made ?? {};
  Object.assign(made, { options: { ...DEFAULT_STRIP_OPTIONS, ...options }, geometryVersion: '2' });
  return { ...record, file: file as unknown as typeof record.file };
}

describe('closingsOf', () => {
  it('finds the clearance with which the strip would have been drawn as it was closed', () => {
    const [one] = closingsOf(closed(off(0.8)));
    expect(one).toMatchObject({ block: ID, drawnWith: 0.5, paperReading: null });
    expect(one?.wouldMeet).toBeCloseTo(0.8, 6);
    expect(closingsOf(closed(0))[0]?.wouldMeet).toBeCloseTo(0.5, 6);
    // Stretched in draping the strip is shorter flat than round the hand.
    const stretched = closed(off(0.8) / 1.1, { stretch: 0.1 });
    expect(closingsOf(stretched)[0]?.wouldMeet).toBeCloseTo(0.8, 6);
  });

  it('counts a strip that no clearance meets, and one of a hand that the case does not hold', () => {
    expect(closingsOf(closed(45))[0]).toMatchObject({ closedAt: 45, wouldMeet: null });
    expect(closingsOf(closed(2, {}, {}))[0]).toMatchObject({ closedAt: 2, drawnWith: null, wouldMeet: null });
  });

  it('takes what was noted last of each strip, and nothing of a plate or of no device', () => {
    const visits = (made: string) =>
      sampleCourse([
        [0, '25/85', { made, closedAt: 1 }],
        [14, '20/85', { closedAt: 3 }],
      ]);
    expect(closingsOf(visits('strip for extension, 20')).map((c) => c.closedAt)).toEqual([3]);
    expect(closingsOf(visits('plate at 60'))).toEqual([]);
    expect(closingsOf(sampleCourse([[0, '25/85', { closedAt: 1 }]]))).toEqual([]);
  });
});

describe('closingFit', () => {
  const fitOf = (...clearances: number[]) => closingFit(clearances.flatMap((c) => closingsOf(closed(off(c)))));

  it('gives median and spread, and a clearance for the clinic from five strips on', () => {
    const fit = fitOf(0.5, 0.6, 0.8, 0.9, 1.3);
    expect(fit.clearance).toMatchObject({ count: 5 });
    expect(fit.clearance?.median).toBeCloseTo(0.8, 6);
    // Distances from the median: 0.3, 0.2, 0, 0.1, 0.5.
    expect(fit.clearance?.spread).toBeCloseTo(0.2, 6);
    expect(fit.byModel?.median).toBeCloseTo(off(0.8), 6);
    expect(fit.suggested).toBeCloseTo(0.8, 6);
    const few = fitOf(0.5, 0.6, 0.8, 0.9);
    expect([few.clearance?.count, few.suggested]).toEqual([FEWEST_STRIPS - 1, null]);
    expect(few.clearance?.median).toBeCloseTo(0.7, 6);
    expect(closingFit([])).toEqual({ closings: [], byModel: null, byPaper: null, clearance: null, suggested: null });
  });

  it('never suggests to press the skin, and keeps strips of a paper trial apart', () => {
    expect(fitOf(-0.2, -0.3, -0.1, -0.2, -0.4).suggested).toBeNull();
    const paper = closingsOf(closed(1, { paperReading: 4 }));
    expect(paper[0]).toMatchObject({ paperReading: 4 });
    expect(closingFit(paper)).toMatchObject({ byModel: null, clearance: null, byPaper: { count: 1, median: 1, spread: 0 } });
  });
});
