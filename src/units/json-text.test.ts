import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LARGEST_JSON_BYTES, parseJsonText } from './json-text.ts';

function message(text: string, source?: string): string {
  const result = parseJsonText(text, source);
  return result.ok ? 'read' : result.problems.map((p) => p.message).join('|');
}

describe('parseJsonText(text, source)', () => {
  it('returns the value, with or without a byte order mark', () => {
    expect(parseJsonText('\uFEFF{"a":[1,null]}')).toEqual({ ok: true, value: { a: [1, null] }, warnings: [] });
  });

  // Places counted by hand.
  it.each([
    ['', 'line 1, column 1: expected a value, found the end of the file'],
    ['{\n  "a": 1,\n}', 'line 3, column 1: expected a name in double quotes, found }'],
    ['{ a: 1 }', 'line 1, column 3: expected a name in double quotes, found a'],
    ["{'a': 1}", "line 1, column 2: expected a name in double quotes, found '"],
    ['{"a" 1}', 'line 1, column 6: expected a colon, found 1'],
    ['{"a": 1 "b": 2}', 'line 1, column 9: expected a comma or }, found "'],
    ['[1,\r\n2', 'line 2, column 2: expected a comma or ], found the end of the file'],
    ['[1,]', 'line 1, column 4: expected a value, found ]'],
    ['{"a": 84,5}', 'line 1, column 10: expected a name in double quotes, found 5'],
    ['{"a": "x\ny"}', 'line 1, column 9: expected the closing double quote on the same line, found the character U+000A'],
    ['{"a": "x', 'line 1, column 9: expected a closing double quote, found the end of the file'],
    ['{"a": "\\x"}', 'line 1, column 8: expected an escape that JSON knows, found \\'],
    ['{"é😀": nan}', 'line 1, column 8: expected a value, found n'],
    ['{} {}', 'line 1, column 4: expected nothing more, found {'],
    ['[01]', 'line 1, column 3: expected a comma or ], found 1'],
  ])('%j: %s', (text, place) => {
    expect(message(text)).toBe(`not JSON at ${place}`);
  });

  it('names the file', () => {
    expect(message('x', 'hand.json')).toMatch(/^hand\.json: not JSON at line 1, column 1/);
  });

  it('refuses a file over the limit, counted in bytes', () => {
    const half = 'é'.repeat(LARGEST_JSON_BYTES / 2 - 1);
    expect(message(`"${half}"`)).toBe('read');
    expect(message(`"${half}é"`)).toMatch(/larger than 1000000 bytes/);
  });

  it('is not broken by depth', () => {
    const depth = LARGEST_JSON_BYTES / 2;
    expect(message('['.repeat(depth) + ']'.repeat(depth))).toBe('read');
    expect(message('['.repeat(depth))).toBe('not JSON at line 1, column 500001: expected a value, found the end of the file');
  });

  it('places the fault of a damaged text inside it', () => {
    fc.assert(
      fc.property(fc.json(), fc.nat(), fc.constantFrom('', '}', ',', '"', 'x', '\u0000'), (json, at, put) => {
        const cut = at % (json.length + 1);
        const damaged = json.slice(0, cut) + put + json.slice(cut + 1);
        const result = parseJsonText(damaged);
        if (result.ok) return;
        // Damage may also make a number larger than any that can be held, which is JSON but is refused for that.
        const [problem] = result.problems;
        if (problem?.code !== 'JSON_NUMBER') expect(problem?.message).toMatch(/^not JSON at line \d+, column \d+: expected .+, found /);
      }),
    );
  });

  it.each([
    ['1e309', ''],
    ['-1e309', ''],
    [`{"digits":{"ring":{"width":${'9'.repeat(400)}}}}`, 'digits.ring.width'],
    ['[1,[2,1E+400]]', '1.1'],
  ])('refuses %s, which would be read as infinity', (text, where) => {
    expect(parseJsonText(text)).toMatchObject({ ok: false, problems: [{ code: 'JSON_NUMBER', where }] });
    expect(parseJsonText('[1e-400, 1e300, "1e400"]')).toMatchObject({ ok: true, value: [0, 1e300, '1e400'] });
  });

  it('refuses a name that stands twice in one object, however it is written, and tells the line', () => {
    const twice = '{\n "a": {"b": 1},\n "\\u0061": 2\n}';
    expect(parseJsonText(twice, 'hand.json')).toMatchObject({
      ok: false,
      problems: [{ code: 'JSON_NAME_TWICE', where: 'a', message: expect.stringMatching(/^hand\.json: line 3: "a" stands twice/) }],
    });
    for (const fine of ['{"a": {"a": 1}, "b": [{"a": 1}, {"a": 2}], "c": "\\"a\\":"}', '["a", "a"]', '"a"'])
      expect(parseJsonText(fine)).toMatchObject({ ok: true, value: JSON.parse(fine) });
  });
});
