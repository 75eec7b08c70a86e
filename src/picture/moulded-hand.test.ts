import { beforeAll, describe, expect, it } from 'vitest';
import demo from '../../fixtures/demo-hand.json' with { type: 'json' };
import { blockById } from '../block/library.ts';
import { boxOf, unionBox } from '../geometry/path.ts';
import type { Hand } from '../hand/hand.ts';
import { readHand } from '../hand/read-hand.ts';
import type { DrawnShape } from '../pattern/drawing.ts';
import { stripFigures } from '../pattern/strip/strip.ts';
import { DEFAULT_STRIP_OPTIONS } from '../pattern/strip/strip-options.ts';
import type { StripFigures } from '../pattern/strip/strip-report.ts';
import { type DrawnMoulded, drawMoulded, type MouldedScene, mouldedScene, VIEWPOINTS } from './moulded-hand.ts';

/** Coarse: what is asserted does not hang on it. */
const COARSE = { step: 3 };
const QUICK = { squares: 140 };

function demoHand(): Hand {
  const read = readHand(demo);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

function demoFigures(hand: Hand, block: string): StripFigures {
  const found = blockById(block);
  const figures = found && stripFigures(hand, found, DEFAULT_STRIP_OPTIONS);
  if (!figures?.ok) throw new Error(`no strip ${block}`);
  return figures.value;
}

const shapes = ({ drawing }: DrawnMoulded) => drawing.items.filter((item): item is DrawnShape => item.kind === 'shape');
const roles = (drawn: DrawnMoulded) => new Set(shapes(drawn).map((item) => item.role));
/** Shoelace areas of the loops of a fill, mm2; holes count against it. */
const area = (drawn: DrawnMoulded, test: (role: string) => boolean) =>
  Math.abs(
    shapes(drawn)
      .filter((item) => item.fill !== null && test(item.role))
      .flatMap((item) => item.paths)
      .reduce((sum, { vertices }) => {
        const twice = vertices.reduce((s, v, k) => {
          const next = vertices[(k + 1) % vertices.length] ?? v;
          return s + v.x * next.y - next.x * v.y;
        }, 0);
        return sum + twice / 2;
      }, 0),
  );

describe('a moulded hand', () => {
  let scene: MouldedScene;
  const hand = demoHand();
  beforeAll(() => {
    scene = mouldedScene({ ...COARSE, hand, side: 'left', strip: demoFigures(hand, 'ring-lowered-in-three'), treated: 'ring' });
  });

  it('from above hides the lowered finger under the strip, from the palm the strip behind it', () => {
    const treated = (view: keyof typeof VIEWPOINTS) =>
      area(drawMoulded(scene, { ...VIEWPOINTS[view], ...QUICK }), (r) => r.startsWith('treated'));
    const strip = (view: keyof typeof VIEWPOINTS) =>
      area(drawMoulded(scene, { ...VIEWPOINTS[view], ...QUICK }), (r) => r.startsWith('strip'));
    expect(treated('palm')).toBeGreaterThan(1.3 * treated('above'));
    expect(strip('above')).toBeGreaterThan(1.2 * strip('palm'));
  });

  it('has nails where they can be seen', () => {
    expect(roles(drawMoulded(scene, { ...VIEWPOINTS.above, ...QUICK }))).toContain('nail');
    expect(area(drawMoulded(scene, { ...VIEWPOINTS.palm, ...QUICK }), (r) => r === 'nail')).toBeLessThan(40);
  });

  it('of the other side is the mirror image', () => {
    const left = drawMoulded(scene, { up: 40, ...QUICK });
    const right = drawMoulded({ ...scene, side: 'right' }, { up: 40, ...QUICK });
    expect(right.fingers.get('index')?.tip.x).toBeCloseTo(left.drawing.extents.maxX - (left.fingers.get('index')?.tip.x ?? 0), -0.4);
    expect(right.fingers.get('ring')?.tip.y).toBeCloseTo(left.fingers.get('ring')?.tip.y ?? 0, 6);
  });

  it('lies inside its area, with finite numbers, from any side, and is drawn the same again', () => {
    for (const across of [-150, 0, 60]) {
      for (const up of [-80, 35]) {
        const drawn = drawMoulded(scene, { across, up, ...QUICK });
        const ink = unionBox(shapes(drawn).flatMap((item) => item.paths.map((path) => boxOf([path]))));
        const { maxX, maxY } = drawn.drawing.extents;
        expect(ink.minX >= 0 && ink.minY >= 0 && ink.maxX <= maxX && ink.maxY <= maxY, `${across} ${up}`).toBe(true);
      }
    }
    expect(drawMoulded(scene, QUICK).drawing).toEqual(drawMoulded(scene, QUICK).drawing);
  });

  it('shows the part of the strip that is asked for, and in which tone', () => {
    const strip = demoFigures(hand, 'ring-lowered-in-three');
    const half = strip.path.pathLength / 2;
    const shown = [
      { from: 0, to: half, tone: 'done' },
      { from: half, to: half + 30, tone: 'strip' },
    ] as const;
    const part = drawMoulded(mouldedScene({ ...COARSE, hand, side: 'left', strip, shown }), { ...VIEWPOINTS.fingertips, ...QUICK });
    const names = [...roles(part)].join(' ');
    expect(names).toMatch(/done/);
    expect(names).toMatch(/strip/);
    const none = drawMoulded(mouldedScene({ ...COARSE, hand, side: 'left', strip, shown: [] }), QUICK);
    expect([...roles(none)].join(' ')).not.toMatch(/strip|done/);
  });

  it('bends a finger the way it is asked to', () => {
    const bent = mouldedScene({ ...COARSE, hand, side: 'left', pose: { mp: 20, pip: 0, pipOf: { ring: 90 } } });
    const { fingers } = drawMoulded(bent, { across: -90, ...QUICK });
    const [ring, long] = [fingers.get('ring'), fingers.get('long')];
    // Seen from the side: a straight finger's tip lies as high as its PIP joint, a bent one's lower.
    expect(Math.abs((long?.tip.y ?? 0) - (long?.pip.y ?? 0))).toBeLessThan(0.5);
    expect((ring?.pip.y ?? 0) - (ring?.tip.y ?? 0)).toBeGreaterThan(20);
  });
});
