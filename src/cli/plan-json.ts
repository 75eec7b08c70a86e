import { placedDigits } from '../block/block.ts';
import type { Plan } from '../block/plan.ts';
import { TERM_RULES } from '../block/score-terms.ts';
import type { Hand } from '../hand/hand.ts';
import { CAUTIONS, PENCIL_TEST } from '../pattern/cautions.ts';
import { rounded } from '../units/number.ts';
import type { Warning } from '../units/result.ts';

/** What `plan --json` prints: mm and degrees, suggestions best first, terms in points of the weights under `scoring`. */
export function planJson(hand: Hand, plan: Plan, warnings: readonly Warning[]): object {
  return {
    code: hand.code,
    side: hand.side,
    invented: hand.invented,
    target: plan.target,
    need: plan.need,
    suggestions: plan.suggestions.map((s) => ({
      block: blockOf(s),
      title: s.block.title,
      differential: s.differential,
      score: s.score,
      terms: s.terms,
      reasons: s.reasons,
      flatLength: rounded(s.flatLength, 3),
      freePipFlexion: Object.fromEntries(Object.entries(s.freePipFlexion).map(([digit, angle]) => [digit, rounded(angle, 1)])),
      next: s.next,
      warnings: s.warnings,
    })),
    notMakeable: plan.notMakeable.map((n) => ({
      block: blockOf(n),
      reasons: n.reasons.map(({ code, message }) => ({ code, message })),
    })),
    mpAngle: plan.plate?.degrees ?? null,
    mpRange: plan.plate?.range ?? null,
    mpReasoning: plan.plate?.reasoning ?? null,
    mpNext: plan.plate?.next ?? null,
    cautions: plan.cautions,
    refusals: plan.refusals.map(({ code, message }) => ({ code, message })),
    warnings,
    checkBefore: plan.suggestions.length > 0 ? PENCIL_TEST : null,
    always: [CAUTIONS.contraindications, CAUTIONS.skin, CAUTIONS.evidence, CAUTIONS.licensed],
    scoring: TERM_RULES,
  };
}

function blockOf({ block }: { readonly block: Plan['suggestions'][number]['block'] }): object {
  return { id: block.id, places: Object.fromEntries(placedDigits(block).map(({ digit, place }) => [digit, place])) };
}
