import type { DigitName } from '../../hand/digits.ts';
import { type Course, locateOnCourse } from './strip-courses.ts';
import type { Pass, StripPath } from './strip-path.ts';

/** A stretch of the neutral line where a course passes palmar to a digit, from one mid-lateral line to the other, or to the border turn. u in mm; uTo > uFrom. */
export interface PalmarZone {
  readonly digit: DigitName;
  readonly pass: Pass;
  readonly uFrom: number;
  readonly uTo: number;
}

/** The stretches of the band that pass palmar to a digit. */
export function palmarZones(path: StripPath): readonly PalmarZone[] {
  const first = path.hand.sections[0];
  const last = path.hand.sections.at(-1);
  return path.passes.flatMap((pass) => {
    const section = path.hand.sections.find((s) => s.digit === pass.digit);
    if (pass.aspect !== 'palmar' || !section) return [];
    const radial = section === first ? borderU(path, 'radial') : sideU(path, pass.layer, section.x - section.halfWidth);
    const ulnar = section === last ? borderU(path, 'ulnar') : sideU(path, pass.layer, section.x + section.halfWidth);
    // Whichever way the course runs, one end comes before the pass and the other after it; the seam at u = 0 may lie between.
    const before = (u: number) => pass.u - u - path.pathLength * Math.floor((pass.u - u) / path.pathLength);
    const radialFirst = before(radial) < path.pathLength / 2;
    const back = before(radialFirst ? radial : ulnar);
    const ahead = path.pathLength - before(radialFirst ? ulnar : radial);
    return [{ digit: pass.digit, pass, uFrom: pass.u - back, uTo: pass.u + ahead }];
  });
}

function borderU(path: StripPath, border: 'radial' | 'ulnar'): number {
  return path.borderTurns.find((turn) => turn.border === border)?.u ?? Number.NaN;
}

function sideU(path: StripPath, layer: Course, x: number): number {
  return locateOnCourse(path.pieces, layer, x)?.u ?? Number.NaN;
}
