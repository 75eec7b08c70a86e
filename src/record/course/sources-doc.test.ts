import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as planFigures from '../../block/figures.ts';
import { PLAN_RULES, planNote } from '../../block/plan-notes.ts';
import { englishCourse } from '../../words/advice/course/english.ts';
import * as courseFigures from './course.ts';
import * as ruleFigures from './course-rules.ts';
import * as harmFigures from './harm.ts';
import * as slopeFigures from './slope.ts';

const DOC = readFileSync(new URL('../../../docs/sources.md', import.meta.url), 'utf8');
const rows = DOC.split('\n')
  .filter((line) => line.startsWith('| '))
  .map((line) =>
    line
      .slice(1, -1)
      .split('|')
      .map((cell) => cell.trim()),
  );

/** Every number that a module exports, by its name and that of what it is in. */
function numbersOf(module: object, prefix = ''): readonly (readonly [name: string, value: number])[] {
  return Object.entries(module).flatMap(([name, value]): readonly (readonly [string, number])[] => {
    if (typeof value === 'number') return [[`${prefix}${name}`, value]];
    const isRecord = typeof value === 'object' && value !== null && !Array.isArray(value);
    return isRecord ? numbersOf(value, `${prefix}${name}.`) : [];
  });
}

describe('docs/sources.md', () => {
  it('has each figure of plan and course with its value and a source, and none that is no longer there', () => {
    const modules = [planFigures, ruleFigures, harmFigures, courseFigures, slopeFigures];
    const figures = modules.flatMap((module) => numbersOf(module));
    const written = rows.filter(([name = '']) => /^[A-Z_]+(\.\w+)?$/.test(name) && !name.startsWith('NCT'));
    expect(written.map(([name, value]) => `${name} ${value}`).toSorted()).toEqual(
      figures.map(([name, value]) => `${name} ${Number(value.toFixed(4))}`).toSorted(),
    );
    for (const [name, , source, read] of written) expect([source, read], name).not.toContain('');
  });

  it('has every work that plan and course cite, with what was read of it and its limit', () => {
    const printed = [...PLAN_RULES.map((rule) => planNote(rule, 'note', {} as never).source), ...Object.values(englishCourse.source)];
    const cited = new Set(
      printed.flatMap((text) => text.match(/[A-Z][\w-]+ (?:et al\.|& [A-Z][\w-]+),[^;()]*?\b(?:19|20)\d\d\b|NCT\d+/g) ?? []),
    );
    expect(cited.size).toBeGreaterThan(6);
    for (const citation of cited) {
      const [, who, year] = /^(.*?),.*?((?:19|20)\d\d)$/.exec(citation) ?? [];
      const name = who === undefined ? citation : `${who} ${year}`;
      const row = rows.find(([as]) => as === name);
      expect(row?.length, name).toBe(4);
      expect(
        row?.every((cell) => cell !== ''),
        name,
      ).toBe(true);
    }
  });
});
