import { expect, it } from 'vitest';
import { blockTitle, handEnglish, handWords, measureName, placesTitle } from './hand-words.ts';
import { LANGUAGE_IDS } from './language.ts';

it("a clinic's own places are named in each language, and a title that a clinic gave is kept", () => {
  const places = { index: 'raised', long: 'enclosed', ring: 'enclosed' } as const;
  const own = { id: 'own', title: placesTitle({ places }, handEnglish) ?? '', places };
  expect(blockTitle(own, 'en')).toBe('Index finger raised, three digits (index, long, ring)');
  expect(blockTitle(own, 'de')).toBe('Zeigefinger angehoben, drei Finger (D2, D3, D4)');
  expect(blockTitle({ ...own, title: "The clinic's own" }, 'de')).toBe("The clinic's own");
  expect(placesTitle({ places: { index: 'enclosed', long: 'enclosed', ring: 'enclosed' } }, handEnglish)).toBeNull();
});

it('each measure has a name in each language, never its path', () => {
  for (const language of LANGUAGE_IDS) {
    const words = handWords(language);
    const named = Object.entries(words.measure).filter(([id, name]) => /[a-z][A-Z]/.test(name) || (language !== 'en' && name === id));
    expect([language, named]).toEqual([language, []]);
    expect(measureName('digits.ring.rootCircumference', words)).toBe(`${words.short.ring}: ${words.measure.rootCircumference}`);
  }
});
