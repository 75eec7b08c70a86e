import { existsSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const RULES = readFileSync(new URL('../../docs/page.md', import.meta.url), 'utf8');

it('each rule of docs/page.md has its test', () => {
  const rows = [...RULES.matchAll(/^\| ([^|]+) \| (\S+\.test\.ts) \| ([^|]+) \|$/gm)].map(([, rule = '', file = '', title = '']) => ({
    rule,
    file,
    title,
  }));
  expect(rows.length).toBeGreaterThan(20);
  for (const { rule, file, title } of rows) {
    const path = new URL(file, import.meta.url);
    expect([rule, existsSync(path)]).toEqual([rule, true]);
    const tests = readFileSync(path, 'utf8').match(/(?:\bit|\binBrowser)\(\s*(['"`])(?:\\.|(?!\1).)*\1/gs) ?? [];
    expect([rule, tests.some((test) => test.includes(title.trim()))]).toEqual([rule, true]);
  }
});
