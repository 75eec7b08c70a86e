import { describe, expect, it } from 'vitest';
import { readLanguageFlag } from './common-flags.ts';

describe('the language of papers', () => {
  it.each([
    [undefined, {}, 'en'],
    [undefined, { LANG: 'de_DE.UTF-8' }, 'de'],
    [undefined, { LANG: 'de_DE.UTF-8', LC_MESSAGES: 'es_MX' }, 'es'],
    [undefined, { LANG: 'de_DE.UTF-8', LC_ALL: 'C' }, 'en'],
    [undefined, { LANG: 'fr_FR.UTF-8' }, 'en'],
    ['es', { LANG: 'de_DE.UTF-8' }, 'es'],
  ] as const)('%s with %j is %s', (given, environment, language) => {
    expect(readLanguageFlag(given, environment)).toBe(language);
  });
});
