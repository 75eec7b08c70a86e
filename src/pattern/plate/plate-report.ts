import { NO_FIST } from '../../block/rank-blocks.ts';
import { boxOf, signedArea } from '../../geometry/path.ts';
import type { DigitName } from '../../hand/digits.ts';
import type { FoldFindings } from '../../judge/judge-plate.ts';
import { degrees } from '../../units/angle.ts';
import { rounded } from '../../units/number.ts';
import type { Warning } from '../../units/result.ts';
import { freeFlexionOver } from '../free-flexion.ts';
import type { BendForm } from './bend-forms.ts';
import { type Face, PLATE_ANGLE, type PlateDesign } from './plate-design.ts';
import { type FaceFrame, heldColumns, LEAST_FINGER, type PlateBend, type PlateFrame, THUMB_CLEARANCE } from './plate-frame.ts';
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
  /** Which way the plate is folded, what each way costs (null: not to be had), where the MP joints lie across, and each part's bend. */
  readonly bend: {
    readonly asked: PlateBend['asked'];
    readonly form: BendForm;
    readonly costs: PlateBend['costs'];
    readonly columns: readonly { readonly digit: DigitName; readonly x: number; readonly y: number }[];
    readonly parts: readonly {
      readonly digits: readonly DigitName[];
      readonly insideRadius: number;
      readonly length: number;
      readonly before: number;
      /** Degrees by which the line is off square, and the finger part is turned on the flat plate to make up for it. */
      readonly oblique: number;
      readonly turned: number;
    }[];
  };
  readonly digits: readonly { readonly digit: DigitName; readonly beyondBend: number; readonly shortened: number }[];
  readonly smallestRadius: number;
  /** Of the hollows between digits; null without one. */
  readonly webRadius: number | null;
  /** The drawing folded along its marks and laid on a hand built from the measures. */
  readonly fold: FoldFindings;
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
  /** What the plate was drawn with; less than asked for where a palmar plate was closed in. */
  readonly pipClearance: number;
  readonly palmarBendRadius: number;
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
}

const DECIMALS = 3;

export function plateFigures(
  design: PlateDesign,
  options: PlateOptions,
  frame: PlateFrame,
  outlines: readonly PlateOutline[],
): PlateFigures {
  return {
    design,
    options,
    frame,
    outlines,
    straps: straps(frame, outlines, options),
    freePip: freePipFlexion(frame, outlines, options),
  };
}

/** PIP flexion in degrees that each held digit keeps over the palmar edge, as with one layer of a strip (`freeFlexionOver`). */
function freePipFlexion(frame: PlateFrame, outlines: readonly PlateOutline[], options: PlateOptions): PlateReport['freePipFlexion'] {
  const k = frame.faces.findIndex((face) => face.face === 'palmar');
  const face = frame.faces[k];
  if (!face) return {};
  return Object.fromEntries(
    heldColumns(face).map(({ digit, held }) => {
      const along = outlines[k]?.distal.find((d) => d.digit === digit)?.along ?? held.edge;
      return [
        digit,
        freeFlexionOver(held.row.halfDepth, options.skinClearance + options.thickness, options.pipClearance + held.edge - along),
      ];
    }),
  );
}

/** Everything about a plate that does not stop it but that the therapist must see. */
export function plateWarnings({ options, freePip, frame, outlines }: PlateFigures, folds: readonly FoldFindings[]): readonly Warning[] {
  const warnings: Warning[] = [];
  for (const [digit, angle] of Object.entries(freePip)) {
    if (angle >= NO_FIST) continue;
    warnings.push({
      code: 'PLATE_STOPS_PIP',
      where: `digits.${digit}`,
      message: `the plate stops PIP flexion of the ${digit} finger at about ${angle.toFixed(0)} degrees, under ${NO_FIST}`,
      value: angle,
      limit: NO_FIST,
      next: 'use a larger pipClearance or a dorsal plate, and check the fist before the plate sets',
    });
  }
  for (const face of frame.faces) {
    const short = heldColumns(face).filter(({ held }) => held.edge - held.bendEnd < LEAST_FINGER);
    for (const { digit, held } of short)
      warnings.push({
        code: 'HELD_SHORT',
        where: `digits.${digit}`,
        message: `the ${face.face} plate covers only ${(held.edge - held.bendEnd).toFixed(1)} mm of the ${digit} finger beyond its bend, under ${LEAST_FINGER}: it hardly holds it`,
        value: held.edge - held.bendEnd,
        limit: LEAST_FINGER,
        next: 'use a smaller MP angle or a dorsal plate if this MP joint must be held',
      });
  }
  for (const [k, fold] of folds.entries()) {
    const face = frame.faces[k]?.face ?? 'dorsal';
    warnings.push(...foldWarnings(face, fold, face === 'dorsal' ? frame.back : options));
  }
  const smallest = Math.min(...outlines.map((o) => o.smallestRadius));
  if (smallest < LEAST_CORNER_RADIUS - 0.01) {
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

/**
 * What is still taken as fitting, mm: skin gives way by as much (ours, no source); and a clearance may be short by what the joints' place on the
 * hand's round border moves the plate.
 */
const FIT = { pressed: 0.5, clearance: 0.25 } as const;
/** Over this a sheet is not to be had to shape by stroking. Ours, no source. */
const MOST_STRETCH = 0.05;

function foldWarnings(face: Face, fold: FoldFindings, options: PlateOptions): readonly Warning[] {
  const warnings: Warning[] = [];
  if (fold.leastGap < -FIT.pressed)
    warnings.push({
      code: 'FOLD_PRESSES',
      where: face,
      message: `folded and laid on the modelled hand the ${face} plate presses ${(-fold.leastGap).toFixed(1)} mm into the ${fold.leastAt} finger`,
      value: fold.leastGap,
      limit: -FIT.pressed,
      next: 'pad there before moulding, or use a larger skinClearance',
    });
  if (fold.stretch > MOST_STRETCH)
    warnings.push({
      code: 'FOLD_STRETCH',
      where: face,
      message: `the ${face} plate has to stretch or gather by ${(100 * fold.stretch).toFixed(0)} % at its bend, over ${100 * MOST_STRETCH} %`,
      value: fold.stretch,
      limit: MOST_STRETCH,
      next: 'use bend auto, straight or split',
    });
  if (fold.pipClearance < options.pipClearance - FIT.clearance)
    warnings.push({
      code: 'PIP_CLEARANCE',
      where: face,
      message: `folded, the ${face} plate leaves ${fold.pipClearance.toFixed(1)} mm to a PIP joint, under ${options.pipClearance}`,
      value: fold.pipClearance,
      limit: options.pipClearance,
      next: 'trim the distal edge there',
    });
  if (fold.thumbClearance !== null && fold.thumbClearance < THUMB_CLEARANCE - FIT.clearance)
    warnings.push({
      code: 'THUMB_CLEARANCE',
      where: face,
      message: `the radial wing of the ${face} plate ends ${fold.thumbClearance.toFixed(1)} mm from the thumb web, under ${THUMB_CLEARANCE}`,
      value: fold.thumbClearance,
      limit: THUMB_CLEARANCE,
      next: 'trim the wing beside the thumb web',
    });
  return warnings;
}

export function plateReport(f: PlateFigures, folds: readonly FoldFindings[], warnings: readonly Warning[]): PlateReport {
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
    pipClearance: r(options.pipClearance),
    palmarBendRadius: r(options.palmarBendRadius),
    faces: frame.faces.map((face, k) => faceReport(f, face, k, folds[k] as FoldFindings)),
    freePipFlexion: Object.fromEntries(Object.entries(f.freePip).map(([digit, angle]) => [digit, rounded(angle, 1)])),
    straps: f.straps.map((s) => ({ ...s, width: rounded(s.width, 1), length: rounded(s.length, 1) })),
    estimated: frame.estimated,
    warnings,
  };
}

function faceReport(f: PlateFigures, face: FaceFrame, k: number, fold: FoldFindings): FaceReport {
  const r = (value: number) => rounded(value, DECIMALS);
  const outline = f.outlines[k] as PlateOutline;
  const box = boxOf([outline.outline]);
  const { asked, form, costs } = face.bend;
  const cost = (of: BendForm) => {
    const found = costs[of];
    return (
      found && {
        stretch: rounded(found.stretch, 4),
        shear: rounded(found.shear, 1),
        miss: r(found.miss),
        swing: rounded(found.swing, 1),
        cost: r(found.cost),
      }
    );
  };
  return {
    face: face.face,
    width: r(box.maxX - box.minX),
    length: r(box.maxY - box.minY),
    area: r(signedArea(outline.outline)),
    handWidth: r(face.midLateral + face.wing + outline.bar.out),
    fingerWidth: r(f.frame.row.length + outline.walls.radial + outline.walls.ulnar),
    bend: {
      asked,
      form,
      costs: { straight: cost('straight'), split: cost('split'), kinked: cost('kinked') },
      columns: heldColumns(face).map(({ digit, mpX, mpY }) => ({ digit, x: r(mpX), y: r(mpY) })),
      parts: face.parts.map(({ digits, bend, heading }) => ({
        digits,
        insideRadius: r(bend.insideRadius),
        length: r(bend.length),
        before: r(bend.before),
        oblique: rounded(degrees(Math.atan(bend.slope)), 1),
        turned: rounded(degrees(heading), 1),
      })),
    },
    digits: heldColumns(face).map(({ digit, held }) => {
      const along = outline.distal.find((d) => d.digit === digit)?.along ?? held.edge;
      return { digit, beyondBend: r(along - held.bendEnd), shortened: r(held.edge - along) };
    }),
    smallestRadius: r(outline.smallestRadius),
    webRadius: outline.webRadius === null ? null : r(outline.webRadius),
    fold: {
      stretch: rounded(fold.stretch, 4),
      shear: rounded(fold.shear, 1),
      leastGap: r(fold.leastGap),
      leastAt: fold.leastAt,
      worstGap: r(fold.worstGap),
      worstAt: fold.worstAt,
      mpMiss: r(fold.mpMiss),
      swing: rounded(fold.swing, 1),
      thumbClearance: fold.thumbClearance === null ? null : r(fold.thumbClearance),
      pipClearance: r(fold.pipClearance),
      wristClearance: r(fold.wristClearance),
      sideMiss: fold.sideMiss === null ? null : r(fold.sideMiss),
      points: fold.points,
    },
  };
}
