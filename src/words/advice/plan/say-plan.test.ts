import { describe, expect, it } from 'vitest';
import { decide } from '../../../block/decide.ts';
import { type PlanFigures, type PlanRule, planNote, type Reason } from '../../../block/plan-notes.ts';
import { STOP_SIGNS } from '../../../hand/signs.ts';
import { LANGUAGE_IDS } from '../../language.ts';
import { sayNext, sayPlanNote, sayReason } from './say-plan.ts';

/** Figures for every rule; what is missing here does not compile. */
const FIGURES: { readonly [R in PlanRule]: PlanFigures[R] } = {
  STOP_SIGN: { sign: 'infection', ask: 'surgeonSameDay' },
  UNPROTECTED_REPAIR: {},
  HARD_END_FEEL: {},
  CENTRAL_SLIP: { active: 25, passive: 2.5, weeks: null },
  CENTRAL_SLIP_TORN: {},
  BOUTONNIERE_EARLY: { weeks: 2.5 },
  BOUTONNIERE_CAST: { passive: 30.5 },
  BOUTONNIERE_MEASURE: {},
  BEYOND_STRAIGHT: { beyond: 12.5, other: null },
  NOTHING_LACKS: { extension: 2.5, flexion: 0 },
  SLIGHT: { motion: 'flexion', deficit: 7.5 },
  ANYWAY: { motion: 'extension', deficit: 7.5 },
  PLATE_FIRST: { smaller: 12.5, larger: 30 },
  STRIP_FIRST: { smaller: 12.5, larger: 60 },
  MEASURE_AGAIN: { motion: 'flexion', deficit: 8.5, chance: 0.334 },
  STILL_UNSURE: { motion: 'flexion', deficit: 8.5, chance: 0.334, readings: 3 },
  PASSIVE_ALIKE: { motion: 'flexion', active: 30.5, passive: 28.5 },
  LARGE_DEFICIT: { motion: 'extension', deficit: 62.5 },
  MEASURE_PASSIVE: { motion: 'extension' },
  MEASURE_MP: {},
  PLATE_ANGLE: { extension: 30.5, flexion: 20, degrees: 55 },
  PLATE_MOVED: { wanted: 55, degrees: 50, from: 45, to: 52.5 },
  NO_PLATE: { extension: 10, flexion: 40, from: 52.5, to: 90 },
  PLATE_NEXT: {},
  PLATE_HOURS: {},
  STRIP_WEAR: {},
  FLEXION_AGAINST: { degrees: 102.5, from: 'otherHand' },
  SENSATION: {},
  SWELLING: {},
  HYPERMOBILE: { digits: ['long', 'little'] },
  CHILD: {},
  NO_NEIGHBOUR: { digit: 'long', absent: ['index'] },
  NO_BLOCK_LEFT: { digit: 'ring', absent: ['index', 'long'] },
  EVIDENCE: { motion: 'flexion' },
};
const REASONS: readonly Reason[] = [
  { rule: 'ROTATION_FOUR' },
  { rule: 'ROTATION_HYPERMOBILE' },
  { rule: 'ROTATION_BORDER', digit: 'little' },
  { rule: 'ROTATION_BOTH_SIDES', digit: 'ring' },
  { rule: 'HOLD_OWN', digit: 'ring', place: 'raised', need: 'pipFlexion', degrees: 12.5 },
  { rule: 'HOLD_OTHERS', digit: 'index', held: ['long', 'ring'], place: 'lowered', need: 'pipFlexion', degrees: 12.5 },
  { rule: 'NEIGHBOURS', degrees: 12.5 },
  { rule: 'NEIGHBOURS_NONE', digit: 'little' },
  { rule: 'FREE_ALL' },
  { rule: 'FREE', digit: 'ring', degrees: 112 },
  { rule: 'FREE_STOPPED', digit: 'ring', degrees: 95, least: 110 },
  { rule: 'LENGTH_SHORTEST', mm: 152.4 },
  { rule: 'LENGTH_MORE', mm: 152.4, more: 12.5 },
  { rule: 'LAYERS', count: 3 },
];
const notes = [
  ...(Object.keys(FIGURES) as PlanRule[]).map((rule) => planNote(rule, 'note', FIGURES[rule])),
  // The sentences that say it another way.
  planNote('CENTRAL_SLIP', 'stop', { active: 25, passive: 0, weeks: 3.5 }),
  planNote('BOUTONNIERE_EARLY', 'stop', { weeks: null }),
  planNote('BEYOND_STRAIGHT', 'stop', { beyond: 12, other: 5.5 }),
  planNote('NO_PLATE', 'first', { extension: 40, flexion: 10, from: 0, to: 40 }),
  planNote('NO_PLATE', 'first', { extension: 30, flexion: 30, from: 50, to: 90 }),
  planNote('FLEXION_AGAINST', 'note', { degrees: 100, from: 'norm' }),
  planNote('MEASURE_PASSIVE', 'first', { motion: 'flexion' }),
  planNote('EVIDENCE', 'note', { motion: 'extension' }),
  planNote('NO_BLOCK_LEFT', 'stop', { digit: 'ring', absent: ['long'] }),
];

/** Letters, a full stop at the end, no blank that two parts left between them, nothing that a program would say. */
function expectSentence(text: string): void {
  expect(text).toMatch(/^\p{Lu}.*\.$/u);
  expect(text).not.toMatch(/undefined|null|NaN|\[object| {2}|\.\.| \./);
}

/** The figures that a sentence holds, in order of size; words for numbers and names of options are no figures. */
function figuresIn(text: string): readonly number[] {
  return (text.replace(/--[\w-]+|\(\w+Agrees\)/g, '').match(/\d+(?:[.,]\d+)?/g) ?? [])
    .map((n) => Number(n.replace(',', '.')))
    .sort((a, b) => a - b);
}

it('every language gives the same figures', () => {
  for (const note of notes) {
    const [en, ...others] = LANGUAGE_IDS.map((language) => figuresIn(sayPlanNote(note, language)));
    for (const other of others) expect([note.rule, other]).toEqual([note.rule, en]);
  }
  for (const reason of REASONS) {
    const [en, ...others] = LANGUAGE_IDS.map((language) => figuresIn(sayReason(reason, language)));
    for (const other of others) expect([reason.rule, other]).toEqual([reason.rule, en]);
  }
});

describe.each(LANGUAGE_IDS)('the plan in %s', (language) => {
  it('says every note and every reason in whole sentences', () => {
    for (const note of notes) expectSentence(sayPlanNote(note, language));
    for (const reason of REASONS) expectSentence(sayReason(reason, language).replace(/^\d/, 'D'));
  });

  it('says every sign and whom to ask', () => {
    const { notes: stops } = decide(
      { flags: { hypermobile: [], swelling: false, sensation: false, hardEndFeel: false, unprotectedRepair: false } },
      { digit: 'ring', pipExtensionDeficit: 20, pipFlexionDeficit: 0, stopSigns: STOP_SIGNS },
      { clinicianConfirms: false },
    );
    const said = stops.filter(({ rule }) => rule === 'STOP_SIGN').map((note) => sayPlanNote(note, language));
    expect(new Set(said).size).toBe(STOP_SIGNS.length);
    for (const sentence of said) expectSentence(sentence);
  });

  it('writes figures with its own decimal sign', () => {
    const sign = language === 'en' ? '.' : ',';
    expect(sayPlanNote(planNote('SLIGHT', 'note', FIGURES.SLIGHT), language)).toContain(`7${sign}5`);
    expect(sayReason({ rule: 'LENGTH_MORE', mm: 152.4, more: 12.5 }, language)).toContain(`152${sign}4`);
    for (const note of notes) expect(sayPlanNote(note, language)).not.toMatch(language === 'en' ? /\d,\d/ : /\d\.\d/);
  });

  it('says a chance in tenths, which a patient can be told', () => {
    const inTen = { en: '6 in 10', es: '6 de cada 10', de: '6 von 10' }[language];
    const said = (['MEASURE_AGAIN', 'STILL_UNSURE'] as const).map((rule) =>
      sayPlanNote(planNote(rule, 'first', { ...FIGURES.STILL_UNSURE, chance: 0.612 }), language),
    );
    for (const sentence of said) expect(sentence).toContain(inTen);
    for (const sentence of said) expect(sentence).not.toMatch(/61|%/);
  });

  it('says what follows', () => {
    expectSentence(sayNext([{ kind: 'differential', from: 20, to: 25 }, { kind: 'plate', degrees: 55 }, { kind: 'refer' }], language));
  });
});
