import { expect, it } from 'vitest';
import { derive } from './derive.ts';
import { type Entries, emptyEntries, setEntry } from './state.ts';

const SETTINGS = { unit: 'mm', language: 'en' } as const;

function typed(changes: Readonly<Record<string, string>>, own: Partial<Entries> = {}): Entries {
  const blank = emptyEntries('.');
  const motion = { ...blank.motion, active: { lacks: '25', bends: '100' } };
  let entries: Entries = { ...blank, target: 'ring', side: 'left', stop: 'none', motion, ...own };
  for (const [where, text] of Object.entries(changes)) entries = { ...entries, ...setEntry(entries, where, text) };
  return entries;
}

it('of a length that no finger has that field alone is refused, and none that nobody filled in', () => {
  for (const [where, text] of [
    ['digits.ring.width', '115'],
    ['digits.little.width', '1.05'],
    ['digits.ring.circumference', '330'],
    ['digits.long.circumference', '4'],
  ] as const)
    expect([where, derive(typed({ [where]: text }), SETTINGS).problems.map((p) => p.where)]).toEqual([where, [where]]);
});

it("of a child's finger every length is asked for, and no pattern stands for it until all are there; of an adult's two are", () => {
  const two = { width: ['12.5', '11.5', '10.5'], circumference: ['40', '37', '33'] };
  const four = { ...two, palmarRoom: ['18', '17', '13'], dorsalLength: ['34', '31', '25'] };
  const fill = (rows: Readonly<Record<string, readonly string[]>>) =>
    Object.fromEntries(
      Object.entries(rows).flatMap(([id, texts]) =>
        (['long', 'ring', 'little'] as const).map((digit, k) => [`digits.${digit}.${id}`, texts[k] ?? '']),
      ),
    );
  const child = derive(typed(fill(two), { sizeGroup: 'child' }), SETTINGS);
  expect(child.missing).toEqual(['palmarRoom', 'dorsalLength'].flatMap((id) => ['long', 'ring', 'little'].map((d) => `digits.${d}.${id}`)));
  expect(child).toMatchObject({ average: true, problems: [] });
  expect(derive(typed(fill(four), { sizeGroup: 'child' }), SETTINGS)).toMatchObject({ missing: [], average: false, problems: [] });
  expect(derive(typed(fill(two)), SETTINGS)).toMatchObject({ missing: [], average: false });
});

it("for a child's plate the whole palm is asked for, and the setback of a finger that stays free", () => {
  const motion = { ...emptyEntries('.').motion, active: { lacks: '30', bends: '70' } };
  const { missing, asked } = derive(typed({}, { sizeGroup: 'child', target: 'long', motion }), SETTINGS);
  expect(asked).not.toContain('little');
  expect(missing).toEqual(expect.arrayContaining(['digits.little.mpSetback', 'handBreadth', 'handCircumference', 'thumbWebSetback']));
  expect(missing).not.toContain('digits.long.mpSetback');
});
