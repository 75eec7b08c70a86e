import { describe, expect, it } from 'vitest';
import demo from '../../fixtures/demo-hand.json' with { type: 'json' };
import plateDemo from '../../fixtures/demo-hand-plate.json' with { type: 'json' };
import { blockById } from '../block/library.ts';
import { strokeText } from '../geometry/stroke-letters.ts';
import type { Hand } from '../hand/hand.ts';
import { readHand } from '../hand/read-hand.ts';
import { LANGUAGE_IDS, type Language } from '../words/language.ts';
import { makePattern, type PatternRequest } from './make-pattern.ts';
import type { Pattern } from './pattern.ts';
import { plateById } from './plate/plate-names.ts';
import { DEFAULT_PLATE_OPTIONS } from './plate/plate-options.ts';
import { designFor } from './plate/read-plate.ts';
import { requestFromInputs } from './request-from-inputs.ts';
import { setIdOf } from './set-id.ts';
import { DEFAULT_STRIP_OPTIONS } from './strip/strip-options.ts';

function handOf(file: object): Hand {
  const read = readHand(file);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

function stripRequest(): PatternRequest {
  const block = blockById('ring-lowered-in-three');
  if (!block) throw new Error('no block');
  return { kind: 'strip', hand: handOf(demo), block, options: DEFAULT_STRIP_OPTIONS, date: null };
}

function plateRequest(): PatternRequest {
  const hand = handOf(plateDemo);
  const preset = plateById('mp-immobilisation-dorsal');
  const design = preset && designFor(hand, preset, { digits: null, angle: 45, planned: null });
  if (!design?.ok) throw new Error('no plate');
  return { kind: 'plate', hand, plate: design.value, options: DEFAULT_PLATE_OPTIONS, date: null };
}

function patternIn(request: PatternRequest, language: Language): Pattern {
  const made = makePattern({ ...request, language });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value.pattern;
}

const textsOf = ({ parts, beside }: Pattern) => [...parts.flatMap((part) => part.labels), ...beside.labels].map((label) => label.text);

describe.each([
  ['strip', stripRequest],
  ['plate', plateRequest],
] as const)('a %s in another language', (_, requested) => {
  const request = requested();
  const english = patternIn(request, 'en');

  it.each(LANGUAGE_IDS)('%s: the same outline and the same set, every letter known', (language) => {
    const pattern = patternIn(request, language);
    expect(pattern.parts.map((part) => part.outline.vertices.length)).toEqual(english.parts.map((part) => part.outline.vertices.length));
    expect(setIdOf(pattern.inputs)).toBe(setIdOf(english.inputs));
    for (const text of textsOf(pattern)) expect(strokeText(text, { at: { x: 0, y: 0 }, height: 2 }).unknown, text).toEqual([]);
    // Code, figures and words that all three share are few; the rest is said otherwise.
    const shared = textsOf(pattern).filter((text) => /[a-z]{4}/.test(text) && textsOf(english).includes(text));
    if (language !== 'en') expect(shared).toEqual([]);
  });

  it('is drawn again in its own words; English files say nothing of a language', () => {
    expect(english.inputs).not.toHaveProperty('language');
    for (const language of LANGUAGE_IDS) {
      const { inputs } = patternIn(request, language);
      const again = requestFromInputs(JSON.parse(JSON.stringify(inputs)), 'a file');
      if (!again.ok) throw new Error(JSON.stringify(again.problems));
      expect(again.value.language ?? 'en').toBe(language);
    }
    expect(requestFromInputs({ ...english.inputs, language: 'xx' }, 'a file')).toMatchObject({
      ok: false,
      problems: [{ code: 'INPUTS_BROKEN', where: 'language' }],
    });
  });

  it('says no path of a file and no version of a geometry, in its notes or in its drawing', () => {
    for (const language of LANGUAGE_IDS) {
      const pattern = patternIn(request, language);
      const facts = pattern.notes?.facts.join(' ') ?? '';
      const drawn = textsOf(pattern).join(' ');
      for (const said of [facts, drawn]) {
        expect(said).not.toMatch(/digits\.|webSetback|palm\.|geometry|Geometrie|geometría/);
        expect(said).not.toBe('');
      }
    }
  });
});
