import { fleschKincaid } from 'flesch-kincaid';
import readability from 'text-readability';
import { describe, expect, it } from 'vitest';
import { LANGUAGE_IDS, type Language } from '../words/language.ts';
import { paperWords } from '../words/papers/paper-words.ts';

/** Every sentence of the sheet, with a finger put in. */
function sentences(language: Language): readonly string[] {
  const w = paperWords(language).patient;
  const finger = w.finger.ring;
  const does = [w.does.heldLower(finger), w.does.othersHigher(finger), w.does.extension, w.does.flexion, w.does.plate, w.does.use];
  const all = [
    ...does,
    w.on.strip,
    w.on.plate,
    w.off.strip,
    w.off.plate,
    ...w.exercise.extension,
    ...w.exercise.flexion,
    w.exercise.hurts,
    ...w.skin.lines,
    ...w.heat.lines,
    w.drive,
    w.diary.heading.strip,
    w.diary.heading.plate,
    // The stop box is one list: each line is read with its heading.
    ...w.stop.lines.map((line) => `${w.stop.heading} ${line.replace(/[,.]$/, '')}.`),
  ];
  return all.flatMap((text) => text.split(/(?<=[.!?])\s+/)).filter((s) => s !== '');
}

const wordsOf = (sentence: string) => sentence.split(/[\s-]+/).filter((word) => /\p{L}|\d/u.test(word));
const VOWELS = /[aeiouyáéíóúüäöï]+/giu;
/** Groups of vowels: what both formulas count, but for a few diphthongs, which only makes a text look harder or as hard. */
const syllables = (word: string) => Math.max(1, (word.match(VOWELS) ?? []).length);

describe("the patient's sheet is easy to read", () => {
  it.each(LANGUAGE_IDS)('%s: sentences under 12 words on average, none over 16', (language) => {
    const lengths = sentences(language).map((s) => wordsOf(s).length);
    expect(lengths.reduce((a, b) => a + b, 0) / lengths.length).toBeLessThan(12);
    expect(Math.max(...lengths)).toBeLessThanOrEqual(16);
  });

  it('English: at the fifth grade, about ten years (Flesch-Kincaid grade, Kincaid et al. 1975)', () => {
    const all = sentences('en');
    const words = all.flatMap(wordsOf);
    const syllable = words.reduce((sum, w) => sum + readability.syllableCount(w), 0);
    expect(fleschKincaid({ sentence: all.length, word: words.length, syllable })).toBeLessThan(5);
  });

  // Amstad, Wie verständlich sind unsere Zeitungen?, Zürich 1978; 80 to 90 is easy. Both constants read in two descriptions of it.
  it("German: at least 'easy', 80 or more (Amstad 1978: 180 - words a sentence - 58.5 syllables a word)", () => {
    const all = sentences('de');
    const words = all.flatMap(wordsOf);
    const ease = 180 - words.length / all.length - 58.5 * (words.reduce((sum, w) => sum + syllables(w), 0) / words.length);
    expect(ease).toBeGreaterThan(80);
  });

  // Fernandez Huerta, Consigna 214 (1959), with words a sentence where the paper has sentences in 100 words (Law, Linguist List 22.2332, 2011).
  it("Spanish: at least 'fairly easy', 70 or more (Fernandez Huerta 1959: 206.84 - 60 syllables a word - 1.02 words a sentence)", () => {
    const all = sentences('es');
    const words = all.flatMap(wordsOf);
    const ease = 206.84 - 60 * (words.reduce((sum, w) => sum + syllables(w), 0) / words.length) - 1.02 * (words.length / all.length);
    expect(ease).toBeGreaterThan(80);
  });

  // Szigriszt-Pazos, thesis, Madrid 1993; from 65 on fairly easy, from 80 on very easy by the INFLESZ scale (Barrio Cantalejo, 2008).
  it("Spanish: 'very easy', 80 or more (Szigriszt-Pazos 1993: 206.835 - 62.3 syllables a word - words a sentence)", () => {
    const all = sentences('es');
    const words = all.flatMap(wordsOf);
    const ease = 206.835 - 62.3 * (words.reduce((sum, w) => sum + syllables(w), 0) / words.length) - words.length / all.length;
    expect(ease).toBeGreaterThan(80);
  });

  it('has no words of the trade, of the program or of a code', () => {
    for (const language of LANGUAGE_IDS) {
      for (const sentence of sentences(language))
        expect(sentence).not.toMatch(/\b(PIP|MP|D[2-5]|block|differential|dorsal|palmar|splint)\b/i);
    }
  });
});
