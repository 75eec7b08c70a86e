import { describe, expect, it } from 'vitest';
import demo from '../../fixtures/demo-hand.json' with { type: 'json' };
import file from '../../fixtures/situations/plan.json' with { type: 'json' };
import { placedDigits } from '../block/block.ts';
import type { Plan } from '../block/plan.ts';
import { DIGITS } from '../hand/digits.ts';
import { readHand } from '../hand/read-hand.ts';
import { sayPlanNote } from '../words/advice/plan/say-plan.ts';
import { LANGUAGE_IDS } from '../words/language.ts';
import { planHand } from './plan-hand.ts';
import { DEFAULT_STRIP_OPTIONS } from './strip/strip-options.ts';

interface Situation {
  readonly title: string;
  readonly why: string;
  readonly target: object;
  readonly absent?: readonly string[];
  readonly child?: true;
  readonly flags?: object;
  readonly wishes?: { readonly clinicianConfirms?: boolean; readonly anyway?: boolean };
  readonly expect: {
    /** Whom to ask, `clinician` where the clinician may confirm, or the rule that stops the plan; null where nothing does. */
    readonly stop: string | null;
    readonly need: string;
    readonly order: readonly string[];
    readonly stripFor?: string;
    readonly first?: string;
    readonly digits?: number;
    readonly plate?: number | null;
    readonly says?: readonly string[];
    readonly silent?: readonly string[];
    readonly lacking?: { readonly extension: number; readonly flexion: number };
    readonly alternatives?: number;
  };
}
const SITUATIONS = file.situations as readonly Situation[];

function planOf({ target, absent = [], child, flags = {}, wishes = {} }: Situation): Plan {
  const digits = Object.fromEntries(DIGITS.filter((digit) => !absent.includes(digit)).map((digit) => [digit, demo.digits[digit]]));
  const hand = readHand({ ...demo, digits, absent, ...(child ? { child } : {}), flags, target });
  if (!hand.ok) throw new Error(hand.problems.map((p) => p.message).join('\n'));
  const plan = planHand(hand.value, DEFAULT_STRIP_OPTIONS, { clinicianConfirms: false, ...wishes });
  if (!plan.ok) throw new Error(plan.problems.map((p) => p.message).join('\n'));
  return plan.value;
}

/** What stops a plan, in the words of the situations. */
function stopOf({ notes }: Plan): string | null {
  const [stop] = notes.filter(({ level }) => level === 'stop' || level === 'confirm');
  if (!stop) return null;
  if (stop.level === 'confirm') return 'clinician';
  return stop.rule === 'STOP_SIGN' ? stop.ask : stop.rule;
}

it('there are at least forty situations, each with a title of its own', () => {
  expect(SITUATIONS.length).toBeGreaterThanOrEqual(40);
  expect(new Set(SITUATIONS.map(({ title }) => title)).size).toBe(SITUATIONS.length);
});

describe.each(SITUATIONS)('$title', (situation) => {
  const wanted = situation.expect;
  const plan = planOf(situation);
  const rules = plan.notes.map(({ rule }) => rule as string);

  it('is planned as written', () => {
    expect({ stop: stopOf(plan), need: plan.need, order: plan.order }).toEqual({
      stop: wanted.stop,
      need: wanted.need,
      order: wanted.order,
    });
    if (wanted.stripFor !== undefined) expect(plan.stripNeed).toBe(wanted.stripFor);
    if (wanted.plate !== undefined) expect(plan.plate?.degrees ?? null).toBe(wanted.plate);
    const first = plan.suggestions[0]?.block;
    if (wanted.first !== undefined) expect(first?.id).toBe(wanted.first);
    if (wanted.digits !== undefined) expect(first && placedDigits(first).length).toBe(wanted.digits);
    if (wanted.alternatives !== undefined) expect(plan.alternatives).toHaveLength(wanted.alternatives);
    if (wanted.lacking !== undefined) {
      expect(plan.lacking.extension).toBeCloseTo(wanted.lacking.extension, 2);
      expect(plan.lacking.flexion).toBeCloseTo(wanted.lacking.flexion, 2);
    }
  });

  it('says what it must and no more', () => {
    expect(rules).toEqual(expect.arrayContaining([...(wanted.says ?? [])]));
    for (const rule of wanted.silent ?? []) expect(rules).not.toContain(rule);
    // Exit 3 follows from the refusals: exactly where something stops the plan.
    expect(plan.refusals.length > 0).toBe(wanted.stop !== null);
    for (const language of LANGUAGE_IDS) for (const note of plan.notes) expect(sayPlanNote(note, language)).toMatch(/\.$/);
  });
});
