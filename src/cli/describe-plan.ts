import { placedDigits } from '../block/block.ts';
import { blockSketch } from '../block/block-sketch.ts';
import type { Arrangement, Device } from '../block/decide.ts';
import { LACKING } from '../block/deficit-kind.ts';
import { SURVEYED_DIFFERENTIAL } from '../block/figures.ts';
import type { Plan, Strips, Suggestion } from '../block/plan.ts';
import type { Level, PlanNote } from '../block/plan-notes.ts';
import { SCORE_TERMS, TERM_RULES } from '../block/rank-blocks.ts';
import type { Hand } from '../hand/hand.ts';
import { PIP_FLEXION_NORM } from '../hand/target-motion.ts';
import { neutralZero } from '../record/motion-text.ts';
import { plain, rounded } from '../units/number.ts';
import type { Warning } from '../units/result.ts';
import { sayNext, sayPlanNote, sayReason } from '../words/advice/plan/say-plan.ts';
import { cautionsEnglish, pencilTestEnglish } from '../words/cautions.ts';

const LABEL = 14;
const POINTS = 12;
const DEVICE: Readonly<Record<Device, string>> = { strip: 'a strip', plate: 'a plate' };

/**
 * What `plan` says in words: the need and how sure it is, what comes first, the suggestions best first with their scores, the plate, what cannot
 * be made, cautions, how it came about, sources.
 * @param drawArguments what draws the first suggestion when it follows `knucklewright draw`
 */
export function describePlan(hand: Hand, plan: Plan, drawArguments: string): string {
  const { target, suggestions, plate } = plan;
  const who = `${hand.code}, ${hand.side} hand${hand.invented ? ' (invented)' : ''}`;
  const passive = (degrees: number | undefined) => (degrees === undefined ? '' : ` (passively ${plain(degrees)})`);
  const lines = [
    `${who}: ${target.digit} finger, PIP extension lacks ${plain(target.pipExtensionDeficit)} degrees${passive(target.pipExtensionDeficitPassive)}, PIP flexion ${plain(target.pipFlexionDeficit)}${passive(target.pipFlexionDeficitPassive)}. Extension-0-flexion: ${activeZero(target)}.`,
    needLine(plan),
    sureLine(plan),
    '',
    ...section('FIRST', plan, 'first'),
  ];
  const plateLines = plate ? [...plateText(plan, drawArguments), ''] : [];
  if (plan.order[0] === 'plate') lines.push(...plateLines);
  if (suggestions.length > 0) {
    if (plan.order[0] === 'plate' && plan.stripNeed)
      lines.push(`Strip, when its turn comes: for PIP ${LACKING[plan.stripNeed]}, best first.`, '');
    lines.push(pencilTestEnglish, '', ...suggestions.flatMap(suggestionLines));
    const draws = plan.order[0] === 'strip' ? drawArguments : `${drawArguments} --block ${suggestions[0]?.block.id}`;
    lines.push(`${plan.order[0] === 'plate' ? 'To draw this strip' : 'To draw the first'}: knucklewright draw ${draws}`, '');
  }
  if (plan.order[0] !== 'plate') lines.push(...plateLines);
  for (const [message, ids] of byReason(plan.notMakeable)) lines.push(`Not makeable: ${ids.join(', ')}`, `   ${message}`, '');
  lines.push(...plan.alternatives.flatMap(alternativeLines));
  lines.push(...section('CAUTION', plan, 'caution'), ...section('Why', plan, 'note'));
  if (suggestions.length > 0 || plate) {
    const evidence = plan.notes.some(({ rule }) => rule === 'EVIDENCE') ? [] : [cautionsEnglish.evidence];
    lines.push(cautionsEnglish.contraindications, cautionsEnglish.skin, ...evidence, cautionsEnglish.licensed);
  } else if (plan.refusals.length > 0) lines.push(cautionsEnglish.licensed);
  if (suggestions.length > 0 || plate) lines.push('', ...sourceLines(plan));
  return `${lines.join('\n').trimEnd()}\n`;
}

/** The need, and what serves it in its order unless that is refused. */
function needLine({ need, order, refusals }: Plan): string {
  if (refusals.length > 0) return `Need: ${needWords(need)}. Nothing is suggested; see the errors.`;
  return need === 'none' ? 'Need: none. Nothing is suggested.' : `Need: ${needWords(need)}. ${orderWords(order)}`;
}

/** Active PIP motion in neutral-zero notation; flexion that was not read is what is left of the other hand's or 100. */
function activeZero({ pipExtensionDeficit, pipFlexionDeficit, pipActive, otherHandPip }: Plan['target']): string {
  const beyond = pipActive?.hyperextension ?? 0;
  const flexion = pipActive?.flexion ?? Math.max(0, (otherHandPip?.flexion ?? PIP_FLEXION_NORM) - pipFlexionDeficit);
  return neutralZero({ extensionDeficit: beyond > 0 ? -beyond : pipExtensionDeficit, flexion });
}

function needWords(need: Plan['need']): string {
  return need === 'none' ? 'none' : need === 'both' ? 'both motions' : `PIP ${LACKING[need]}`;
}

function orderWords(order: readonly Device[]): string {
  const [first, second] = order;
  if (!first) return 'Nothing is to be made.';
  return second ? `First ${DEVICE[first]}, then ${DEVICE[second]}; one is made at a time.` : `${DEVICE[first].replace('a', 'A')} serves.`;
}

function sureLine({ lacking }: Plan): string {
  const chance = (p: number) => `${plain(p * 100, 0)} in 100`;
  return `How sure that 10 degrees or more are lacking, by measuring error alone: extension ${chance(lacking.extension)}, flexion ${chance(lacking.flexion)}. It is no chance of success.`;
}

/** The notes of one level under a heading; nothing where there are none. */
function section(heading: string, { notes }: Plan, level: Level): string[] {
  const lines = notes.filter(
    (note) => note.level === level && note.rule !== 'PLATE_ANGLE' && note.rule !== 'PLATE_MOVED' && note.rule !== 'PLATE_NEXT',
  );
  return lines.length === 0 ? [] : [heading, ...lines.map((note) => `   - ${sayPlanNote(note, 'en')}`), ''];
}

function plateText({ plate, notes }: Plan, drawArguments: string): string[] {
  if (!plate) return [];
  const [low, high] = plate.range;
  return [
    `Plate: MP joint at ${plain(plate.degrees)} degrees of flexion to begin with${low < high ? `, range ${plain(low)} to ${plain(high)}` : ''}.`,
    ...notes
      .filter(({ rule }) => rule === 'PLATE_ANGLE' || rule === 'PLATE_MOVED' || rule === 'PLATE_NEXT')
      .map((note) => sayPlanNote(note, 'en')),
    `To draw it: knucklewright draw ${drawArguments} --plate mp-immobilisation-dorsal (others: knucklewright plates)`,
  ];
}

/** The other plan in short, where measuring leaves it open. */
function alternativeLines({ motion, need, order, plate, suggestions }: Arrangement & Strips & { readonly motion: string }): string[] {
  const strip = suggestions[0] ? ` Strip: ${suggestions.map(({ block }) => block.id).join(', ')}.` : '';
  const angle = plate ? ` Plate: MP joint at ${plain(plate.degrees)} degrees.` : '';
  const serves = need === 'none' ? 'Nothing is to be made.' : orderWords(order);
  return [`The other plan, if PIP ${motion} is read the other way. Need: ${needWords(need)}. ${serves}${strip}${angle}`, ''];
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
    ...SCORE_TERMS.map(
      (term, t) =>
        `   ${term.padEnd(LABEL)}${points(s.terms[term], TERM_RULES[term].weight)}${s.reasons[t] ? sayReason(s.reasons[t], 'en') : ''}`,
    ),
    ...s.warnings.map((w) => `   ${w.code}: ${w.message}${w.next === undefined ? '' : `; ${w.next}`}`),
    `   ${sayNext(s.next, 'en')}`,
    '',
  ];
}

function sourceLines({ suggestions, notes }: Plan): string[] {
  const { low, high } = SURVEYED_DIFFERENTIAL;
  const bySource = new Map<string, string[]>();
  for (const { rule, source } of notes) bySource.set(source, [...new Set([...(bySource.get(source) ?? []), rule])]);
  const strips = [
    ...SCORE_TERMS.map((term) => `   ${term.padEnd(LABEL)}${TERM_RULES[term].source}`),
    `   ${'weights'.padEnd(LABEL)}ours: common practice, no source`,
    `   ${'differential'.padEnd(LABEL)}15 to 20: Merritt & Jarrell 2020; surveyed ${low} to ${high}: Yates et al. 2023`,
    `   ${'next'.padEnd(LABEL)}common practice, no source`,
  ];
  return [
    'Sources',
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
