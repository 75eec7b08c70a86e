import { expect, it } from 'vitest';
import gains from '../../fixtures/case-gains.json' with { type: 'json' };
import demoHand from '../../fixtures/demo-hand.json' with { type: 'json' };
import { readOpened } from './open-file.ts';

it('a hand file gives a hand, a case file the case with its hand', async () => {
  expect(await readOpened(JSON.stringify(demoHand))).toMatchObject({ ok: true, value: { record: null, hand: { code: 'DEMO-01' } } });
  expect(await readOpened(JSON.stringify(gains))).toMatchObject({ ok: true, value: { record: { code: gains.code } } });
});

it.each([
  ['no JSON', '{', 'JSON_SYNTAX'],
  ['a list', '[]', 'FIELD_TYPE'],
  ['a schema that cannot be made a text', '{"schema": {"toString": 1, "valueOf": 1}}', 'FIELD_VALUE'],
  ['a case with nothing in it', '{"schema": "knucklewright/case@1"}', 'FIELD_MISSING'],
])('%s is refused with the reason', async (_, text, code) => {
  const read = await readOpened(text);
  expect(read.ok ? [] : read.problems.map((p) => p.code)).toContain(code);
});
