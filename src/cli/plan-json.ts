import { placedDigits } from '../block/block.ts';
import type { Arrangement } from '../block/decide.ts';
import type { Plan, Strips } from '../block/plan.ts';
import type { Level, PlanNote } from '../block/plan-notes.ts';
import { TERM_RULES } from '../block/rank-blocks.ts';
import type { Hand } from '../hand/hand.ts';
import { CAUTIONS, PENCIL_TEST } from '../pattern/cautions.ts';
import { rounded } from '../units/number.ts';
import type { Warning } from '../units/result.ts';
import { sayNext, sayPlanNote, sayReason } from '../words/advice/plan/say-plan.ts';

/** Decimals of a chance. */
const CHANCE_DECIMALS = 2;

/**
 * What `plan --json` prints: mm and degrees, `order` first to last, suggestions best first, terms in points of the weights under `scoring`.
 * Notes stand by how grave they are: each with its rule, its figures, its source and what it says.
 */
export function planJson(hand: Hand, plan: Plan, warnings: readonly Warning[]): object {
  const of = (...levels: readonly Level[]) => plan.notes.filter(({ level }) => levels.includes(level)).map(said);
  const plateReasons = plan.notes.filter(({ rule }) => rule === 'PLATE_ANGLE' || rule === 'PLATE_MOVED');
  const plateNext = plan.notes.find(({ rule }) => rule === 'PLATE_NEXT');
  return {
    code: hand.code,
    side: hand.side,
    invented: hand.invented,
    target: plan.target,
    need: plan.need,
    lacking: { extension: rounded(plan.lacking.extension, CHANCE_DECIMALS), flexion: rounded(plan.lacking.flexion, CHANCE_DECIMALS) },
    order: plan.order,
    stops: of('stop', 'confirm'),
    first: of('first'),
    ...stripsJson(plan),
    mpAngle: plan.plate?.degrees ?? null,
    mpRange: plan.plate?.range ?? null,
    mpReasoning: plan.plate ? plateReasons.map((note) => sayPlanNote(note, 'en')).join(' ') : null,
    mpNext: plan.plate && plateNext ? sayPlanNote(plateNext, 'en') : null,
    alternatives: plan.alternatives.map((a) => ({ motion: a.motion, ...arrangementJson(a), ...stripsJson(a) })),
    cautions: of('caution'),
    notes: of('note'),
    refusals: plan.refusals.map(({ code, message }) => ({ code, message })),
    warnings,
    checkBefore: plan.suggestions.length > 0 ? PENCIL_TEST : null,
    always: [CAUTIONS.contraindications, CAUTIONS.skin, CAUTIONS.evidence, CAUTIONS.licensed],
    scoring: TERM_RULES,
  };
}

function arrangementJson({ need, order, plate }: Arrangement): object {
  return { need, order, mpAngle: plate?.degrees ?? null, mpRange: plate?.range ?? null };
}

function stripsJson({ suggestions, notMakeable }: Strips): object {
  return {
    suggestions: suggestions.map((s) => ({
      block: blockOf(s),
      title: s.block.title,
      differential: s.differential,
      score: s.score,
      terms: s.terms,
      reasons: s.reasons.map((reason) => ({ ...reason, message: sayReason(reason, 'en') })),
      flatLength: s.flatLength,
      freePipFlexion: Object.fromEntries(Object.entries(s.freePipFlexion).map(([digit, angle]) => [digit, rounded(angle, 1)])),
      next: sayNext(s.next, 'en'),
      nextSteps: s.next.map((step) => (step.kind === 'block' ? { ...step, block: step.block.id } : step)),
      warnings: s.warnings,
    })),
    notMakeable: notMakeable.map((n) => ({ block: blockOf(n), reasons: n.reasons.map(({ code, message }) => ({ code, message })) })),
  };
}

function said(note: PlanNote): object {
  return { ...note, message: sayPlanNote(note, 'en') };
}

function blockOf({ block }: { readonly block: Plan['suggestions'][number]['block'] }): object {
  return { id: block.id, places: Object.fromEntries(placedDigits(block).map(({ digit, place }) => [digit, place])) };
}
