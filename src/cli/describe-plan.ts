import { blockSketch } from '../block/block-sketch.ts';
import { LACKING, WANTED_MP } from '../block/deficit-kind.ts';
import { SURVEYED_DIFFERENTIAL } from '../block/differential.ts';
import type { Plan, Suggestion } from '../block/plan.ts';
import { SCORE_TERMS, TERM_RULES } from '../block/score-terms.ts';
import type { Hand } from '../hand/hand.ts';
import { CAUTIONS, PENCIL_TEST } from '../pattern/cautions.ts';
import { plain } from '../units/number.ts';

const LABEL = 14;
const POINTS = 12;

/**
 * What `plan` says in words: the need, the suggestions best first with their scores, what cannot be made, cautions, sources.
 * @param drawArguments what draws the first suggestion when it follows `knucklewright draw`
 */
export function describePlan(hand: Hand, plan: Plan, drawArguments: string): string {
  const { target, suggestions, plate } = plan;
  const who = `${hand.code}, ${hand.side} hand${hand.invented ? ' (invented)' : ''}`;
  const lines = [
    `${who}: ${target.digit} finger, PIP extension lacks ${plain(target.pipExtensionDeficit)} degrees, PIP flexion ${plain(target.pipFlexionDeficit)}.`,
    needLine(plan),
    '',
  ];
  if (suggestions.length > 0) {
    lines.push(PENCIL_TEST, '', ...suggestions.flatMap(suggestionLines));
    lines.push(`To draw the first: knucklewright draw ${drawArguments}`, '');
  }
  for (const [message, ids] of byReason(plan.notMakeable)) lines.push(`Not makeable: ${ids.join(', ')}`, `   ${message}`, '');
  if (plate) {
    const [low, high] = plate.range;
    lines.push(
      `Plate: MP joint at ${plate.degrees} degrees of flexion to begin with${low < high ? `, range ${low} to ${high}` : ''}.`,
      plate.reasoning,
      plate.next,
      `To draw it: knucklewright draw ${drawArguments} --plate mp-immobilisation-dorsal (others: knucklewright plates)`,
      '',
    );
  }
  lines.push(...plan.cautions.map((c) => `CAUTION ${c.code}: ${c.message}`));
  if (suggestions.length > 0 || plate) {
    lines.push(CAUTIONS.contraindications, CAUTIONS.skin, CAUTIONS.evidence, CAUTIONS.licensed);
  } else if (plan.refusals.length > 0) lines.push(CAUTIONS.licensed);
  if (suggestions.length > 0) lines.push('', ...sourceLines());
  return `${lines.join('\n').trimEnd()}\n`;
}

/** The need, and what serves it unless that is refused. */
function needLine({ need, target: { digit }, refusals }: Plan): string {
  if (need === 'none') return 'Need: none. Neither motion is lacking, so nothing is suggested.';
  const what = need === 'both' ? 'both motions' : `PIP ${LACKING[need]}`;
  if (refusals.length > 0) return `Need: ${what}. Nothing is suggested; see the errors.`;
  return need === 'both'
    ? `Need: ${what}. A strip would gain one and lose the other; a plate holds the MP joint still.`
    : `Need: ${what}. The ${digit} MP joint is to be held in relative ${WANTED_MP[need]} by a strip.`;
}

/** Ids of the blocks that each reason keeps from being made. */
function byReason(notMakeable: Plan['notMakeable']): ReadonlyMap<string, readonly string[]> {
  const ids = new Map<string, string[]>();
  for (const { block, reasons } of notMakeable) {
    for (const { message } of reasons) ids.set(message, [...(ids.get(message) ?? []), block.id]);
  }
  return ids;
}

function suggestionLines(s: Suggestion, k: number): string[] {
  const { low, high } = SURVEYED_DIFFERENTIAL;
  const points = (p: number, most: number) => `${plain(p, 1)} of ${most}`.padEnd(POINTS);
  return [
    `${k + 1}. ${s.block.id}, ${plain(s.score, 1)} of 100: ${s.block.title}`,
    blockSketch(s.block),
    `   differential ${plain(s.differential, 1)} degrees (surveyed use ${low} to ${high})`,
    ...SCORE_TERMS.map((term, t) => `   ${term.padEnd(LABEL)}${points(s.terms[term], TERM_RULES[term].weight)}${s.reasons[t] ?? ''}`),
    `   ${s.next}`,
    '',
  ];
}

function sourceLines(): string[] {
  const { low, high } = SURVEYED_DIFFERENTIAL;
  return [
    'Sources',
    ...SCORE_TERMS.map((term) => `   ${term.padEnd(LABEL)}${TERM_RULES[term].source}`),
    `   ${'weights'.padEnd(LABEL)}ours: common practice, no source`,
    `   ${'differential'.padEnd(LABEL)}15 to 20, surveyed ${low} to ${high}: Merritt & Jarrell 2020; Yates et al. 2023`,
    `   ${'next'.padEnd(LABEL)}common practice, no source`,
  ];
}
