import { type Box, boxOf, type LineArcPath } from '../geometry/path.ts';
import { outlineFaults } from '../geometry/validate-outline.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';
import { SAME_POINT } from '../units/tolerance.ts';
import type { Mark, Part, Pattern } from './pattern.ts';

/**
 * Proves a pattern before it is written: every outline and hole is a sound cut (output rule 7), every mark has finite coordinates and
 * something to draw, and everything lies inside the extents. All faults at once; they are ours, so each says what to report.
 */
export function validatePattern(pattern: Pattern): Result<Pattern> {
  const problems: Problem[] = [];
  const add = (code: string, where: string, message: string) =>
    problems.push({
      code,
      where,
      message: `${where}: ${message}. This is a fault of the program, nothing was written; please report the inputs.`,
      kind: 'refused',
    });
  for (const part of pattern.parts) {
    for (const fault of outlineFaults(part.outline, 'outside')) add(fault.code, part.title, fault.message);
    for (const [k, hole] of part.holes.entries())
      for (const fault of outlineFaults(hole, 'hole')) add(fault.code, `${part.title}, hole ${k + 1}`, fault.message);
    for (const mark of part.marks) checkMark(mark, pattern.extents, add);
    if (![part.outline, ...part.holes].every((path) => isInside(path, pattern.extents)))
      add('OUTSIDE_EXTENTS', part.title, 'lies outside the drawing');
  }
  for (const mark of pattern.beside.marks) checkMark(mark, pattern.extents, add);
  for (const label of [...pattern.parts.flatMap((p: Part) => p.labels), ...pattern.beside.labels]) {
    const { minX, minY, maxX, maxY } = pattern.extents;
    const { x, y } = label.at;
    if (!(x >= minX - SAME_POINT && x <= maxX + SAME_POINT && y >= minY - SAME_POINT && y <= maxY + SAME_POINT)) {
      add('OUTSIDE_EXTENTS', `label "${label.text}"`, 'lies outside the drawing');
    }
    if (!(label.height > 0)) add('LABEL_HEIGHT', `label "${label.text}"`, 'has no height');
  }
  if (pattern.parts.length === 0) add('NO_PARTS', pattern.title, 'has nothing to cut');
  return problems.length > 0 ? failure(...problems) : success(pattern, pattern.warnings);
}

function checkMark(mark: Mark, extents: Box, add: (code: string, where: string, message: string) => void): void {
  if (mark.paths.length + mark.circles.length === 0) add('EMPTY_MARK', mark.title, 'draws nothing');
  const finite = mark.paths.every((p) => p.vertices.length >= 2 && p.vertices.every((v) => [v.x, v.y, v.bulge].every(Number.isFinite)));
  if (!finite) add('NOT_FINITE', mark.title, 'has a coordinate that is not a number, or a stroke of one point');
  else if (!mark.paths.every((path) => isInside(path, extents))) add('OUTSIDE_EXTENTS', mark.title, 'lies outside the drawing');
  for (const { center, radius } of mark.circles) {
    if (!(radius > 0) || ![center.x, center.y].every(Number.isFinite)) add('NOT_FINITE', mark.title, 'has a circle without a size');
  }
}

function isInside(path: LineArcPath, extents: Box): boolean {
  const box = boxOf([path]);
  const slack = SAME_POINT;
  return (
    box.minX >= extents.minX - slack &&
    box.minY >= extents.minY - slack &&
    box.maxX <= extents.maxX + slack &&
    box.maxY <= extents.maxY + slack
  );
}
