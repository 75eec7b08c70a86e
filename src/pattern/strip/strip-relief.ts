import type { DigitName } from '../../hand/digits.ts';
import { plain } from '../../units/number.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import type { Course } from './strip-courses.ts';
import { locateOnCourse } from './strip-courses.ts';
import type { StripOptions } from './strip-options.ts';
import type { StripPath } from './strip-path.ts';
import type { StandingHand, StandingSection } from './strip-sections.ts';

/** How far the distal edge is cut back at a digit, mm; 0 where the full width fits. */
export interface Relief {
  readonly digit: DigitName;
  readonly depth: number;
}

/** A stretch of the neutral line where a course passes palmar to a digit, from one mid-lateral line to the other. u in mm; uTo > uFrom. */
export interface PalmarZone extends Relief {
  readonly layer: Course;
  readonly uFrom: number;
  readonly uTo: number;
}

/** A cut-back shallower than this is not made: no hand-held tool can make it. mm */
const SMALLEST_RELIEF = 0.01;

/**
 * The relief that keeps PIP flexion free: palmar to a digit the strip may be at most palmarRoom - proximalGap - pipClearance wide.
 * Refused when that is under the minimum width, with the digit and the width that would do.
 */
export function palmarRelief(hand: StandingHand, options: StripOptions): Result<readonly Relief[]> {
  const problems: Problem[] = [];
  const reliefs: Relief[] = [];
  for (const s of hand.sections) {
    if (s.place === 'lowered') continue;
    const room = s.palmarRoom - options.proximalGap - options.pipClearance;
    const depth = options.width - room;
    if (room < options.minimumWidth && depth > SMALLEST_RELIEF) problems.push(tooNarrow(s, room, options));
    reliefs.push({ digit: s.digit, depth: depth > SMALLEST_RELIEF ? depth : 0 });
  }
  return problems.length > 0 ? failure(...problems) : success(reliefs);
}

function tooNarrow(s: StandingSection, room: number, options: StripOptions): Problem {
  const sum = `palmarRoom ${plain(s.palmarRoom)} less proximalGap ${plain(options.proximalGap)} and pipClearance ${plain(options.pipClearance)}`;
  const remedy =
    room >= 5
      ? `A strip of width ${plain(Math.floor(room * 2) / 2)} mm would do (minimumWidth must allow it)`
      : 'No strip is wide enough to hold there: choose a block without this digit on the palmar side';
  return {
    code: 'RELIEF_TOO_DEEP',
    where: `digits.${s.digit}.palmarRoom`,
    message: `digits.${s.digit}.palmarRoom: only ${plain(room)} mm of strip fits between the web and the PIP crease of the ${s.digit} finger (${sum}), under the minimumWidth of ${plain(options.minimumWidth)} mm. ${remedy}, or measure palmarRoom again.`,
    kind: 'refused',
    ...(room >= 5 ? { limit: Math.floor(room * 2) / 2 } : {}),
  };
}

/** The stretches of the band that pass palmar to a digit, with the relief each needs. */
export function palmarZones(path: StripPath, reliefs: readonly Relief[]): readonly PalmarZone[] {
  const first = path.hand.sections[0];
  const last = path.hand.sections.at(-1);
  return path.passes.flatMap((pass) => {
    const section = path.hand.sections.find((s) => s.digit === pass.digit);
    const depth = reliefs.find((r) => r.digit === pass.digit)?.depth;
    if (pass.aspect !== 'palmar' || !section || depth === undefined) return [];
    const radial = section === first ? borderU(path, 'radial') : sideU(path, pass.layer, section.x - section.halfWidth);
    const ulnar = section === last ? borderU(path, 'ulnar') : sideU(path, pass.layer, section.x + section.halfWidth);
    // Whichever way the course runs, one end comes before the pass and the other after it; the seam at u = 0 may lie between.
    const before = (u: number) => (pass.u - u + path.pathLength) % path.pathLength;
    const radialFirst = before(radial) < path.pathLength / 2;
    const back = before(radialFirst ? radial : ulnar);
    const ahead = path.pathLength - before(radialFirst ? ulnar : radial);
    return [{ digit: pass.digit, depth, layer: pass.layer, uFrom: pass.u - back, uTo: pass.u + ahead }];
  });
}

function borderU(path: StripPath, border: 'radial' | 'ulnar'): number {
  return path.borderTurns.find((turn) => turn.border === border)?.u ?? Number.NaN;
}

function sideU(path: StripPath, layer: Course, x: number): number {
  return locateOnCourse(path.pieces, layer, x)?.u ?? Number.NaN;
}
