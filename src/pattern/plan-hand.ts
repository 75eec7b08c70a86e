import type { Block } from '../block/block.ts';
import { candidateBlocks, isBorderDigit } from '../block/candidate-blocks.ts';
import { type ChosenBlock, chooseBlock } from '../block/choose-block.ts';
import { type Arrangement, type Decision, decide, type PlanWishes } from '../block/decide.ts';
import type { StripNeed } from '../block/deficit-kind.ts';
import { cautionsFor } from '../block/hand-notes.ts';
import { nextArrangements, type Tried } from '../block/next-arrangement.ts';
import type { NotMakeable, Plan, Strips, Suggestion } from '../block/plan.ts';
import { type PlanNote, planNote } from '../block/plan-notes.ts';
import { type BlockFigures, rankBlocks } from '../block/rank-blocks.ts';
import type { Hand, Target } from '../hand/hand.ts';
import { failure, type Problem, type Result, success, type Warning } from '../units/result.ts';
import { sayPlanNote } from '../words/advice/plan/say-plan.ts';
import { layStrip } from './strip/lay-strip.ts';
import { stripFigures } from './strip/strip.ts';
import type { StripOptions } from './strip/strip-options.ts';
import type { StripFigures } from './strip/strip-report.ts';

export type { PlanWishes };

/**
 * The decision for a measured hand: what stops, the need, the order of strip and plate, every block that serves it, computed for this hand and
 * ranked, what cannot be made and why, the plate's angle. Nothing is suggested when a note stops it (`refusals` says so in English), or nothing
 * is lacking. Fails only with `NO_TARGET`.
 */
export function planHand(hand: Hand, options: StripOptions, wishes: PlanWishes): Result<Plan> {
  const { target } = hand;
  if (!target) return failure(noTarget());
  const figuresOf = (block: Block) => stripFigures(hand, block, options, undefined, 'no offers');
  return success(planned(hand, target, decide(hand, target, wishes), options, figuresOf));
}

function planned(hand: Hand, target: Target, decision: Decision, options: StripOptions, figuresOf: FiguresOf): Plan {
  const made = stripsFor(hand, target, decision, options, figuresOf);
  const isStripless = decision.order.includes('strip') && made.suggestions.length === 0;
  const order = isStripless ? decision.order.filter((device) => device !== 'strip') : decision.order;
  const absence = absenceNotes(hand, target, decision, made);
  const stops = decision.notes.filter(isStop);
  const nothing = isStripless && order.length === 0;
  const hasNone = nothing ? absence.filter(({ rule }) => rule === 'NO_BLOCK_LEFT') : [];
  return {
    ...decision,
    target,
    order,
    suggestions: made.suggestions,
    notMakeable: made.notMakeable,
    alternatives: decision.alternatives.map((a) => ({ ...a, ...stripsFor(hand, target, a, options, figuresOf) })),
    notes: [...hasNone, ...decision.notes, ...absence.filter((note) => !hasNone.includes(note))],
    refusals: [
      ...stops.map(stopProblem),
      ...(nothing ? (hasNone.length > 0 ? hasNone.map(stopProblem) : [noBlock(target, made.notMakeable)]) : []),
    ],
    warnings: made.warnings,
  };
}

/**
 * The block that the plan puts first; see `planHand` and `chooseBlock` for what it fails with. What the plan says beside that, warnings of every block
 * and other arrangements, is most of its work and left out.
 */
export function chooseForHand(hand: Hand, options: StripOptions, wishes: PlanWishes): Result<ChosenBlock> {
  const { target } = hand;
  if (!target) return failure(noTarget());
  const figuresOf = (block: Block): ReturnType<FiguresOf> => {
    const laid = layStrip(hand, block, options, 'no offers');
    return laid.ok ? success({ ...laid.value, warnings: [] }) : laid;
  };
  return chooseBlock(planned(hand, target, { ...decide(hand, target, wishes), alternatives: [] }, options, figuresOf));
}

/** The plate's MP angle that the plan suggests, degrees; null where it suggests none: one motion only, out of reach, or stopped. */
export function plannedAngle(hand: Hand, wishes: PlanWishes): number | null {
  const { target } = hand;
  return target ? (decide(hand, target, wishes).plate?.degrees ?? null) : null;
}

/** What stops any device for this hand, as problems in English; empty where nothing does. */
export function stopsFor(hand: Hand, wishes: PlanWishes): readonly Problem[] {
  return hand.target ? decide(hand, hand.target, wishes).notes.filter(isStop).map(stopProblem) : [];
}

/** The cautions that stand beside whatever is drawn for a hand, as warnings in English, the gravest first. */
export function handCautions(hand: Hand): readonly Warning[] {
  return cautionsFor(hand).map((note) => ({ code: note.rule, message: sayPlanNote(note, 'en') }));
}

/** What the plan asks of a block's strip. */
type FiguresOf = (block: Block) => Result<Pick<StripFigures, 'flat' | 'freePip' | 'warnings'>>;

interface MadeStrips extends Strips {
  /** What is the same for every block, said once. */
  readonly warnings: readonly Warning[];
}

/** The strips that an arrangement names; none where it names none. */
function stripsFor(hand: Hand, target: Target, arranged: Arrangement, options: StripOptions, figuresOf: FiguresOf): MadeStrips {
  const { order, stripNeed } = arranged;
  if (!order.includes('strip') || stripNeed === null) return { suggestions: [], notMakeable: [], warnings: [] };
  const { suggestions, notMakeable, warnings } = suggest(hand, target, stripNeed, options, figuresOf);
  const plan = { ...arranged, target, suggestions: suggestions.map((s) => ({ ...s, next: [] })) };
  return { suggestions: suggestions.map((s) => ({ ...s, next: ladder(plan, s) })), notMakeable, warnings };
}

/** What follows a suggestion that does not redirect, as far as the next arrangement. Those before it in the order count as tried. */
function ladder(plan: Parameters<typeof nextArrangements>[0], { block, differential }: Suggestion): Suggestion['next'] {
  const before = plan.suggestions.slice(
    0,
    plan.suggestions.findIndex((s) => s.block.id === block.id),
  );
  const strip = (s: Pick<Suggestion, 'block' | 'differential'>): Tried => ({ kind: 'strip', block: s.block, differential: s.differential });
  const plate: Tried[] = plan.order[0] === 'plate' && plan.plate ? [{ kind: 'plate', degrees: plan.plate.degrees }] : [];
  return nextArrangements(plan, [...plate, ...before.map(strip), strip({ block, differential })]);
}

/** What absent digits mean for the strip. */
function absenceNotes(
  { absent = [] }: Hand,
  { digit }: Target,
  { order }: Decision,
  { suggestions, notMakeable }: Strips,
): readonly PlanNote[] {
  if (!order.includes('strip') || absent.length === 0) return [];
  const isLeft = suggestions.length + notMakeable.length > 0;
  if (!isLeft) return [planNote('NO_BLOCK_LEFT', order.length === 1 ? 'stop' : 'first', { digit, absent })];
  return isBorderDigit(digit, absent) ? [planNote('NO_NEIGHBOUR', 'caution', { digit, absent })] : [];
}

function isStop({ level }: PlanNote): boolean {
  return level === 'stop' || level === 'confirm';
}

/** A note that stops the plan as a problem: its code is the rule, or the sign that stands. */
function stopProblem(note: PlanNote): Problem {
  const where =
    { UNPROTECTED_REPAIR: 'flags.unprotectedRepair', HARD_END_FEEL: 'flags.hardEndFeel', STOP_SIGN: 'target.stopSigns' }[
      note.rule as string
    ] ?? 'target';
  const message = `${where}: ${sayPlanNote(note, 'en')}`;
  return { code: note.rule, where, message, kind: 'refused' };
}

function suggest(hand: Hand, target: Target, need: StripNeed, { differential }: StripOptions, figuresOf: FiguresOf): MadeStrips {
  const made: (BlockFigures & { readonly warnings: readonly Warning[] })[] = [];
  const notMakeable: NotMakeable[] = [];
  for (const block of candidateBlocks(target.digit, need, hand.absent)) {
    const figures = figuresOf(block);
    if (figures.ok) {
      const { flat, freePip, warnings } = figures.value;
      made.push({ block, flatLength: flat.flatLength, freePipFlexion: freePip, warnings });
    } else notMakeable.push({ block, reasons: figures.problems.map(withoutBlock) });
  }
  const ranked = rankBlocks(made, {
    digit: target.digit,
    need,
    hypermobile: hand.flags.hypermobile,
    absent: hand.absent ?? [],
    differential,
  });
  const common = (w: Warning) => w.code === 'DIFFERENTIAL_UNUSUAL';
  return {
    suggestions: ranked.map(({ figures, score, terms, reasons }) => ({
      block: figures.block,
      differential,
      score,
      terms,
      reasons,
      flatLength: figures.flatLength,
      freePipFlexion: figures.freePipFlexion,
      next: [],
      warnings: figures.warnings.filter((w) => !common(w)),
    })),
    notMakeable,
    warnings: made[0]?.warnings.filter(common) ?? [],
  };
}

/** What is not measured is missing for every block alike, so the message need not name one. */
function withoutBlock(problem: Problem): Problem {
  if (problem.code !== 'DIGIT_NOT_MEASURED') return problem;
  return { ...problem, message: `${problem.where}: this digit was not measured. Measure it.` };
}

function noTarget(): Problem {
  return {
    code: 'NO_TARGET',
    where: 'target',
    message: 'target: the hand file names no target digit. Add "target", or name a block with --block.',
    kind: 'input',
  };
}

function noBlock({ digit }: Target, notMakeable: readonly NotMakeable[]): Problem {
  const reasons = [...new Set(notMakeable.flatMap(({ reasons }) => reasons.map((r) => r.message)))];
  return {
    code: 'NO_BLOCK',
    where: 'target',
    message: `target: none of the ${notMakeable.length} blocks that serve the ${digit} finger can be made for this hand. ${reasons.join(' ')}`,
    kind: 'refused',
  };
}
