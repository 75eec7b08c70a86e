import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import demo from '../../fixtures/demo-hand.json' with { type: 'json' };
import { handJson, type Measures, SMALLEST } from '../../tests/hands.ts';
import type { HandFile } from '../hand/hand-schema.ts';
import { entriesOf } from './hand-file.ts';
import { mendFor } from './mends.ts';
import { GRID_ROWS } from './parts/focus.ts';
import { type Entries, setEntry } from './state.ts';
import { createStore, type Store } from './store.ts';
import { LANGUAGES } from './texts/languages.ts';
import { sayProblem } from './translate-messages.ts';

// The page moves the focus in the next frame, which Node has not.
beforeEach(() => void vi.stubGlobal('requestAnimationFrame', () => 0));
afterEach(() => void vi.unstubAllGlobals());

function storeOf(entries: Entries): Store {
  return createStore({ entries, settings: { language: 'en', unit: 'mm', decimal: '.' }, file: null, screen: null, keep: false });
}

/** A hand typed far too broad, with a web that its fingers cannot have; nonsense, from `least-width-offer.test.ts`. */
function tooNarrow(): Entries {
  const digits: Record<'index' | 'long' | 'ring' | 'little', Measures> = {
    index: [9.707203681468899, 27.44647179534226, 12.278245784438566, 35.6426126833589],
    long: [9.291747719062947, 26.27179773589609, 17.975034282880216, 19.972260314311352],
    ring: [34.297480364478055, 103.95678005758602, 34.493434412789696, 38.32603823643299],
    little: [12.038218650597337, 41.3301098363643, 29.215753141822923, 32.4619479353588],
  };
  const webSetback = { 'index-long': 30, 'long-ring': 0, 'ring-little': 0 };
  const typed = entriesOf({ ...handJson(digits), handBreadth: 120, webSetback } as HandFile, '.');
  const options = {
    minimumWidth: '5',
    width: '12.796747980630537',
    trim: '50',
    differential: '45',
    freeFlexion: '99.35625836363407',
    webGap: '0',
    crossingPlay: '0',
    thickness: '0.9350117013362871',
    skinClearance: '0',
    proximalGap: '0',
    seamAllowance: '0',
    closure: 'spanning',
  };
  return { ...typed, stop: 'none', block: 'long-raised-in-three', options: { ...typed.options, ...options } };
}

it('a strip too narrow round a web leads to the field of the web, and the setback that is named makes it wide enough', {
  timeout: 120_000,
}, () => {
  const store = storeOf(tooNarrow());
  const problem = store.settle().problems.find(({ code }) => code === 'STRIP_TOO_NARROW');
  if (problem?.limit === undefined) throw new Error('no setback is named');
  // Where no setback helps and no other arrangement keeps the width either, the field is all there is.
  const { limit: _, ...withoutSetback } = problem;
  expect(mendFor(store, withoutSetback, 'webSetback.index-long')?.label).toBe('Go to the field');
  const before = store.entries.peek();
  const mend = mendFor(store, problem, 'webSetback.index-long');
  expect(mend?.label).toBe('Go to the field');
  mend?.apply();
  expect([store.panel.peek(), store.turn.peek(), GRID_ROWS[store.row.peek()]]).toEqual([null, 'measure', 'webSetback']);
  // A measure is never set by a button.
  expect(store.entries.peek()).toBe(before);
  store.enter({ where: 'webSetback.index-long', value: '' }, (now) => setEntry(now, 'webSetback.index-long', String(problem.limit)));
  expect(store.settle().problems.map(({ code }) => code)).not.toContain('STRIP_TOO_NARROW');
  expect(store.derived.peek().drawn?.kind).toBe('strip');
});

it('a strip too narrow that no setback helps is mended by another arrangement that does the same and can be made, and by undo comes back', () => {
  const typed = entriesOf(demo as HandFile, '.');
  const store = storeOf({ ...typed, stop: 'none', block: 'ring-lowered-in-three' });
  const problem = { code: 'STRIP_TOO_NARROW', where: 'webSetback.long-ring', message: '', kind: 'refused' } as const;
  store.settle();
  const mend = mendFor(store, problem, 'webSetback.long-ring');
  expect(mend?.label).toMatch(/^Use Strip: ring lower than /);
  mend?.apply();
  const { drawn, problems } = store.settle();
  expect(problems).toEqual([]);
  if (drawn?.kind !== 'strip') throw new Error('no strip');
  expect(drawn.block.id).not.toBe('ring-lowered-in-three');
  expect(drawn.block.places.ring).toBe('lowered');
  expect(drawn.warnings.map(({ code }) => code)).not.toContain('STRIP_UNDER_LEAST_WIDTH');
  store.undo();
  expect(store.entries.peek().block).toBe('ring-lowered-in-three');
});

it('another arrangement is offered without the paper strip that was read in this one, and by undo the reading comes back with it', () => {
  const typed = entriesOf(demo as HandFile, '.');
  const problem = { code: 'STRIP_TOO_NARROW', where: 'webSetback.long-ring', message: '', kind: 'refused' } as const;
  const offered = (paperReading: string) => {
    const store = storeOf({ ...typed, stop: 'none', block: 'ring-lowered-in-three', options: { ...typed.options, paperReading } });
    store.settle();
    return { store, mend: mendFor(store, problem, 'webSetback.long-ring') };
  };
  const { store, mend } = offered('2');
  // What is offered does not hang on a reading of another path.
  expect(mend?.label).toMatch(/^Use Strip: ring lower than /);
  expect(mend?.label).toBe(offered('').mend?.label);
  mend?.apply();
  expect(store.entries.peek().options.paperReading).toBe('');
  expect(store.settle().problems).toEqual([]);
  store.undo();
  expect([store.entries.peek().block, store.entries.peek().options.paperReading]).toEqual(['ring-lowered-in-three', '2']);
});

it('a strip that a tapering finger would bend too much is told in every language, and leads to the circumference at its root', () => {
  const json = handJson(SMALLEST) as { digits: Record<string, { circumference: number; rootCircumference?: number }> };
  for (const digit of Object.values(json.digits)) digit.rootCircumference = digit.circumference + 8;
  const typed = entriesOf(json as HandFile, '.');
  const store = storeOf({ ...typed, stop: 'none', block: 'ring-raised-in-three', options: { ...typed.options, width: '30' } });
  const problem = store.settle().problems.find(({ code }) => code === 'STRIP_TOO_BENT');
  if (!problem) throw new Error('it is drawn');
  const told = Object.values(LANGUAGES).map((texts) => sayProblem(problem, { ...store.speaker.peek(), texts }).text);
  expect(told).toEqual([
    expect.stringMatching(/^The little finger tapers so much .* root circumference again, .* narrower strip\.$/),
    expect.stringMatching(/^El dedo meñique se estrecha tanto .* más estrecha\.$/),
    expect.stringMatching(/^Der Finger verjüngt sich so stark \(Kleinfinger.*schmaleren Streifen nehmen\.$/),
  ]);
  mendFor(store, problem, problem.where)?.apply();
  expect([store.turn.peek(), GRID_ROWS[store.row.peek()]]).toEqual(['measure', 'rootCircumference']);
});
