import { describe, expect, it } from 'vitest';
import { handJson, handOf, WORKED, WORKED_WEBS } from '../../../tests/hands.ts';
import { DEMO_HAND, stripOf } from '../../../tests/pdf-samples.ts';
import { blockById } from '../../block/library.ts';
import type { DigitName } from '../../hand/digits.ts';
import { webLevels } from '../../hand/estimate-palm.ts';
import type { Hand } from '../../hand/hand.ts';
import { readHand } from '../../hand/read-hand.ts';
import { stripFigures } from './strip.ts';
import { DEFAULT_STRIP_OPTIONS, type StripOptions } from './strip-options.ts';
import { stripReport } from './strip-report.ts';

const figures = (id: string, changes: Partial<StripOptions> = {}, hand: Hand = handOf(WORKED)) => {
  const block = blockById(id);
  const found = block ? stripFigures(hand, block, { ...DEFAULT_STRIP_OPTIONS, ...changes }) : null;
  if (!found?.ok) throw new Error(id);
  return found.value;
};
/** A hand of the worked fingers made smaller or larger, its webs as they are measured, mm. */
const scaled = (scale: number, webSetback: object): Hand => {
  const digits = Object.fromEntries(Object.entries(WORKED).map(([digit, mm]) => [digit, mm.map((one) => scale * one)]));
  const read = readHand({ ...handJson(digits as unknown as typeof WORKED), webSetback });
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return read.value;
};

describe('levels of webs', () => {
  it('are those behind the foremost, which is 0 whatever was measured there', () => {
    const { level, estimated } = webLevels(scaled(1, { 'index-long': 3, 'long-ring': 2, 'ring-little': 14 }));
    expect(level).toEqual({ 'index-long': -1, 'long-ring': 0, 'ring-little': -12 });
    expect(estimated).toEqual([]);
  });

  it('that were not measured are 0, 0.004 and 0.159 of the hand breadth behind it, and flagged', () => {
    const read = readHand({ ...handJson(WORKED), webSetback: undefined, handBreadth: 80 });
    if (!read.ok) throw new Error(read.problems[0]?.message);
    const { level, estimated } = webLevels(read.value);
    expect(Object.values(level).map((mm) => Math.round(1000 * mm))).toEqual([0, -320, -12720]);
    expect(estimated).toEqual(['index-long', 'long-ring', 'ring-little']);
    expect(figures('ring-raised-in-three', {}, read.value).estimated).toContain('webSetback.ring-little');
  });
});

describe('the straight outline', () => {
  // Worked by hand from root levels, rooms and the e of rule 12: 19 - 12.5 - 3.28 - 2, and 25 - 6.25 - 3.91 - 2.
  it.each([
    ['ring-lowered-in-three', 1.22],
    ['ring-raised-in-three', 1.22],
    ['long-raised-in-three', 12.84],
    ['long-lowered-in-three', 12.84],
  ])('%s: a band at one level has %d mm of room', (id, room) => {
    expect(Math.abs(stripReport(figures(id)).straightWidth - room)).toBeLessThan(0.011);
  });

  it('is straight at its proximal edge, with the relief that the staggered one has, and says how far and how steeply it is pulled', () => {
    const staggered = figures('ring-lowered-in-three');
    const { edges, pull, warnings, flat } = figures('ring-lowered-in-three', { outline: 'straight' });
    expect(staggered.pull).toBeNull();
    expect(staggered.warnings.map((w) => w.code)).not.toContain('STRAIGHT_PULLED');
    for (const [k, edge] of edges.entries()) {
      expect(edge.proximal).toBe(0);
      const other = staggered.edges[k];
      if (edge.kind === 'midline' && other) expect(Math.abs(edge.distal - (other.distal - other.proximal))).toBeLessThan(0.011);
    }
    expect(new Set(flat.proximal.map((p) => p.y))).toEqual(new Set([0]));
    // The table of rule 11: 6.25 mm from the web's level to the ring's root, over the 10.87 mm from 141.83 to the seam at 152.70.
    expect(pull?.between).toEqual(['ring', 'little']);
    expect(pull?.difference).toBeCloseTo(6.25, 2);
    expect(Math.abs((pull?.shear ?? Number.NaN) - 6.25 / 10.87)).toBeLessThan(0.002);
    const warning = warnings.find((w) => w.code === 'STRAIGHT_PULLED');
    expect(warning).toMatchObject({ value: pull?.shear, limit: 0.2 });
    const half = (pull?.shear ?? Number.NaN) / 2;
    const stretched = 100 * (Math.sqrt(1 + half * half) + half - 1);
    const pressed = 100 * (1 - (Math.sqrt(1 + half * half) - half));
    expect(warning?.message).toContain(`stretches it by ${Math.round(stretched)} % one way and presses it by ${Math.round(pressed)} %`);
  });

  it.each(['ring-lowered-in-three', 'ring-lowered-in-four', 'long-and-ring-lowered-in-four'])(
    '%s: leaves each finger free what the staggered one does, once it is pulled to where that lies',
    (id) => {
      // 131 degrees were said of the long finger in three before, for 102.
      const free = Object.entries(figures(id).freePip);
      const straight = figures(id, { outline: 'straight' }).freePip;
      for (const [digit, angle] of free) expect(Math.abs((straight[digit as DigitName] ?? Number.NaN) - angle), digit).toBeLessThan(0.1);
      expect(Object.keys(straight)).toEqual(free.map(([digit]) => digit));
    },
  );

  it('is not warned of where webs are level', () => {
    const { warnings, pull } = figures('ring-lowered-in-three', { outline: 'straight' }, scaled(1, { ...WORKED_WEBS, 'ring-little': 0 }));
    expect(pull?.shear ?? 0).toBe(0);
    expect(warnings.map((w) => w.code)).not.toContain('STRAIGHT_PULLED');
  });
});

describe('the width that is left to the program', () => {
  it.each([
    ['worked', 'long-raised-in-three', 1],
    ['worked', 'ring-lowered-in-three', 1],
    ['a small child', 'ring-lowered-in-three', 0.65],
    ['a large hand', 'long-and-ring-raised-in-four', 1.3],
  ])('%s, %s: is the widest of 20, 18, 15, 12 that keeps two thirds of itself at every palmar midline, else 12', (_, id, scale) => {
    const hand = scaled(scale, { 'index-long': 0, 'long-ring': 0, 'ring-little': 12.5 * scale });
    const share = (width: number) => {
      const { edges } = figures(id, { width }, hand);
      const palmar = edges.flatMap((e) => (e.kind === 'midline' && e.aspect === 'palmar' ? [e.distal - e.proximal] : []));
      return Math.min(...palmar) / width;
    };
    const expected = [20, 18, 15].find((width) => share(width) >= 2 / 3 - 1e-9) ?? 12;
    expect(figures(id, { width: 'auto' }, hand).options.width).toBe(expected);
  });
});

describe('the seam on a ramp', () => {
  it('says on the making page by how much the edges part for each mm that it closes longer or shorter', () => {
    const step = stripOf(DEMO_HAND, 'ring-lowered-in-three').notes?.steps.find((s) => s.startsWith('Seam'));
    // 6.25 mm up over 11.26 on one side of the seam, 6.25 down over 10.87 on the other (table of rule 11): 0.57 for each mm.
    expect(step).toContain(
      'For each mm that it closes longer or shorter than drawn, the edges of the two ends part by 0.6 mm along the hand',
    );
    const level = stripOf(DEMO_HAND, 'long-raised-in-three').notes?.steps.find((s) => s.startsWith('Seam'));
    expect(level).not.toContain('part by');
  });
});
