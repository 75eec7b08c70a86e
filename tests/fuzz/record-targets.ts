import gains from '../../fixtures/case-gains.json' with { type: 'json' };
import stalls from '../../fixtures/case-stalls.json' with { type: 'json' };
import swells from '../../fixtures/case-swells.json' with { type: 'json' };
import { caseTable, describeCase } from '../../src/cli/describe-case.ts';
import { caseChart } from '../../src/record/case-chart.ts';
import { courseAdvice } from '../../src/record/course/course-advice.ts';
import { parseCaseText } from '../../src/record/read-case.ts';
import { readVisit } from '../../src/record/read-visit.ts';
import { parseJsonText } from '../../src/units/json-text.ts';
import { LANGUAGE_IDS } from '../../src/words/language.ts';
import { svgDrawingInNode } from '../../src/writers/svg/svg-node.ts';
import { type FileRecipe, fileRecipes, fileText } from './file-targets.ts';
import { finite, hold, readable } from './must-hold.ts';
import { type Target, target } from './target.ts';

const CASES: readonly unknown[] = [gains, stalls, swells];
const VISITS: readonly unknown[] = CASES.flatMap((record) => (record as { readonly visits: readonly unknown[] }).visits);
// Line breaks and tabs lay out a table; anything else that steers a terminal has no place in it.
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what it looks for
const STEERS_A_TERMINAL = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;
/** Elements beyond those of a pattern that a chart has, and what must be in none. */
const ACTIVE_MARKUP = /<(?:script|image|foreignObject|a|use|iframe|!ENTITY|!DOCTYPE)\b|\son\w+=/i;

/** Targets of the case record. */
export const RECORD_TARGETS: readonly Target[] = [
  target<FileRecipe>({
    name: 'case',
    holds: 'a case file is read, shown, charted and judged with finite numbers and clean text, or every fault is said',
    recipes: fileRecipes,
    feed(recipe) {
      const text = fileText(recipe, CASES);
      const record = readable(parseCaseText(text, 'case.json'), text);
      if (!record) return;
      for (const language of LANGUAGE_IDS) finite(courseAdvice(record, language));
      finite(describeCase(record));
      hold(!STEERS_A_TERMINAL.test(caseTable(record, true)), () => 'a control character in the table');
      const drawing = readable(caseChart(record), text);
      const svg = drawing ? readable(svgDrawingInNode(drawing), text) : null;
      if (svg !== null) hold(!ACTIVE_MARKUP.test(svg.replace(/<(title|desc|metadata)\b[\s\S]*?<\/\1>/g, '')), () => 'markup in the chart');
    },
  }),
  target<FileRecipe>({
    name: 'visit',
    holds: 'a visit is read, or every fault is said',
    recipes: fileRecipes,
    feed(recipe) {
      const text = fileText(recipe, VISITS);
      const json = readable(parseJsonText(text, 'visit.json'), text);
      if (json !== null) readable(readVisit(json, 'visit.json'), text);
    },
  }),
];
