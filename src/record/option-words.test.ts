import { expect, it } from 'vitest';
import { PLATE_CHOICE_OPTIONS, PLATE_NUMBER_OPTIONS } from '../pattern/plate/plate-options.ts';
import { CHOICE_OPTIONS, NUMBER_OPTIONS, RETIRED_OPTIONS } from '../pattern/strip/strip-options.ts';
import { LANGUAGE_IDS } from '../words/language.ts';
import { OPTION_WORDS } from '../words/record/option-words.ts';

it.each(LANGUAGE_IDS)('%s: every option of a strip or plate has a name, and every choice of theirs a word', (language) => {
  const choices = [...CHOICE_OPTIONS, ...PLATE_CHOICE_OPTIONS];
  const keys = [...NUMBER_OPTIONS, ...RETIRED_OPTIONS, ...PLATE_NUMBER_OPTIONS, ...choices].map(({ key }) => key);
  expect(Object.keys(OPTION_WORDS[language].name).sort()).toEqual([...new Set<string>(keys)].sort());
  const values = ['auto', 'none', ...choices.flatMap((option) => option.choices)];
  expect(Object.keys(OPTION_WORDS[language].value).sort()).toEqual([...new Set(values)].sort());
});
