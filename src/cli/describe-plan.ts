import { placedDigits } from '../block/block.ts';
import { blockSketch } from '../block/block-sketch.ts';
import type { Arrangement, Device } from '../block/decide.ts';
import { LACKING } from '../block/deficit-kind.ts';
import { SURVEYED_DIFFERENTIAL } from '../block/figures.ts';
import type { Plan, Strips, Suggestion } from '../block/plan.ts';
import type { Level, PlanNote } from '../block/plan-notes.ts';
import { SCORE_TERMS, type ScoreTerm, TERM_RULES } from '../block/rank-blocks.ts';
import type { Hand } from '../hand/hand.ts';
import { PIP_FLEXION_NORM } from '../hand/target-motion.ts';
import { neutralZero } from '../record/motion-text.ts';
import { plain, rounded } from '../units/number.ts';
import type { Warning } from '../units/result.ts';
import { PLAN_TEXT, type PlanText } from '../words/advice/plan/plan-text.ts';
import { sayNext, sayPlanNote, sayReason } from '../words/advice/plan/say-plan.ts';
import { cautionsEnglish, cautionWords, PENCIL_TESTS, pencilTestEnglish } from '../words/cautions.ts';
import { blockTitle, handWords } from '../words/hand-words.ts';
import type { Language } from '../words/language.ts';
import { withDecimalSign } from '../words/speech.ts';

const LABEL = 14;
const POINTS = 12;

/**
 * What `plan` says in words: the need and how sure it is, what comes first, the suggestions best first with their scores, the plate, what cannot
 * be made, cautions, how it came about, sources. Warnings and reasons why a block cannot be made stay English, as all problems do.
 * @param drawArguments what draws the first suggestion when it follows `knucklewright draw`
 */
export function describePlan(hand: Hand, plan: Plan, drawArguments: string, language: Language = 'en'): string {
  const { target, suggestions, plate } = plan;
  const speech = speechOf(language);
  const { t, n } = speech;
  const passive = (degrees: number | undefined) => (degrees === undefined ? '' : t.passively(n(degrees)));
  const extension = `${n(target.pipExtensionDeficit)}${passive(target.pipExtensionDeficitPassive)}`;
  const flexion = `${n(target.pipFlexionDeficit)}${passive(target.pipFlexionDeficitPassive)}`;
  const cautions = cautionWords(language);
  const lines = [
    `${t.who(hand.code, hand.side, hand.invented)}: ${t.lacks(handWords(language).finger[target.digit], extension, flexion, activeZero(target, n))}`,
    needLine(plan, t),
    t.sure(n(plan.lacking.extension * 100, 0), n(plan.lacking.flexion * 100, 0)),
    '',
    ...section('first', plan, speech),
  ];
  const plateLines = plate ? [...plateText(plan, drawArguments, speech), ''] : [];
  if (plan.order[0] === 'plate') lines.push(...plateLines);
  if (suggestions.length > 0) {
    if (plan.order[0] === 'plate' && plan.stripNeed) lines.push(t.stripLater(t.need[LACKING[plan.stripNeed]]), '');
    lines.push(PENCIL_TESTS[language], '', ...suggestions.flatMap((s, k) => suggestionLines(s, k, speech)));
    const draws = plan.order[0] === 'strip' ? drawArguments : `${drawArguments} --block ${suggestions[0]?.block.id}`;
    lines.push(`${plan.order[0] === 'plate' ? t.drawStrip : t.drawFirst}: knucklewright draw ${draws}`, '');
  }
  if (plan.order[0] !== 'plate') lines.push(...plateLines);
  for (const [message, ids] of byReason(plan.notMakeable)) lines.push(t.notMakeable(ids.join(', ')), `   ${message}`, '');
  lines.push(...plan.alternatives.flatMap((other) => alternativeLines(other, speech)));
  lines.push(...section('caution', plan, speech), ...section('note', plan, speech));
  if (suggestions.length > 0 || plate) {
    const evidence = plan.notes.some(({ rule }) => rule === 'EVIDENCE') ? [] : [cautions.evidence];
    lines.push(cautions.contraindications, cautions.skin, ...evidence, cautions.licensed);
  } else if (plan.refusals.length > 0) lines.push(cautions.licensed);
  if (suggestions.length > 0 || plate) lines.push('', ...sourceLines(plan, speech));
  return `${lines.join('\n').trimEnd()}\n`;
}

interface Speech {
  readonly language: Language;
  readonly t: PlanText;
  readonly n: (value: number, decimals?: number) => string;
}

function speechOf(language: Language): Speech {
  return { language, t: PLAN_TEXT[language], n: (value, decimals) => withDecimalSign(plain(value, decimals), language) };
}

/** The need, and what serves it in its order unless that is refused. */
function needLine({ need, order, refusals }: Plan, t: PlanText): string {
  const is = t.needIs(t.need[needKey(need)]);
  if (refusals.length > 0) return `${is} ${t.nothingSeeErrors}`;
  return `${is} ${need === 'none' ? t.nothing : orderWords(order, t)}`;
}

/** Active PIP motion in neutral-zero notation; flexion that was not read is what is left of the other hand's or 100. */
function activeZero({ pipExtensionDeficit, pipFlexionDeficit, pipActive, otherHandPip }: Plan['target'], number: Speech['n']): string {
  const beyond = pipActive?.hyperextension ?? 0;
  const flexion = pipActive?.flexion ?? Math.max(0, (otherHandPip?.flexion ?? PIP_FLEXION_NORM) - pipFlexionDeficit);
  return neutralZero({ extensionDeficit: beyond > 0 ? -beyond : pipExtensionDeficit, flexion }, (value) => number(value));
}

function needKey(need: Plan['need']): keyof PlanText['need'] {
  return need === 'none' || need === 'both' ? need : LACKING[need];
}

function orderWords([first, second]: readonly Device[], t: PlanText): string {
  if (!first) return t.nothingMade;
  return second ? t.firstThen(first, second) : t.serves(first);
}

const OF_PLATE: ReadonlySet<string> = new Set(['PLATE_ANGLE', 'PLATE_MOVED', 'PLATE_NEXT']);

/** The notes of one level under a heading; nothing where there are none. */
function section(level: Level & keyof PlanText['heading'], { notes }: Plan, { t, language }: Speech): string[] {
  const lines = notes.filter((note) => note.level === level && !OF_PLATE.has(note.rule));
  return lines.length === 0 ? [] : [t.heading[level], ...lines.map((note) => `   - ${sayPlanNote(note, language)}`), ''];
}

function plateText({ plate, notes }: Plan, drawArguments: string, { t, n, language }: Speech): string[] {
  if (!plate) return [];
  const [low, high] = plate.range;
  return [
    t.plate(n(plate.degrees), low < high ? [n(low), n(high)] : null),
    ...notes.filter(({ rule }) => OF_PLATE.has(rule)).map((note) => sayPlanNote(note, language)),
    `${t.drawIt}: knucklewright draw ${drawArguments} --plate mp-immobilisation-dorsal ${t.others('knucklewright plates')}`,
  ];
}

/** The other plan in short, where measuring leaves it open. */
function alternativeLines({ motion, need, order, plate, suggestions }: Plan['alternatives'][number], { t, n }: Speech): string[] {
  const strip = suggestions[0] ? [t.otherStrip(suggestions.map(({ block }) => block.id).join(', '))] : [];
  const angle = plate ? [t.otherPlate(n(plate.degrees))] : [];
  const serves = need === 'none' ? t.nothingMade : orderWords(order, t);
  return [[t.other(motion), t.needIs(t.need[needKey(need)]), serves, ...strip, ...angle].join(' '), ''];
}

/** Ids of the blocks that each reason keeps from being made. */
function byReason(notMakeable: Plan['notMakeable']): ReadonlyMap<string, readonly string[]> {
  const ids = new Map<string, string[]>();
  for (const { block, reasons } of notMakeable) {
    for (const { message } of reasons) ids.set(message, [...(ids.get(message) ?? []), block.id]);
  }
  return ids;
}

function suggestionLines(s: Suggestion, k: number, { t, n, language }: Speech): string[] {
  const { low, high } = SURVEYED_DIFFERENTIAL;
  const points = (term: ScoreTerm) => t.ofPoints(n(s.terms[term], 1), n(TERM_RULES[term].weight)).padEnd(POINTS);
  return [
    `${k + 1}. ${s.block.id}, ${t.ofPoints(n(s.score, 1), '100')}: ${blockTitle(s.block, language)}`,
    blockSketch(s.block, handWords(language).short),
    `   ${t.differential(n(s.differential, 1), n(low), n(high))}`,
    ...SCORE_TERMS.map(
      (term, at) => `   ${t.term[term].padEnd(LABEL)}${points(term)}${s.reasons[at] ? sayReason(s.reasons[at], language) : ''}`,
    ),
    ...s.warnings.map((w) => `   ${w.code}: ${w.message}${w.next === undefined ? '' : `; ${w.next}`}`),
    `   ${sayNext(s.next, language)}`,
    '',
  ];
}

/** Sources are cited as they are, in English. */
function sourceLines({ suggestions, notes }: Plan, { t }: Speech): string[] {
  const { low, high } = SURVEYED_DIFFERENTIAL;
  const bySource = new Map<string, string[]>();
  for (const { rule, source } of notes) bySource.set(source, [...new Set([...(bySource.get(source) ?? []), rule])]);
  const strips = [
    ...SCORE_TERMS.map((term) => `   ${t.term[term].padEnd(LABEL)}${TERM_RULES[term].source}`),
    `   ${t.term.weights.padEnd(LABEL)}ours: common practice, no source`,
    `   ${t.term.differential.padEnd(LABEL)}15 to 20: Merritt & Jarrell 2020; surveyed ${low} to ${high}: Yates et al. 2023`,
    `   ${t.term.next.padEnd(LABEL)}common practice, no source`,
  ];
  return [
    t.heading.sources,
    ...(suggestions.length > 0 ? strips : []),
    ...[...bySource].map(([source, rules]) => `   ${rules.join(', ')}: ${source}`),
  ];
}

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
    checkBefore: plan.suggestions.length > 0 ? pencilTestEnglish : null,
    always: [cautionsEnglish.contraindications, cautionsEnglish.skin, cautionsEnglish.evidence, cautionsEnglish.licensed],
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
