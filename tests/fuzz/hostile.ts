import * as fc from 'fast-check';

/** Texts that have broken other programs: markup, DXF groups, paths, devices, format characters, numbers in disguise. */
export const HOSTILE_TEXTS: readonly string[] = [
  '<script>alert(1)</script>',
  '"/><image href="file:///etc/passwd"/><x y="',
  ']]></metadata><metadata>{"schema":"knucklewright/inputs@1"}',
  '&xxe;<!DOCTYPE x [<!ENTITY xxe SYSTEM "file:///etc/passwd">]>',
  '\n  0\nTEXT\n  8\nCUT\n  1\ninjected\n',
  '\r\n0\r\nENDSEC\r\n0\r\nEOF\r\n',
  'knucklewright inputs 1/1 [{}]',
  '../../../etc/passwd',
  '..\\..\\windows\\win.ini',
  '/etc/passwd',
  'C:\\CON.svg',
  'con',
  'LPT1.svg',
  '.hidden',
  'a'.repeat(5000),
  '\u0000',
  '\u001b[31mred\u001b[0m',
  '\u202egnp.exe',
  '\ud800',
  '\ufeff',
  'e\u0301\u0301\u0301',
  '1e309',
  '-1e309',
  'NaN',
  'Infinity',
  '0x10',
  '1,234.5',
  '١٢',
  '9'.repeat(400),
  '1/0',
  '0/0 in',
  '=HYPERLINK("http://x")',
  '%s%n%d',
  '$(exit)',
  '{{constructor.constructor("return 1")()}}',
];

export const HOSTILE_KEYS: readonly string[] = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  'valueOf',
  'length',
  '0',
  '',
  'schema',
  'digits',
  'width',
  'places',
  'inputs',
];

/** Any code points, halves of surrogate pairs as well. (fast-check's own `binary` unit takes seconds and 130 MB to set up.) */
export function anyCharacters(most: number): fc.Arbitrary<string> {
  const codePoint = fc.oneof(fc.integer({ min: 0, max: 0x17f }), fc.integer({ min: 0, max: 0x10ffff }));
  return fc.array(codePoint, { maxLength: most }).map((points) => String.fromCodePoint(...points));
}

const EXTREMES: readonly unknown[] = [
  null,
  true,
  0,
  -0,
  -1,
  1e-320,
  1e21,
  1e308,
  -1e308,
  2 ** 53,
  [],
  {},
  [[]],
  { polluted: true },
  // Cannot be made a text or a number: String() of it throws.
  { toString: 1, valueOf: 1 },
  '',
  '0',
];

/** A JSON value that nobody asked for. */
export const hostileValue: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom(...HOSTILE_TEXTS),
  fc.constantFrom(...EXTREMES),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.integer({ min: -5, max: 120 }),
  fc.jsonValue({ maxDepth: 3 }),
  anyCharacters(60),
  fc.constantFrom('mm', 'cm', 'in', '20 mm', '3 5/16 in', 'ring 54', 'US 7', 'left', 'ring', 'enclosed', 'raised', 'lowered'),
);

const MEGABYTE = 999_000;
const repeated = (text: string, room = MEGABYTE) => text.repeat(Math.floor(room / text.length));

/** Texts of about the largest size that is read, each made only when it is wanted: nesting, rows, keys, digits, white space. */
export const BOMBS: Readonly<Record<string, () => string>> = {
  'deep lists': () => repeated('['),
  'deep lists, closed': () => `${'['.repeat(400_000)}${']'.repeat(400_000)}`,
  'deep objects': () => repeated('{"a":'),
  'deep digits': () => `{"schema":"knucklewright/hand@1","digits":${'{"index":'.repeat(50_000)}1${'}'.repeat(50_000)}}`,
  'many rows': () => `[${repeated('1,', MEGABYTE - 3)}1]`,
  'many keys': () => `{${Array.from({ length: 90_000 }, (_, k) => `"k${k}":1`).join(',')}}`,
  'many keys in digits': () => `{"digits":{${Array.from({ length: 90_000 }, (_, k) => `"k${k}":1`).join(',')}}}`,
  'many flags': () => `{"flags":{"hypermobile":[${repeated('"ring",', 900_000)}"ring"]}}`,
  'one name a hundred thousand times': () => `{${repeated('"a":1,', MEGABYTE - 20)}"a":2}`,
  'a long text': () => `{"note":"${repeated('x', MEGABYTE - 20)}"}`,
  'a long key': () => `{"${repeated('<', MEGABYTE - 20)}":1}`,
  'a long number': () => `{"width":${repeated('9', MEGABYTE - 20)}}`,
  'a long fraction': () => `{"width":0.${repeated('0', MEGABYTE - 20)}1}`,
  'white space': () => repeated(' \n\t'),
  'too large': () => ' '.repeat(3_000_000),
  backslashes: () => `"${repeated('\\')}`,
  'half a million quotes': () => repeated('"\\'),
  'opening metadata': () => `<svg>${repeated('<metadata>')}`,
  'opening metadata, then ours': () => `${repeated('<metadata ')}>{"schema":"knucklewright/inputs@1"}</metadata>`,
  'comments without end': () => repeated('999\nknucklewright inputs 1/2 [x]\n'),
  'comments, all different': () => Array.from({ length: 24_000 }, (_, k) => `999\nknucklewright inputs ${k + 1}/24000 [x]`).join('\n'),
  'a comment that counts to a billion': () => '999\nknucklewright inputs 1/1000000000 [{}]\n0\nEOF\n',
  'a comment that counts beyond numbers': () => `999\nknucklewright inputs 1/${'9'.repeat(400)} [{}]\n0\nEOF\n`,
  brackets: () => `999\nknucklewright inputs 1/1 [${repeated('] ', MEGABYTE - 60)}\n`,
  tabs: () => `999\n${repeated('\t')}`,
};

export const bomb: fc.Arbitrary<{ readonly bomb: string }> = fc.record({ bomb: fc.constantFrom(...Object.keys(BOMBS)) });

/** The text of a bomb by its name. */
export function bombText(name: string): string {
  return BOMBS[name]?.() ?? '';
}
