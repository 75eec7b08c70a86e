import * as fc from 'fast-check';
import { readOutputPlan } from '../../src/cli/flags/output-flags.ts';
import { checkCaseCode } from '../../src/hand/case-code.ts';
import { parseDegrees } from '../../src/units/angle.ts';
import { formatLength, parseLength } from '../../src/units/length.ts';
import { anyCharacters, BOMBS, bombText, HOSTILE_TEXTS } from './hostile.ts';
import { hold, readable } from './must-hold.ts';
import { type Target, target } from './target.ts';

const DIGITS_AND_SIGNS = fc
  .array(fc.constantFrom(...'0123456789.,/ -+eE"″½⅞ \u00a0٣'.split(''), 'mm', 'cm', 'in', 'ring ', 'US ', 'UK ', 'deg', '°'), {
    maxLength: 14,
  })
  .map((parts) => parts.join(''));

/** What a person may type into a field or behind a flag. */
export const typed: fc.Arbitrary<string | { readonly bomb: string }> = fc.oneof(
  { weight: 60, arbitrary: DIGITS_AND_SIGNS },
  { weight: 20, arbitrary: fc.constantFrom(...HOSTILE_TEXTS) },
  { weight: 19, arbitrary: anyCharacters(60) },
  { weight: 1, arbitrary: fc.record({ bomb: fc.constantFrom(...Object.keys(BOMBS)) }) },
);

const SAFE_REASON = /^[^\p{Cc}\p{Cs}\u2028-\u202e\u2066-\u2069]{8,500}$/u;

/** Targets for single texts: a page's fields, a command's flags. */
export const FIELD_TARGETS: readonly Target[] = [
  target<string | { readonly bomb: string }>({
    name: 'fields',
    holds: 'what is typed into a field is a finite number of mm or degrees, a case code, or a reason that can be shown',
    recipes: typed,
    feed(recipe) {
      const text = typeof recipe === 'string' ? recipe : bombText(recipe.bomb);
      for (const unit of ['mm', 'cm', 'in'] as const) {
        const length = parseLength(text, unit, { ringSizes: true, zero: true });
        if (length.ok) {
          hold(Number.isFinite(length.mm) && length.mm >= 0, () => `a length of ${length.mm}`);
          hold(/^\d+(\.\d+)? (mm|cm|in)$/.test(formatLength(length.mm, unit)), () => formatLength(length.mm, unit));
        } else hold(SAFE_REASON.test(length.reason), () => `reason ${JSON.stringify(length.reason.slice(0, 300))}`);
      }
      const angle = parseDegrees(text);
      if (angle.ok) hold(Number.isFinite(angle.degrees) && angle.degrees >= 0, () => `an angle of ${angle.degrees}`);
      else hold(SAFE_REASON.test(angle.reason), () => `reason ${JSON.stringify(angle.reason.slice(0, 300))}`);
      const code = checkCaseCode(text);
      if (code.ok) hold(/^[A-Z0-9](?:[A-Z0-9-]{0,22}[A-Z0-9])?$/.test(code.code), () => `code ${code.code}`);
      else hold(SAFE_REASON.test(code.reason), () => `reason ${JSON.stringify(code.reason.slice(0, 300))}`);
    },
  }),
  target<string | { readonly bomb: string }>({
    name: 'flags',
    holds: 'the formats that are asked for are known ones, or the fault is said',
    recipes: fc.oneof(
      typed,
      fc.array(fc.constantFrom('svg', 'DXF', ' svg ', '', 'pdf', 'bmp'), { maxLength: 6 }).map((list) => list.join(',')),
    ),
    async feed(recipe) {
      const text = typeof recipe === 'string' ? recipe : bombText(recipe.bomb);
      const plan = readable(await readOutputPlan({ formats: text }), text);
      if (plan) hold(plan.formats.length > 0, () => 'a plan without a format');
    },
  }),
];
