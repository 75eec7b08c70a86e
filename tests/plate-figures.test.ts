import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Hand } from '../src/hand/hand.ts';
import { makePattern } from '../src/pattern/make-pattern.ts';
import { DEFAULT_PLATE_OPTIONS } from '../src/pattern/plate/plate-options.ts';
import { triedChange } from '../src/pattern/plate/tried-change.ts';
import { BY_NIGHT, tried } from './by-night.ts';
import { demoPlateHand, presetOf, presetPlate } from './demo-plate.ts';
import { ANGLES, refusals, SIZES, sizedHands } from './plate-shares.ts';
import { scaledHand } from './scaled-hand.ts';

const text = readFileSync('docs/plates.md', 'utf8');

/** The rows of a rule's table. */
function tableOf(rule: number): readonly (readonly string[])[] {
  const [, body = ''] = new RegExp(`## Rule ${rule}\\.[^\\n]*\\n([\\s\\S]*?)(?=\\n## |$)`).exec(text) ?? [];
  const rows = body
    .split('\n')
    .filter((line) => line.startsWith('| '))
    .slice(2);
  if (rows.length === 0) throw new Error(`rule ${rule} has no table`);
  return rows.map((row) =>
    row
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim()),
  );
}

const demo = demoPlateHand();

describe('plates of docs/plates.md', () => {
  const rows = tableOf(7);
  const DAY = [
    '1 mp-immobilisation-dorsal dorsal 45',
    '1 mp-extension-block palmar 0',
    '0.65 single-digit-with-neighbours dorsal 90',
    '0.65 mp-immobilisation-palmar palmar 90',
  ];
  const named = rows.map((row) => [row.slice(0, 4).join(' '), row] as const);

  it('are every preset, and both faces, at 0, 45 and 90 degrees, grown and child', () => {
    expect(new Set(rows.map(([size, plate, , angle]) => `${size} ${plate} ${angle}`)).size).toBe(2 * 5 * 3);
  });

  it.each(tried(named, ([name]) => DAY.includes(name)))('%s folds as it says', (_, row) => {
    const [size, plate = '', face, angle, bend, stretch, shear, gap, miss, swing, thumb, pip] = row;
    const hand = scaledHand(demo, Number(size));
    const { report } = presetPlate(presetOf(plate), Number(angle), hand);
    const found = report.faces.find((f) => f.face === face);
    if (!found) throw new Error(`no ${face}`);
    const { fold } = found;
    expect(found.bend.form).toBe(bend);
    const said = [stretch, shear, gap, miss, swing, pip].map(Number);
    const ours = [100 * fold.stretch, fold.shear, fold.leastGap, fold.mpMiss, fold.swing, fold.pipClearance];
    for (const [k, value] of ours.entries()) expect(Math.abs(value - (said[k] as number)), row.join(' ')).toBeLessThan(0.06);
    if (thumb === 'none') expect(fold.thumbClearance).toBeNull();
    else expect(Math.abs((fold.thumbClearance ?? 0) - Number(thumb))).toBeLessThan(0.06);
    // What a therapist would cut: nothing pressed, nothing stretched past stroking, no joint far off its bend.
    expect(fold.leastGap).toBeGreaterThan(0);
    expect(fold.stretch).toBeLessThan(0.05);
    expect(fold.mpMiss).toBeLessThan(2);
  });
});

describe('refusals of four-digit plates on norm hands (sources in norm-hands.ts)', () => {
  const said = tableOf(6);

  it('are under 2 % over sizes and angles, for each face', () => {
    for (const faces of ['dorsal', 'palmar', 'both']) {
      const shares = said.filter((row) => row[2] === faces).flatMap((row) => row.slice(3).map(Number));
      expect(shares).toHaveLength(SIZES.length * ANGLES.length);
      expect(shares.reduce((sum, share) => sum + share, 0) / shares.length, faces).toBeLessThan(2);
    }
  });

  it.each(tried([...SIZES], (size) => size === 0.6 || size === 1))(
    'at size %d are what docs/plates.md says, each with a change that works',
    (size) => {
      const hands: readonly Hand[] = sizedHands(BY_NIGHT ? 100 : 14, size);
      const angles = BY_NIGHT ? ANGLES : ([0, 45, 90] as const);
      const { rows, refused } = refusals(hands, angles);
      for (const { faces, shares } of rows) {
        const row = said.find(([s, , f]) => Number(s) === size && f === faces)?.slice(3) ?? [];
        for (const [k, angle] of angles.entries()) {
          const share = Number(row[ANGLES.indexOf(angle)]) / 100;
          // By day a few hands: within three standard deviations of so small a draw, and a hand.
          const slack = BY_NIGHT ? 0.006 : 3 * Math.sqrt((share * (1 - share)) / hands.length) + 1 / hands.length;
          expect(Math.abs((shares[k] as number) - share), `${faces} ${angle}`).toBeLessThan(slack + 1e-9);
        }
      }
      for (const { hand, design } of BY_NIGHT ? refused : refused.slice(0, 4)) {
        const made = makePattern({ kind: 'plate', hand, plate: design, options: DEFAULT_PLATE_OPTIONS, date: null });
        const message = made.ok ? '' : (made.problems[0]?.message ?? '');
        if (message.startsWith('mpDepth')) expect(message).toMatch(/Measure it/);
        else {
          const change = triedChange(hand, design, DEFAULT_PLATE_OPTIONS);
          expect(message).toContain(`Tried, and it can be made: with ${change?.words}.`);
          const again = change && makePattern({ kind: 'plate', hand, plate: change.design, options: change.options, date: null });
          expect(again?.ok, message).toBe(true);
        }
      }
      if (size === 0.6) expect(refused.length).toBeGreaterThan(0);
    },
  );
});
