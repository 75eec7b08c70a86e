import type { LineArcPath } from '../geometry/path.ts';
import { strokeText } from '../geometry/stroke-letters.ts';
import type { Circle, Label, Layer, Mark, Part, Pattern } from '../pattern/pattern.ts';
import { radians } from '../units/angle.ts';
import { isWritable } from '../units/number.ts';
import { quote, visible } from '../units/quote.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';
import { inputsToText } from './inputs-text.ts';
import { DEFAULT_OUTPUT_SETTINGS, type OutputSettings } from './output-settings.ts';
import { withoutStrokes } from './unknown-characters.ts';

/** One thing to draw: a mark, a label as strokes, a hole or an outline. mm, y up. */
export interface DrawnItem {
  readonly layer: Layer;
  /** The mark's role, or `label`, `hole`, `outline`. */
  readonly role: string;
  /** What a reader calls it; empty for holes and outlines, which the group names. */
  readonly title: string;
  readonly paths: readonly LineArcPath[];
  readonly circles: readonly Circle[];
}

/** What belongs together in the file: a part, or what stands beside the parts. */
export interface DrawnGroup {
  /** `part-1`, `part-2`, ... or `beside`; layer by layer, `part-1-mark`, `part-1-info`, `part-1-cut`. Unique in the file. */
  readonly id: string;
  /** The part's own id, or null beside the parts. */
  readonly part: string | null;
  readonly title: string;
  readonly items: readonly DrawnItem[];
}

/**
 * A pattern in the order in which every file draws it: part by part, in each MARK, INFO, then CUT with holes before the outline, so that
 * nothing is drawn on a piece that is already cut loose; then what stands beside, MARK before INFO. Where the settings say
 * `layer-by-layer`, all of MARK comes first, then INFO, then CUT. A part's `cuts` take the place of its holes and outline. Groups without items and
 * layers that the settings omit are left out.
 * Fails with every unknown label character, unwritable number and an empty drawing area named (codes: see `PatternWriter`).
 */
export function drawOrder(
  pattern: Pattern,
  settings: Pick<OutputSettings, 'layers' | 'order'> = DEFAULT_OUTPUT_SETTINGS,
): Result<readonly DrawnGroup[]> {
  const problems: Problem[] = [];
  const groups = pattern.parts.map((part, i): DrawnGroup => partGroup(part, `part-${i + 1}`, problems));
  const beside = layered(pattern.beside.marks, pattern.beside.labels, 'beside', problems);
  groups.push({ id: 'beside', part: null, title: 'Beside the parts', items: beside });
  problems.push(...sizeProblems(pattern), ...groups.flatMap(itemProblems), ...inputProblems(pattern));
  if (problems.length > 0) return failure(...problems);
  const ordered = settings.order === 'layer-by-layer' ? marksFirst(groups) : groups;
  const kept = ordered.map((group) => ({ ...group, items: group.items.filter((item) => settings.layers[item.layer].omit !== true) }));
  return success(kept.filter((group) => group.items.length > 0));
}

function marksFirst(groups: readonly DrawnGroup[]): readonly DrawnGroup[] {
  return (['MARK', 'INFO', 'CUT'] as const).flatMap((layer) =>
    groups.map((group) => ({
      ...group,
      id: `${group.id}-${layer.toLowerCase()}`,
      items: group.items.filter((item) => item.layer === layer),
    })),
  );
}

function partGroup(part: Part, id: string, problems: Problem[]): DrawnGroup {
  const cut = (role: string, path: LineArcPath): DrawnItem => ({ layer: 'CUT', role, title: '', paths: [path], circles: [] });
  const cuts = part.cuts?.map((stroke) => cut(stroke.role, stroke.path));
  return {
    id,
    part: part.id,
    title: part.title,
    items: [
      ...layered(part.marks, part.labels, `parts.${part.id}`, problems),
      ...(cuts ?? [...part.holes.map((hole) => cut('hole', hole)), cut('outline', part.outline)]),
    ],
  };
}

function layered(marks: readonly Mark[], labels: readonly Label[], where: string, problems: Problem[]): DrawnItem[] {
  const drawn = [...marks, ...labels.map((label) => strokes(label, where, problems))];
  return (['MARK', 'INFO'] as const).flatMap((layer) => drawn.filter((item) => item.layer === layer));
}

/** A label as the single strokes that a machine can draw. */
function strokes(label: Label, where: string, problems: Problem[]): DrawnItem {
  const { layer, text, at, height, align } = label;
  const item = { layer, role: 'label', title: text, circles: [] };
  if (![at.x, at.y, height, label.angle].every(isWritable) || height <= 0) {
    problems.push(unwritable(`${where}.labels`, `label ${quote(text)} (height ${height} mm)`));
    return { ...item, paths: [] };
  }
  const { paths, unknown } = strokeText(text, { at, height, align, angle: radians(label.angle) });
  problems.push(...withoutStrokes(text, unknown, `${where}.labels`));
  return { ...item, paths };
}

function sizeProblems(pattern: Pattern): readonly Problem[] {
  const { minX, minY, maxX, maxY } = pattern.extents;
  const problems: Problem[] = [];
  if (![minX, minY, maxX, maxY].every(isWritable)) problems.push(unwritable('extents', 'the drawing area'));
  else if (!(maxX > minX && maxY > minY)) {
    const size = `${maxX - minX} x ${maxY - minY} mm`;
    problems.push({ code: 'EXTENTS_EMPTY', where: 'extents', message: `the drawing area is ${size}: it has no size`, kind: 'refused' });
  }
  return problems;
}

function itemProblems(group: DrawnGroup): readonly Problem[] {
  return group.items.flatMap((item) => {
    // Asked one by one: a drawing has tens of thousands of numbers, and gathering them takes longer than looking at them.
    const sound =
      item.paths.every((path) => path.vertices.every((v) => isWritable(v.x) && isWritable(v.y) && isWritable(v.bulge))) &&
      item.circles.every(({ center, radius }) => isWritable(center.x) && isWritable(center.y) && isWritable(radius));
    const name = item.title ? `${visible(item.role)} ${quote(item.title)}` : visible(item.role);
    const problems = sound ? [] : [unwritable(group.id, name)];
    const dot = item.paths.some((path) => path.vertices.length < 2);
    return dot ? [...problems, undrawable(group.id, name)] : problems;
  });
}

/** No format draws a path of one point: it would be lost without a word. */
function undrawable(where: string, what: string): Problem {
  const message = `${what} has a path with fewer than two points, which cannot be drawn; nothing was written`;
  return { code: 'PATH_TOO_SHORT', where, message, kind: 'refused' };
}

function inputProblems(pattern: Pattern): readonly Problem[] {
  try {
    inputsToText(pattern.inputs);
    return [];
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return [{ code: 'NUMBER_NOT_WRITABLE', where: 'inputs', message: `${error.message}; nothing was written`, kind: 'refused' }];
  }
}

function unwritable(where: string, what: string): Problem {
  const message = `${what} has a number that is not finite, too large or not above 0; nothing was written`;
  return { code: 'NUMBER_NOT_WRITABLE', where, message, kind: 'refused' };
}
