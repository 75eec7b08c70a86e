import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import situations from '../../fixtures/situations/plan.json' with { type: 'json' };
import { LACK, LEAST_SIGMA, REAL, SIGMA, UNSURE } from './figures.ts';
import { PLAN_RULES } from './plan-notes.ts';

const DOC = readFileSync(new URL('../../docs/advice.md', import.meta.url), 'utf8');
const RULES = DOC.slice(DOC.indexOf('## Rules'), DOC.indexOf('When a strip does not redirect'));

it('docs/advice.md names every rule of the plan once, and no other', () => {
  const named = RULES.split('\n')
    .filter((line) => /^\| [A-Z_]/.test(line))
    .flatMap(
      (line) =>
        line
          .split('|')[1]
          ?.split(',')
          .map((rule) => rule.trim()) ?? [],
    );
  expect(named.toSorted()).toEqual([...PLAN_RULES].toSorted());
});

it('docs/advice.md has the figures that the plan reckons with', () => {
  expect(DOC).toContain(`| lacking | ${LACK} or more |`);
  expect(DOC).toContain(`| spread of one reading | ${SIGMA.same} one rater, ${SIGMA.mixed} several |`);
  expect(DOC).toContain(`${SIGMA.same} over the root of n, not under ${LEAST_SIGMA}`);
  expect(DOC).toContain(`| ${REAL.same} one rater, ${REAL.mixed} several |`);
  expect(DOC).toContain(`between ${UNSURE.from} and ${UNSURE.to}`);
  expect(DOC).toContain(`${situations.situations.length} situations`);
});
