import { type Body, edgeLength, pointAtNormal } from '../../geometry/ellipse.ts';
import type { Point } from '../../geometry/path.ts';
import { rootBetween } from '../../geometry/root.ts';
import { type Contact, type PathElement, tautPath } from '../../geometry/taut-path.ts';
import type { DigitName } from '../../hand/digits.ts';
import type { Hand } from '../../hand/hand.ts';
import { digitSection } from '../../hand/section.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { LENGTH_SOLVED } from '../../units/tolerance.ts';
import type { PlateOptions } from './plate-options.ts';

/** One digit of the row. mm; x radial to ulnar, y away from the skin of a digit at height 0, toward the plate. */
export interface RowDigit {
  readonly digit: DigitName;
  readonly x: number;
  readonly height: number;
  readonly halfWidth: number;
  readonly halfDepth: number;
  /** Where the digit's midline lies along the row's path. */
  readonly along: number;
  /** The path's stretch over this digit: from the middle of one web, or the border's mid-lateral line, to the other. */
  readonly from: number;
  readonly to: number;
}

/** The included digits side by side at mid proximal phalanx, and the sheet's neutral line over them from mid-lateral to mid-lateral line. */
export interface DigitRow {
  readonly digits: readonly RowDigit[];
  readonly length: number;
  /** The path's point at a distance along it; beyond the ends it goes on round the border digits. */
  readonly pointAt: (along: number) => Point;
}

/** Mid-lateral line to mid-lateral line, over the digits: radians. */
const RADIAL = Math.PI;
const ULNAR = 0;

/**
 * The taut open path over the digits' sections (the strip's own engine), each at the height that `heightAt` gives for the digit and its place
 * across. Fails when a digit's width and circumference belong to no ellipse.
 */
export function digitRow(
  hand: Hand,
  digits: readonly DigitName[],
  options: PlateOptions,
  heightAt: (digit: DigitName, x: number) => number = () => 0,
): Result<DigitRow> {
  const problems: Problem[] = [];
  const bodies: { readonly digit: DigitName; readonly body: Body }[] = [];
  let edge = 0;
  for (const digit of digits) {
    const measures = hand.digits[digit];
    const section = measures && digitSection(measures.width, measures.circumference, `digits.${digit}`, hand.units);
    if (!section?.ok) {
      problems.push(...(section?.problems ?? []));
      continue;
    }
    const { halfWidth: a, halfDepth: b } = section.value;
    const x = bodies.length === 0 ? 0 : edge + options.webGap + a;
    edge = x + a;
    bodies.push({ digit, body: { center: { x, y: heightAt(digit, x) - b }, a, b, offset: options.skinClearance + options.thickness / 2 } });
  }
  if (problems.length > 0) return failure(...problems);
  const contacts = bodies.map(({ digit, body }, i): Contact => {
    const border = i === 0 || i === bodies.length - 1;
    return { body, side: -1, hold: border ? 'round' : 'touch', name: digit };
  });
  const path = tautPath(contacts, { startNormal: RADIAL, endNormal: ULNAR });
  if (!path.ok) {
    const message = `digits: no plate can be laid over ${digits.join(', ')}: ${path.reason}. Measure their widths and circumferences again.`;
    return failure({ code: 'ROW_IMPOSSIBLE', where: 'digits', message, kind: 'refused' });
  }
  const webs = bodies.slice(1).map(({ body }) => alongAtX(path.elements, body.center.x - body.a - options.webGap / 2));
  const row = bodies.map(
    ({ digit, body }, i): RowDigit => ({
      digit,
      x: body.center.x,
      height: body.center.y + body.b,
      halfWidth: body.a,
      halfDepth: body.b,
      along: alongAtX(path.elements, body.center.x),
      from: i === 0 ? 0 : (webs[i - 1] as number),
      to: i === bodies.length - 1 ? path.length : (webs[i] as number),
    }),
  );
  return success({
    digits: row,
    length: path.length,
    pointAt: (along) =>
      pointAt(
        bodies.map((b) => b.body),
        path.elements,
        path.length,
        along,
      ),
  });
}

/** Distance along the path where it passes over `x`. */
function alongAtX(elements: readonly PathElement[], x: number): number {
  let before = 0;
  for (const element of elements) {
    if (element.kind === 'line') {
      const run = element.to.x - element.from.x;
      const t = run === 0 ? 0 : (x - element.from.x) / run;
      if (t >= 0 && t <= 1) return before + t * element.length;
    } else {
      const { body } = element.contact;
      const normal = rootBetween((n) => pointAtNormal(body, n).x - x, element.fromNormal, element.toNormal, LENGTH_SOLVED);
      if (normal !== null) return before + edgeLength(body, element.fromNormal, normal);
    }
    before += element.length;
  }
  throw new Error(`the row does not pass over x ${x}`);
}

function pointAt(bodies: readonly Body[], elements: readonly PathElement[], length: number, along: number): Point {
  const first = bodies[0] as Body;
  const last = bodies.at(-1) as Body;
  if (along <= 0) return pointAtNormal(first, normalAfter(first, RADIAL, RADIAL + Math.PI, -along));
  if (along >= length) return pointAtNormal(last, normalAfter(last, ULNAR, ULNAR - Math.PI, along - length));
  let before = 0;
  for (const element of elements) {
    if (along <= before + element.length) {
      if (element.kind === 'arc') {
        const { body } = element.contact;
        return pointAtNormal(body, normalAfter(body, element.fromNormal, element.toNormal, along - before));
      }
      const t = (along - before) / element.length;
      return { x: element.from.x + t * (element.to.x - element.from.x), y: element.from.y + t * (element.to.y - element.from.y) };
    }
    before += element.length;
  }
  return pointAtNormal(last, ULNAR);
}

/** The normal at a distance from another along a body's edge, at most at `to`. */
function normalAfter(body: Body, from: number, to: number, distance: number): number {
  return rootBetween((n) => edgeLength(body, from, n) - distance, from, to, LENGTH_SOLVED) ?? (distance <= 0 ? from : to);
}
