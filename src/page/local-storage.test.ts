import { describe, expect, it } from 'vitest';
import { keptOf, stateOf } from './local-storage.ts';
import { emptyEntries } from './state.ts';

const kept = {
  version: 2,
  entries: { ...emptyEntries('.'), code: 'DEMO-01', side: 'left', note: '<b>' },
  settings: { language: 'de', unit: 'cm', decimal: ',' },
  screen: { pixelsPerMm: 4, pixelRatio: 2 },
  file: null,
};
const textWith = (change: object) => JSON.stringify({ ...kept, ...change });
const entriesWith = (change: object) => textWith({ entries: { ...kept.entries, ...change } });

describe('what a browser kept', () => {
  it('is taken up as it was', () => {
    const read = keptOf(JSON.stringify(kept));
    expect(read).toEqual(kept);
    expect(read && stateOf(read)).toMatchObject({ entries: kept.entries, settings: kept.settings, file: null, keep: true });
    expect(keptOf(textWith({ screen: null }))?.screen).toBeNull();
  });

  it.each([
    ['another version', textWith({ version: 3 })],
    ['a language that every object has', textWith({ settings: { ...kept.settings, language: 'toString' } })],
    ['a unit that is none', textWith({ settings: { ...kept.settings, unit: 'pt' } })],
    ['a screen without pixels', textWith({ screen: {} })],
    ['a screen of words', textWith({ screen: { pixelsPerMm: '4', pixelRatio: 2 } })],
    ['a screen that cannot be set', textWith({ screen: { pixelsPerMm: 1e9, pixelRatio: 2 } })],
    ['a case that is none', textWith({ file: { schema: 'knucklewright/case@1' } })],
    ['a stop sign that is none', entriesWith({ stopSigns: ['tired'] })],
    ['no screen', JSON.stringify({ ...kept, screen: undefined })],
    ['a side that no hand has', entriesWith({ side: 'both' })],
    ['a target that is no digit', entriesWith({ target: 'thumb' })],
    ['a place that is none', entriesWith({ places: { ...kept.entries.places, ring: 'up' } })],
    ['a plate without faces', entriesWith({ plate: { faces: 'all', angle: '' } })],
    ['a bend that is none', entriesWith({ plate: { ...kept.entries.plate, bend: 'round' } })],
    ['a digit that is none', entriesWith({ hypermobile: ['thumb'] })],
    ['a number for a text', entriesWith({ code: 7 })],
    ['nothing', 'null'],
  ])('is left where it is with %s', (_, text) => expect(keptOf(text)).toBeNull());

  it('has no paper reading where it was kept with the word for none', () => {
    const options = { ...kept.entries.options, paperReading: 'none' };
    expect(keptOf(entriesWith({ options }))?.entries.options.paperReading).toBe('');
  });

  it('has the usual bend where it was kept before one could be chosen', () => {
    const { bend: _, ...plate } = kept.entries.plate;
    expect(keptOf(entriesWith({ plate }))?.entries.plate).toEqual({ ...plate, bend: 'auto' });
  });

  it('loses keys that the page does not have', () => {
    const digits = { ...kept.entries.digits, index: { ...kept.entries.digits.index, more: null } };
    expect(keptOf(entriesWith({ digits, more: 1 }))).toEqual(kept);
  });
});
