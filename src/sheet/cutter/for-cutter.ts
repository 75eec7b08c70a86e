import { offsetOutline } from '../../geometry/offset-outline.ts';
import { boxOf, type LineArcPath, segmentsOf, unionBox } from '../../geometry/path.ts';
import { outlineFaults } from '../../geometry/validate-outline.ts';
import type { CutStroke, Label, Part, Pattern } from '../../pattern/pattern.ts';
import { labelCorners, shiftDrawn, shiftPart } from '../../pattern/place-marks.ts';
import { plain } from '../../units/number.ts';
import { failure, type Problem, type Result, success, type Warning } from '../../units/result.ts';
import { type Language, languageOf } from '../../words/language.ts';
import { sheetSpeech } from '../../words/sheet-words.ts';
import { cutStrokes, type Obstacle, obstaclesOf, type StrokeSettings } from './cut-strokes.ts';
import { DEFAULT_BRIDGE_WIDTH } from './cutter-ids.ts';
import type { CutterProfile } from './cutter-profile.ts';
import { type DoubledEdge, meetings } from './doubled-edges.ts';
import { shortTravel } from './short-travel.ts';

/** What is asked of a cutter apart from its profile. */
export interface CutterChoices {
  /** Cut an edge that two parts have in common once, instead of refusing it. */
  readonly shareEdges: boolean;
}

/** Capital height and room of the kerf's own line of text, mm. */
const NOTE_HEIGHT = 2.5;
const NOTE_ROOM = 7;

/**
 * The pattern as one machine cuts it, between the pattern and its writer: parts in an order of short travel, outlines moved by half of
 * the kerf into the waste, edges of neighbours cut once or refused (`DOUBLED_EDGES`), bridges, lead-ins. Refuses (exit 3) with every
 * feature that the kerf would close (`KERF_TOO_WIDE`) and every two parts that cross (`PARTS_CROSS`). Marks and labels stay as they are.
 */
export function forCutter(pattern: Pattern, profile: CutterProfile, choices: CutterChoices): Result<Pattern> {
  const problems: Problem[] = [];
  const ordered = inTravelOrder(pattern.parts);
  const moved = ordered.map((part) => withKerf(part, profile.kerf, problems));
  const { doubled, crossed } = meetings(moved.map((part) => part.outline));
  const titles = (one: number, other: number) => `${moved[one]?.title ?? ''} and ${moved[other]?.title ?? ''}`;
  for (const { one, other, at } of crossed) {
    const message = `${titles(one, other)} cut into each other at ${plain(at.x)}, ${plain(at.y)}; move them apart by the kerf at least.`;
    problems.push({ code: 'PARTS_CROSS', where: titles(one, other), message, kind: 'refused' });
  }
  if (!choices.shareEdges) problems.push(...doubledProblems(doubled, titles));
  if (problems.length > 0) return failure(...problems);
  const warnings: Warning[] = [];
  const obstacles = obstaclesOf(moved.flatMap((part) => [part.outline, ...part.holes]));
  const parts = moved.map((part, k) => {
    const shared = doubled.filter((edge) => edge.other === k).map((edge) => edge.stretch);
    return { ...part, ...strokesOf(part, profile, shared, obstacles, warnings) };
  });
  return success(finished(pattern, parts, profile, doubled), warnings);
}

function inTravelOrder(parts: readonly Part[]): readonly Part[] {
  const boxes = parts.map((part) => boxOf([part.outline]));
  const middles = boxes.map((box) => ({ x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 }));
  const heights = boxes.map((box) => box.maxY - box.minY).sort((a, b) => a - b);
  return shortTravel(middles, (heights[0] ?? 0) / 2).flatMap((index) => parts[index] ?? []);
}

function withKerf(part: Part, kerf: number, problems: Problem[]): Part {
  if (kerf === 0) return part;
  const move = (path: LineArcPath, what: string, role: 'outside' | 'hole'): LineArcPath => {
    const result = offsetOutline(path, kerf / 2);
    const refuse = (message: string) =>
      problems.push({
        code: 'KERF_TOO_WIDE',
        where: part.title,
        message: `${part.title}, ${what}: with a kerf of ${plain(kerf, 3)} mm, ${message}. Use a finer tool or a smaller kerf.`,
        kind: 'refused',
      });
    if (!result.ok) for (const fault of result.faults) refuse(fault.message);
    else for (const fault of outlineFaults(result.path, role, 0)) refuse(fault.message);
    return result.ok ? result.path : path;
  };
  return {
    ...part,
    outline: move(part.outline, 'outline', 'outside'),
    holes: part.holes.map((hole, k) => move(hole, `hole ${k + 1}`, 'hole')),
  };
}

function doubledProblems(doubled: readonly DoubledEdge[], titles: (one: number, other: number) => string): readonly Problem[] {
  return doubled.map(({ one, other, length, at }) => ({
    code: 'DOUBLED_EDGES',
    where: titles(one, other),
    message: `${titles(one, other)} have ${plain(length, 1)} mm of edge in common at ${plain(at.x)}, ${plain(at.y)}: it would be cut twice. Move them apart, or cut it once with --share-edges.`,
    kind: 'refused',
  }));
}

function strokesOf(
  part: Part,
  profile: CutterProfile,
  shared: StrokeSettings['shared'],
  obstacles: readonly Obstacle[],
  warnings: Warning[],
): Pick<Part, 'cuts'> {
  const { leadIn = 0, bridges = 0, bridgeWidth = DEFAULT_BRIDGE_WIDTH, kerf } = profile;
  const holes = shortTravel(
    part.holes.map((hole) => segmentsOf(hole)[0]?.from ?? { x: 0, y: 0 }),
    1,
  ).flatMap((index) => part.holes[index] ?? []);
  const inside = holes.map((hole) => cutStrokes(hole, { leadIn, bridges: 0, bridgeGap: 0, shared: [] }, obstacles));
  const outside = cutStrokes(part.outline, { leadIn, bridges, bridgeGap: bridgeWidth + kerf, shared }, obstacles);
  const blocked = [...inside, outside].reduce((sum, strokes) => sum + strokes.withoutLeadIn, 0);
  if (blocked > 0) {
    const message = `${part.title}: ${blocked} of its cuts begin without a lead-in, which would cut into something`;
    warnings.push({ code: 'LEAD_IN_LEFT_OUT', message, where: part.id, next: 'use a smaller --lead-in, or a wider gap between parts' });
  }
  if (outside.bridgesLeftOut > 0) {
    const message = `${part.title}: ${outside.bridgesLeftOut} of its ${bridges} bridges do not fit on straight edges`;
    warnings.push({ code: 'BRIDGE_LEFT_OUT', message, where: part.id, next: 'ask for fewer or narrower bridges' });
  }
  const stroke = (role: CutStroke['role']) => (path: LineArcPath) => ({ role, path });
  return { cuts: [...inside.flatMap((s) => s.paths.map(stroke('hole'))), ...outside.paths.map(stroke('outline'))] };
}

function finished(pattern: Pattern, parts: readonly Part[], profile: CutterProfile, doubled: readonly DoubledEdge[]): Pattern {
  const { kerf, leadIn = 0, bridges = 0, bridgeWidth = DEFAULT_BRIDGE_WIDTH } = profile;
  const cut = boxOf(parts.flatMap((part) => (part.cuts ?? []).map((stroke) => stroke.path)));
  const top = Math.max(pattern.extents.maxY, cut.maxY);
  const label = kerf > 0 ? kerfLabel(pattern.extents.minX, top, kerf, languageOf(pattern.inputs)) : null;
  const noted = label ? boxOf([{ closed: true, vertices: labelCorners(label).map((p) => ({ ...p, bulge: 0 })) }]) : cut;
  const room = label ? { ...pattern.extents, maxX: noted.maxX, maxY: top + NOTE_ROOM } : pattern.extents;
  const all = unionBox([pattern.extents, cut, room]);
  const beside = { marks: pattern.beside.marks, labels: [...pattern.beside.labels, ...(label ? [label] : [])] };
  const [dx, dy] = [pattern.extents.minX - all.minX, pattern.extents.minY - all.minY];
  return {
    ...pattern,
    parts: parts.map((part) => shiftPart(part, dx, dy)),
    beside: shiftDrawn(beside, dx, dy),
    extents: { minX: pattern.extents.minX, minY: pattern.extents.minY, maxX: all.maxX + dx, maxY: all.maxY + dy },
    inputs: {
      ...pattern.inputs,
      cutter: { profile, sharedEdges: doubled.length },
    },
    cutting: {
      cutter: profile.id,
      title: profile.title,
      kerf,
      leadIn,
      bridges,
      bridgeWidth,
      sharedEdges: doubled.length,
      partByPart: profile.order !== 'layer-by-layer',
      layers: { CUT: profile.layers.CUT.name, MARK: shownName(profile.layers.MARK), INFO: shownName(profile.layers.INFO) },
    },
  };
}

function shownName({ name, omit }: { readonly name: string; readonly omit?: boolean | undefined }): string | null {
  return omit === true ? null : name;
}

/** Above the drawing and its lead-ins, so that nothing that stands on the sheet moves. */
function kerfLabel(left: number, top: number, kerf: number, language: Language): Label {
  const { w, number } = sheetSpeech(language);
  const text = w.machine.kerfInside(number(kerf, 3));
  const at = { x: left + 2, y: top + 2 };
  return { layer: 'INFO', text, at, height: NOTE_HEIGHT, align: 'left', angle: 0 };
}
