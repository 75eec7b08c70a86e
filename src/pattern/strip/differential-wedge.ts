import { polyline } from '../../geometry/path.ts';
import { radians } from '../../units/angle.ts';
import type { Speech } from '../../words/speech.ts';
import type { Drawn } from '../place-marks.ts';

/** Long enough to lie along a proximal phalanx and small enough for every page. mm */
export const WEDGE_LEG = 70;
const TEXT = 2.2;

/** A paper wedge at 1:1, to be cut out and held beside two fingers: the angle between its legs is the differential. Its point is at (0, 0). */
export function differentialWedge(degrees: number, { strip, number }: Speech): Drawn {
  const angle = radians(degrees);
  const corners = [
    { x: 0, y: 0 },
    { x: WEDGE_LEG, y: 0 },
    { x: WEDGE_LEG * Math.cos(angle), y: WEDGE_LEG * Math.sin(angle) },
  ];
  const text = strip.degrees(number(degrees, 1));
  const at = { x: WEDGE_LEG - 3, y: 1.5 };
  return {
    marks: [{ layer: 'MARK', role: 'angle-gauge', title: strip.wedge(number(degrees, 1)), paths: [polyline(corners, true)], circles: [] }],
    labels: WEDGE_LEG * Math.tan(angle) > 12 ? [{ layer: 'INFO', text, at, height: TEXT, align: 'right', angle: 0 }] : [],
  };
}
