import { expect, it } from 'vitest';
import { LANGUAGE_IDS } from '../words/language.ts';
import { fromOnPaper } from './strip-lengths.ts';

it('what sizes rest on is printed with the name of its file and no folder', () => {
  for (const language of LANGUAGE_IDS) {
    for (const from of [
      { kind: 'table', count: 57, file: '/folder/of/hands.csv', block: null },
      { kind: 'lengths', count: 57, file: '/folder/of/hands.csv' },
    ] as const) {
      expect(fromOnPaper(from, language)).toMatch(/57.*hands\.csv/);
      expect(fromOnPaper(from, language)).not.toMatch(/folder|\//);
    }
  }
});
