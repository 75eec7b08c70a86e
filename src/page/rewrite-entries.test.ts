import { expect, it } from 'vitest';
import { LANGUAGE_IDS } from '../words/language.ts';
import { OPTION_WORDS } from '../words/record/option-words.ts';
import { optionValues } from './rewrite-entries.ts';
import { emptyEntries } from './state.ts';

it('an option that is left to the program, or that there is none of, is an empty field, and is read so in any of the languages', () => {
  const blank = emptyEntries('.');
  expect(blank.options).toMatchObject({ width: '', minimumWidth: '', paperReading: '', seam: 'auto' });
  for (const word of ['', 'auto', ' AUTO ', ...LANGUAGE_IDS.map((code) => OPTION_WORDS[code].automatic)]) {
    const read = optionValues({ ...blank, options: { ...blank.options, width: word, minimumWidth: word } }, 'in');
    expect([word, read.width, read.minimumWidth, read.paperReading]).toEqual([word, 'auto', 'auto', 'none']);
  }
  expect(optionValues({ ...blank, options: { ...blank.options, width: '18', paperReading: 'auto' } }, 'mm')).toMatchObject({
    width: '18',
    paperReading: 'auto',
  });
});
