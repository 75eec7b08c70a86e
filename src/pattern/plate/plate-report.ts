import { boxOf, signedArea } from '../../geometry/path-measures.ts';
import type { DigitName } from '../../hand/digits.ts';
import { degrees } from '../../units/angle.ts';
import { rounded } from '../../units/number.ts';
import type { Warning } from '../../units/result.ts';
import { type Face, PLATE_ANGLE, type PlateDesign } from './plate-design.ts';
import { type FoldCheck, foldBound, foldCheck } from './plate-fold.ts';
import type { FaceFrame, PlateFrame } from './plate-frame.ts';
import { LEAST_CORNER_RADIUS, type PlateOptions } from './plate-options.ts';
import type { PlateOutline } from './plate-outline.ts';
import { type Strap, straps } from './plate-straps.ts';

/** What `draw --json` prints about one face of a plate; mm and degrees. */
export interface FaceReport {
  readonly face: Face;
  /** Of the flat piece. */
  readonly width: number;
  readonly length: number;
  readonly area: number;
  /** Across at the metacarpal heads and over the proximal phalanges, wings and side walls included. */
  readonly handWidth: number;
  readonly fingerWidth: number;
  readonly bend: { readonly insideRadius: number; readonly allowance: number; readonly before: number };
  readonly digits: readonly { readonly digit: DigitName; readonly beyondBend: number; readonly shortened: number }[];
  readonly smallestRadius: number;
  readonly fold: FoldCheck & { readonly bound: number };
}

export interface PlateReport {
  readonly plate: { readonly id: string; readonly faces: PlateDesign['faces']; readonly digits: readonly DigitName[] };
  readonly angle: number;
  /** The whole range that the angle was chosen from; the clinician decides. */
  readonly angleRange: readonly [number, number];
  readonly section: { readonly breadth: number; readonly circumference: number; readonly thickness: number };
  readonly mpDepth: number;
  readonly cover: number;
  readonly wristFree: number;
  readonly faces: readonly FaceReport[];
  /** Over the palmar edge; a dorsal plate does not stop PIP flexion. */
  readonly freePipFlexion: Readonly<Partial<Record<DigitName, number>>>;
  readonly straps: readonly Strap[];
  /** Measurements that were estimated, not taken. */
  readonly estimated: readonly string[];
  readonly warnings: readonly Warning[];
}

/** Everything that was found for a plate, before it is drawn. */
export interface PlateFigures {
  readonly design: PlateDesign;
  readonly options: PlateOptions;
  readonly frame: PlateFrame;
  readonly outlines: readonly PlateOutline[];
  readonly straps: readonly Strap[];
  readonly freePip: PlateReport['freePipFlexion'];
  readonly folds: readonly FoldCheck[];
  readonly bound: number;
}

/** Under this the plate's edge may stop the PIP joint before the hand does (normal PIP flexion is about 100). degrees */
const LEAST_FREE_PIP_FLEXION = 110;
const DECIMALS = 3;

export function plateFigures(
  design: PlateDesign,
  options: PlateOptions,
  frame: PlateFrame,
  outlines: readonly PlateOutline[],
): PlateFigures {
  const folds = frame.faces.map((face, k) => foldCheck(frame, face, (outlines[k] as PlateOutline).outline, options));
  return {
    design,
    options,
    frame,
    outlines,
    straps: straps(frame, outlines, options),
    freePip: freePipFlexion(frame, outlines, options),
    folds,
    bound: foldBound(frame, options),
  };
}

/** PIP flexion in degrees that each held digit keeps over the palmar edge, as for strips: 180 - atan2(thickness, edge to PIP crease). */
function freePipFlexion(frame: PlateFrame, outlines: readonly PlateOutline[], options: PlateOptions): PlateReport['freePipFlexion'] {
  const k = frame.faces.findIndex((face) => face.face === 'palmar');
  const face = frame.faces[k];
  if (!face) return {};
  return Object.fromEntries(
    (outlines[k]?.distal ?? []).map(({ digit, y }) => {
      const edge = face.columns.find((c) => c.digit === digit)?.edge ?? y;
      return [digit, 180 - degrees(Math.atan2(options.thickness, options.pipClearance + edge - y))];
    }),
  );
}

/** Everything about a plate that does not stop it but that the therapist must see. */
export function plateWarnings({ options, freePip, folds, bound, frame, outlines }: PlateFigures): readonly Warning[] {
  const warnings: Warning[] = [];
  for (const [digit, angle] of Object.entries(freePip)) {
    if (angle >= LEAST_FREE_PIP_FLEXION) continue;
    warnings.push({
      code: 'PIP_FLEXION_NOT_FREE',
      where: `digits.${digit}`,
      message: `the plate may stop PIP flexion of the ${digit} finger at ${angle.toFixed(0)} degrees, under ${LEAST_FREE_PIP_FLEXION}`,
      value: angle,
      limit: LEAST_FREE_PIP_FLEXION,
      next: 'use thinner sheet or a larger pipClearance',
    });
  }
  for (const [k, fold] of folds.entries()) {
    if (fold.worstGap <= bound && fold.leastGap >= 0) continue;
    warnings.push({
      code: 'FOLD_GAP',
      where: frame.faces[k]?.face ?? '',
      message: `folded round the modelled hand the ${frame.faces[k]?.face} plate stands ${fold.leastGap.toFixed(1)} to ${fold.worstGap.toFixed(1)} mm off the skin (${fold.worstAt}); 0 to ${bound.toFixed(1)} is expected`,
      value: fold.worstGap,
      limit: bound,
      next: 'measure breadth, circumference and the digits again; mould with care there',
    });
  }
  const smallest = Math.min(...outlines.flatMap((o) => o.corners.map((c) => c.radius)));
  if (smallest < LEAST_CORNER_RADIUS - 0.01 && options.webNotch === 0) {
    warnings.push({
      code: 'CORNER_RADIUS',
      message: `the tightest corner has a radius of ${smallest.toFixed(1)} mm, under ${LEAST_CORNER_RADIUS}: this hand and angle leave no room for more`,
      value: smallest,
      limit: LEAST_CORNER_RADIUS,
      next: 'flare it and feel that it is smooth',
    });
  }
  return warnings;
}

export function plateReport(f: PlateFigures, warnings: readonly Warning[]): PlateReport {
  const r = (value: number) => rounded(value, DECIMALS);
  const { frame, design, options } = f;
  return {
    plate: { id: design.id, faces: design.faces, digits: design.digits },
    angle: design.angle,
    angleRange: [PLATE_ANGLE.low, PLATE_ANGLE.high],
    section: { breadth: r(frame.section.breadth), circumference: r(frame.section.circumference), thickness: r(frame.section.thickness) },
    mpDepth: r(frame.palm.mpDepth),
    cover: r(frame.cover),
    wristFree: r(frame.palm.metacarpalLength - frame.cover - options.trim),
    faces: frame.faces.map((face, k) => faceReport(f, face, k)),
    freePipFlexion: Object.fromEntries(Object.entries(f.freePip).map(([digit, angle]) => [digit, rounded(angle, 1)])),
    straps: f.straps.map((s) => ({ ...s, width: rounded(s.width, 1), length: rounded(s.length, 1) })),
    estimated: frame.estimated,
    warnings,
  };
}

function faceReport(f: PlateFigures, face: FaceFrame, k: number): FaceReport {
  const r = (value: number) => rounded(value, DECIMALS);
  const outline = f.outlines[k] as PlateOutline;
  const fold = f.folds[k] as FoldCheck;
  const box = boxOf([outline.outline]);
  return {
    face: face.face,
    width: r(box.maxX - box.minX),
    length: r(box.maxY - box.minY),
    area: r(signedArea(outline.outline)),
    handWidth: r(2 * (face.midLateral + face.wing)),
    fingerWidth: r(f.frame.row.length + outline.walls.radial + outline.walls.ulnar),
    bend: { insideRadius: r(face.bend.insideRadius), allowance: r(face.bend.allowance), before: r(face.bend.before) },
    digits: outline.distal.map(({ digit, y }) => {
      const column = face.columns.find((c) => c.digit === digit);
      const shortened = (column?.edge ?? y) - y;
      return { digit, beyondBend: r((column?.reach ?? 0) - face.bend.before - shortened), shortened: r(shortened) };
    }),
    smallestRadius: r(Math.min(...outline.corners.map((c) => c.radius))),
    fold: {
      points: fold.points,
      leastGap: r(fold.leastGap),
      worstGap: r(fold.worstGap),
      worstAt: fold.worstAt,
      worstOnMidlines: r(fold.worstOnMidlines),
      leastToPip: r(fold.leastToPip),
      leastToWrist: r(fold.leastToWrist),
      bound: r(f.bound),
    },
  };
}
