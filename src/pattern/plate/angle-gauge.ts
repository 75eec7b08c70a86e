import { type LineArcPath, polyline, type Vertex, vertex } from '../../geometry/path.ts';
import { placePoint } from '../../geometry/transform.ts';
import { radians } from '../../units/angle.ts';
import { MINIMUM_FEATURE } from '../../units/tolerance.ts';
import type { Speech } from '../../words/speech.ts';
import type { Drawn } from '../place-marks.ts';

/** Sizes of the gauge, mm: long enough to be laid along metacarpal and finger. */
const METACARPAL_ARM = 60;
const FINGER_ARM = 45;
const WIDTH = 16;

/**
 * A gauge of the MP angle at 1:1, to be cut out of the paper: two arms that meet at the MP axis, the finger's arm bent by the angle to the
 * palmar side (right). On INFO, the axis at (0, 0), the metacarpal arm pointing down.
 */
export function angleGauge(angle: number, { plate, number }: Speech): Drawn {
  const w = plate.gauge;
  const path = gaugeOutline(angle);
  const finger = { angle: -radians(angle), dx: 0, dy: 0 };
  const middle = [placePoint({ x: 0, y: 4 }, finger), placePoint({ x: 0, y: FINGER_ARM - 4 }, finger)];
  const title = w.mark(number(angle, 1));
  const info = { layer: 'INFO', title, circles: [] } as const;
  const arm = (text: string, x: number, y: number, height: number) =>
    ({ layer: 'INFO', text, at: { x, y }, height, align: 'center', angle: 90 }) as const;
  const on = placePoint({ x: -2, y: FINGER_ARM / 2 + 2 }, finger);
  return {
    marks: [
      { ...info, role: 'angle-gauge', paths: [path] },
      {
        ...info,
        role: 'gauge-axis',
        title: w.axis,
        paths: [
          polyline([
            { x: 0, y: -4 },
            { x: 0, y: -METACARPAL_ARM + 4 },
          ]),
          polyline(middle),
        ],
        circles: [{ center: { x: 0, y: 0 }, radius: 2 }],
      },
    ],
    labels: [
      arm(w.arm(number(angle, 1)), -2, -METACARPAL_ARM / 2, 2.5),
      arm(w.metacarpal, 5, -METACARPAL_ARM / 2, 2),
      { layer: 'INFO', text: w.finger, at: on, height: 2, align: 'center', angle: 90 - angle },
    ],
  };
}

/** The gauge's edge, counter-clockwise: hollow corner on the palmar side, round about the axis on the dorsal one. */
export function gaugeOutline(angle: number): LineArcPath {
  const a = radians(angle);
  const half = WIDTH / 2;
  const finger = { angle: -a, dx: 0, dy: 0 };
  const at = (x: number, y: number, bulge = 0): Vertex => {
    const p = placePoint({ x, y }, finger);
    return vertex(p.x, p.y, bulge);
  };
  // A round too short to be seen is a corner.
  const corner = angle > 0 ? [vertex(-half, half * Math.tan(a / 2))] : [];
  const dorsal = half * a >= MINIMUM_FEATURE ? [at(-half, 0, Math.tan(a / 4)), vertex(-half, 0)] : corner;
  const vertices = [
    vertex(-half, -METACARPAL_ARM),
    vertex(half, -METACARPAL_ARM),
    ...(angle > 0 ? [vertex(half, -half * Math.tan(a / 2))] : []),
    at(half, FINGER_ARM),
    at(-half, FINGER_ARM),
    ...dorsal,
  ];
  return { closed: true, vertices };
}
