import { describe, expect, it } from 'vitest';
import { plateLike, sheetOf } from '../../../tests/cutter-patterns.ts';
import { strokeText } from '../../geometry/stroke-letters.ts';
import { cuttingNotes } from '../../pattern/cutting-notes.ts';
import type { Pattern } from '../../pattern/pattern.ts';
import { LANGUAGE_IDS, type Language } from '../../words/language.ts';
import { type CutterProfile, cutters } from './cutter-profile.ts';
import { forCutter } from './for-cutter.ts';
import { machineWords } from './machine-words.ts';

function cutIn(language: Language, profile: CutterProfile): Pattern {
  const sheet = sheetOf([plateLike('A')], 90, 110);
  const spoken = { ...sheet, inputs: { ...sheet.inputs, language } };
  const ready = forCutter(spoken, { ...profile, kerf: 0.3, leadIn: 1, bridges: 2 }, { shareEdges: false });
  if (!ready.ok) throw new Error(JSON.stringify(ready.problems));
  return ready.value;
}

describe.each(cutters().map((profile) => [profile.id, profile] as const))('the words for %s', (_, profile) => {
  const english = cutIn('en', profile);

  it.each(LANGUAGE_IDS.filter((language) => language !== 'en'))(
    '%s: no English left; what a file says of itself stays English',
    (language) => {
      const ready = cutIn(language, profile);
      expect(cuttingNotes(ready)).toEqual(cuttingNotes(english));
      expect(cuttingNotes(ready)[0]).toContain('kerf 0.3 mm is already in the outlines');
      const notes = cuttingNotes(ready, language);
      expect(notes).toHaveLength(5);
      expect(notes.filter((line) => cuttingNotes(english).includes(line))).toEqual([]);
      expect(machineWords(ready, ready, language)).toEqual(expect.arrayContaining([...notes]));
      expect(notes[0]).toContain('0,3 mm');
      const [label] = ready.beside.labels.slice(-1);
      expect(label?.text).toMatch(/0,3 mm/);
      expect(label?.text).not.toMatch(/KERF|OUTLINES/);
      expect(strokeText(label?.text ?? '', { at: { x: 0, y: 0 }, height: 2 }).unknown).toEqual([]);
    },
  );
});
