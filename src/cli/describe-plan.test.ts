import { describe, expect, it } from 'vitest';
import demo from '../../fixtures/demo-hand.json' with { type: 'json' };
import bothLacking from '../../fixtures/demo-hand-plate.json' with { type: 'json' };
import { readHand } from '../hand/read-hand.ts';
import { planHand } from '../pattern/plan-hand.ts';
import { DEFAULT_STRIP_OPTIONS } from '../pattern/strip/strip-options.ts';
import { PLAN_TEXT } from '../words/advice/plan/plan-text.ts';
import type { Language } from '../words/language.ts';
import { describePlan } from './describe-plan.ts';

/** What is said of a hand's plan in each language, but for its sources, which are cited as they are. */
function sayingsOf(file: unknown): Readonly<Record<Language, readonly string[]>> {
  const hand = readHand(file);
  if (!hand.ok) throw new Error(JSON.stringify(hand.problems));
  const plan = planHand(hand.value, DEFAULT_STRIP_OPTIONS, { clinicianConfirms: false, anyway: false });
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
  const said = (language: Language) => {
    const lines = describePlan(hand.value, plan.value, 'HAND.json', language).split('\n');
    return lines.slice(0, lines.indexOf(PLAN_TEXT[language].heading.sources));
  };
  return { en: said('en'), es: said('es'), de: said('de') };
}

describe('a plan in words', () => {
  it.each([
    ['of a strip', demo],
    ['of a plate, then a strip', bothLacking],
  ] as const)('%s: no English left, no decimal point, line for line what English says', (_, file) => {
    const { en, ...others } = sayingsOf(file);
    expect(en.length).toBeGreaterThan(20);
    for (const said of Object.values(others)) {
      expect(said).toHaveLength(en.length);
      const lines = said.filter((line) => !/[─│╭╰]|^ *(index|long|ring|little)( |$)/.test(line));
      for (const line of lines.map((one) => one.replace(/knucklewright [^)]*|[a-z]+(-[a-z]+){2,}|J Hand Ther/g, ''))) {
        expect(line).not.toMatch(/\b(the|and|of|degrees|finger is|lacks|strip|plate|not|hand)\b/);
        expect(line).not.toMatch(/\d\.\d/);
      }
    }
  });
});
