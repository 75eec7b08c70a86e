import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyCharacter } from '../../tests/any-character.ts';
import { SAME_POINT } from '../units/tolerance.ts';
import type { LineArcPath, Point, Vertex } from './path.ts';
import { ACCENTED, ACCENTS, type AccentName, GLYPHS } from './stroke-alphabet.ts';
import { LETTER_ASCENT, LETTER_DESCENT, strokeText, textWidth } from './stroke-letters.ts';

/** The alphabet is drawn to 0.01 of a grid unit; an arc through rounded points strays by as much (20 units are 1). */
const GRID_ROUNDING = 0.01 / 20;
const ORIGIN = { x: 0, y: 0 };
const pairs = (name: AccentName): string[][] => ACCENTED[name].split(' ').map((pair) => [...pair]);
const ACCENT_NAMES = Object.keys(ACCENTED) as AccentName[];
const COMPOSED = ACCENT_NAMES.flatMap((name) => pairs(name).map(([letter = '', base = '']) => ({ name, letter, base })));
const COVERED = [...Object.keys(GLYPHS), ...COMPOSED.map(({ letter }) => letter)];
const SEEN = COVERED.filter((character) => character !== ' ');
const range = (from: number, to: number): string[] => Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i));

const draw = (text: string, height = 1): readonly LineArcPath[] => strokeText(text, { at: ORIGIN, height }).paths;
const segments = ({ vertices }: LineArcPath): [Vertex, Vertex][] =>
  vertices.slice(1).map((end, index) => [vertices[index] as Vertex, end] as [Vertex, Vertex]);
// Called millions of times: Math.hypot, safe for numbers that no letter has, takes ten times as long.
const distance = (a: Point, b: Point): number => Math.sqrt((a.x - b.x) ** 2 + (a.y - b.y) ** 2);

/** Point at t (0..1) of an arc or line: from the definition bulge = tan(sweep / 4), by the chord and the inscribed angle. */
function along([a, b]: [Vertex, Vertex], t: number): Point {
  const sweep = 4 * Math.atan(a.bulge);
  if (sweep === 0) return { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
  const share = Math.sin((t * sweep) / 2) / Math.sin(sweep / 2);
  const turn = ((t - 1) * sweep) / 2;
  const x = (b.x - a.x) * share;
  const y = (b.y - a.y) * share;
  return { x: a.x + x * Math.cos(turn) - y * Math.sin(turn), y: a.y + x * Math.sin(turn) + y * Math.cos(turn) };
}
const STEPS = Array.from({ length: 33 }, (_, i) => i / 32);
const sampled = (paths: readonly LineArcPath[]): Point[] =>
  paths.flatMap((path) => segments(path).flatMap((s) => STEPS.map((t) => along(s, t))));
const nearest = (p: Point, cloud: readonly Point[]): number => cloud.reduce((least, q) => Math.min(least, distance(p, q)), Infinity);
const gap = (a: readonly Point[], b: readonly Point[]): number => a.reduce((least, p) => Math.min(least, nearest(p, b)), Infinity);
/** Hausdorff distance: how far the most different spot of two drawings is from the other drawing. */
const difference = (a: readonly Point[], b: readonly Point[]): number =>
  Math.max(...a.map((p) => nearest(p, b)), ...b.map((p) => nearest(p, a)));
const fromLeft = (points: readonly Point[]): Point[] => {
  const left = Math.min(...points.map(({ x }) => x));
  return points.map(({ x, y }) => ({ x: x - left, y }));
};
const direction = (from: Point, to: Point): number => Math.atan2(to.y - from.y, to.x - from.x);

describe('every letter', () => {
  it.each(SEEN)('%s is finite, inside its cell, of non-zero segments and arcs of at most half a circle', (character) => {
    const { paths, width, unknown } = strokeText(character, { at: ORIGIN, height: 1 });
    expect(unknown).toEqual([]);
    expect(paths.length).toBeGreaterThan(0);
    expect(width).toBeGreaterThan(0);
    for (const path of paths) {
      expect(path.closed).toBe(false);
      expect(path.vertices.length).toBeGreaterThan(1);
      expect(path.vertices.at(-1)?.bulge).toBe(0);
      expect(segments(path).filter(([a, b]) => !(distance(a, b) > 0.01 && Math.abs(a.bulge) <= 1))).toEqual([]);
    }
    const inCell = ({ x, y }: Point) => y >= -LETTER_DESCENT && y <= LETTER_ASCENT && x >= -GRID_ROUNDING && x <= width + GRID_ROUNDING;
    expect(sampled(paths).filter((p) => !inCell(p))).toEqual([]);
  });

  it('states its ink width as drawn, so that the bearings on both sides are what the table says', () => {
    // Within half a unit of the 20-unit grid: round sides of small radius end a little inside the table's box.
    for (const [character, data] of Object.entries(GLYPHS).filter(([c]) => c !== ' ')) {
      const [left = 0, width = 0] = data.split(' ').map((n) => Number.parseFloat(n) / 20);
      const xs = sampled(draw(character)).map(({ x }) => x);
      expect(Math.abs(Math.min(...xs) - left), `${character} left edge`).toBeLessThanOrEqual(0.025);
      expect(Math.abs(Math.max(...xs) - left - width), `${character} right edge`).toBeLessThanOrEqual(0.025);
    }
  });

  it('has no kink: where segments meet they go straight on (within 2.5 degrees) or turn a corner of more than 15', () => {
    for (const character of SEEN) {
      for (const path of draw(character)) {
        const parts = segments(path);
        parts.slice(1).forEach((next, index) => {
          const before = parts[index] as [Vertex, Vertex];
          const arriving = direction(...before) + 2 * Math.atan(before[0].bulge);
          const leaving = direction(...next) - 2 * Math.atan(next[0].bulge);
          const turn = Math.abs((Math.atan2(Math.sin(leaving - arriving), Math.cos(leaving - arriving)) * 180) / Math.PI);
          expect(turn < 2.5 || turn > 15, `${character}: ${turn.toFixed(1)} degrees at ${next[0].x}, ${next[0].y}`).toBe(true);
        });
      }
    }
  });

  it('keeps the proportions it promises: capitals and digits 1, flat small letters 0.7, descenders 0.3', () => {
    const extent = (c: string): [number, number] => {
      const ys = sampled(draw(c)).map(({ y }) => y);
      return [Math.min(...ys), Math.max(...ys)];
    };
    for (const c of 'ABCDEFGHIJKLMNOPRSTUVWXYZ0123456789bdhkl') {
      expect(extent(c)[0], c).toBeCloseTo(0, 2);
      expect(extent(c)[1], c).toBeCloseTo(1, 2);
    }
    for (const c of 'acemnorsuvwxzæœıĸ') {
      expect(extent(c)[0], c).toBeCloseTo(0, 2);
      expect(extent(c)[1], c).toBeCloseTo(0.7, 2);
    }
    for (const c of 'gpqy') {
      expect(extent(c)[0], c).toBeCloseTo(-0.3, 2);
      expect(extent(c)[1], c).toBeCloseTo(0.7, 2);
    }
  });
});

describe('letters that must not be taken for one another', () => {
  const LEAST = 0.1; // of the capital height: a pen's width in common lettering, so the difference survives the pen
  const shape = (c: string): Point[] => fromLeft(sampled(draw(c)));
  it.each(['1I', '1l', 'Il', 'I|', 'l|', '17', '0O', 'OQ', '06', '08', '69', '5S', '2Z', '8B', '38', 'UV', '3Ʒ', 'ßB', 'æœ', 'ıl'])(
    '%s',
    (pair) => {
      const [a = '', b = ''] = pair;
      expect(difference(shape(a), shape(b))).toBeGreaterThan(LEAST);
    },
  );

  it('6 and 9 differ also when one of them is read upside down', () => {
    const turned = fromLeft(shape('6').map(({ x, y }) => ({ x: -x, y: 1 - y })));
    expect(difference(turned, shape('9'))).toBeGreaterThan(LEAST);
  });

  it('no two characters are drawn alike, except those that readers cannot tell apart either', () => {
    const ALIKE = new Set(['µμ', 'ÐĐ']);
    const seen = new Map<string, string>();
    for (const character of SEEN) {
      const drawing = JSON.stringify(draw(character));
      const other = seen.get(drawing);
      if (other !== undefined) expect(ALIKE).toContain(other + character);
      seen.set(drawing, character);
    }
  });

  it('digits all take the same room', () => {
    const advance = (c: string): number => textWidth(`${c}I`, 1);
    for (const digit of '123456789') expect(advance(digit)).toBeCloseTo(advance('0'), 12);
  });
});

describe('coverage', () => {
  const unknownIn = (text: string): readonly string[] => strokeText(text, { at: ORIGIN, height: 2 }).unknown;

  it('has all printable ASCII', () => expect(unknownIn(range(0x20, 0x7e).join(''))).toEqual([]));

  it('has all of Latin-1 but the soft hyphen, all of Latin Extended-A, and the letters of the later blocks', () => {
    expect(unknownIn(range(0xa0, 0xff).join(''))).toEqual(['U+00AD']);
    expect(unknownIn(range(0x100, 0x17f).join(''))).toEqual([]);
    expect(unknownIn('ẞȘșȚțẀẁẂẃẄẅỲỳǤǥǦǧǨǩǮǯƷʒ')).toEqual([]);
  });

  it('has the marks that measures and labels need', () => {
    expect(unknownIn('°±×÷·–—’‘“”…µ²³½¼¾≤≥→←↑↓≈€£§−′″„‚«»‹›¡¿')).toEqual([]);
  });

  // Customary pangrams and alphabets of European languages; each is repeated in capitals.
  it.each([
    ['Czech', 'Příliš žluťoučký kůň úpěl ďábelské ódy.'],
    ['Danish', 'Høj bly gom vandt fræk sexquiz på wc.'],
    ['Estonian', 'õäöü šž'],
    ['French', 'Voix ambiguë d’un cœur qui, au zéphyr, préfère les jattes de kiwis; ça, là, où, île, Noël, dû, ÿ.'],
    ['German', 'Falsches Üben von Xylophonmusik quält jeden größeren Zwerg. ẞ'],
    ['Hungarian', 'Árvíztűrő tükörfúrógép.'],
    ['Icelandic', 'Kæmi ný öxi hér, ykist þjófum nú bæði víl og ádrepa.'],
    ['Irish', 'áéíóú ḃċḋḟġṁṗṡṫ'],
    ['Latvian', 'Glāžšķūņa rūķīši dzērumā čiepj koncertflīģeļu vākus.'],
    ['Lithuanian', 'Įlinkdama fechtuotojo špaga sublykčiojusi pragręžė apvalų arbūzą.'],
    ['Maltese', 'ċ ġ ħ għ ie ż'],
    ['Polish', 'Zażółć gęślą jaźń.'],
    ['Portuguese', 'Luís argüia à brisa que a avó põe, há três noites, no chão: pêssego, fácil, ímã, útil, açúcar.'],
    ['Romanian', 'ăâîșț ĂÂÎȘȚ'],
    ['Sámi', 'áâčđŋšŧžåäöøæǧǥǩǯʒ'],
    ['Slovak', 'ľščťžýáíéúäôňďŕĺó dzdž'],
    ['Slovene, Croatian, Bosnian', 'čćđšž dž lj nj'],
    ['Spanish', '¿El pingüino zampó whisky, kiwi y jugo de fresa? ¡Sí, señor cigüeña! áéíóú ñ'],
    ['Swedish, Finnish', 'Flygande bäckasiner söka hwila på mjuka tuvor.'],
    ['Turkish', 'Pijamalı hasta yağız şoföre çabucak güvendi. İIıi'],
    ['Welsh', 'âêîôûŵŷ ẁỳ ẃý ẅÿ'],
  ])('writes %s', (_language, text) => {
    expect(unknownIn(text)).toEqual([]);
    expect(unknownIn(text.toUpperCase())).toEqual([]);
    expect(draw(text.normalize('NFD'))).toEqual(draw(text));
  });

  it('names what it cannot draw, once each and in order, and draws the rest as if it were not there', () => {
    const { paths, unknown, width } = strokeText('R漢I\nN😀漢G\u0007\u0304\u200b\ud800', { at: ORIGIN, height: 2 });
    expect(unknown).toEqual(['漢', 'U+000A', '😀', 'U+0007', 'U+0304', 'U+200B', 'U+D800']);
    expect(paths).toEqual(draw('RING', 2));
    expect(width).toBe(textWidth('RING', 2));
    expect(strokeText('\n漢', { at: ORIGIN, height: 2 })).toMatchObject({ paths: [], width: 0 });
  });

  it('reports every character outside the alphabet, and none within it', () => {
    const known = new Set([...COVERED, '\u00a0', '\u202f']);
    const reported = (c: string): boolean => unknownIn(c).length > 0;
    // Characters that change under NFC (such as the ångström sign) are judged by what they become.
    const single = fc.oneof(anyCharacter, fc.constantFrom(...COVERED)).map((c) => c.normalize('NFC'));
    fc.assert(fc.property(single, (c) => reported(c) === [...c].some((one) => !known.has(one))));
  });
});

describe('accents', () => {
  // Outside judge: the canonical decompositions of the Unicode Standard, as String.normalize applies them.
  const MARK: Readonly<Record<AccentName, string>> = {
    acute: '\u0301',
    grave: '\u0300',
    circumflex: '\u0302',
    caron: '\u030c',
    tilde: '\u0303',
    diaeresis: '\u0308',
    ring: '\u030a',
    breve: '\u0306',
    macron: '\u0304',
    dotAbove: '\u0307',
    doubleAcute: '\u030b',
    commaAbove: '\u0327',
    caronBeside: '\u030c',
    commaBelow: '\u0326',
    cedilla: '\u0327',
    ogonek: '\u0328',
  };
  const DOTTED: Readonly<Record<string, string>> = { ı: 'i', ȷ: 'j' };

  it.each(COMPOSED)('$letter is $base with $name', ({ letter, base, name }) => {
    // Latvian letters are encoded with a cedilla and written with a comma (Unicode Standard, chapter 7.1).
    const mark = 'ĢĶĻŅŖķļņŗ'.includes(letter) ? '\u0327' : MARK[name];
    expect(letter.normalize('NFD')).toBe((DOTTED[base] ?? base) + mark);

    const paths = draw(letter);
    const bare = draw(base);
    const shift = (paths[0]?.vertices[0]?.x ?? 0) - (bare[0]?.vertices[0]?.x ?? 0);
    const ink = sampled(paths.slice(0, bare.length));
    expect(
      difference(
        ink,
        sampled(bare).map(({ x, y }) => ({ x: x + shift, y })),
      ),
    ).toBeLessThan(SAME_POINT);

    const accent = sampled(paths.slice(bare.length));
    const room = gap(accent, ink);
    const place = ACCENTS[name].split(';')[0];
    // Apart by more than a pen of a tenth of the capital height, or joined.
    if (name === 'cedilla' || place === 'foot') expect(room).toBeLessThan(0.02);
    else expect(room).toBeGreaterThan(0.1);
    if (place === 'above') expect(Math.min(...accent.map(({ y }) => y))).toBeGreaterThan(Math.max(...ink.map(({ y }) => y)) + 0.1);
  });
});

describe('setting text', () => {
  const text = fc.string({ unit: fc.constantFrom(...COVERED), maxLength: 12 });
  const height = fc.double({ min: 0.5, max: 20, noNaN: true });
  const place = fc.double({ min: -300, max: 300, noNaN: true });
  const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
  const near = (a: readonly LineArcPath[], b: readonly LineArcPath[]): boolean =>
    a.length === b.length &&
    a.every((path, i) => {
      const other = b[i];
      return path.vertices.every((v, k) => {
        const w = other?.vertices[k];
        return w !== undefined && distance(v, w) < SAME_POINT && v.bulge === w.bulge;
      });
    });

  it('at another place, height and angle is the same drawing moved, scaled and turned', () => {
    fc.assert(
      fc.property(
        text,
        height,
        place,
        place,
        angle,
        fc.constantFrom('left' as const, 'center' as const, 'right' as const),
        (t, h, x, y, a, align) => {
          const plain = strokeText(t, { at: ORIGIN, height: 1, align });
          const set = strokeText(t, { at: { x, y }, height: h, align, angle: a });
          const turned = plain.paths.map((path) => ({
            closed: false,
            vertices: path.vertices.map((v) => ({
              x: x + h * (v.x * Math.cos(a) - v.y * Math.sin(a)),
              y: y + h * (v.x * Math.sin(a) + v.y * Math.cos(a)),
              bulge: v.bulge,
            })),
          }));
          expect(near(set.paths, turned)).toBe(true);
          expect(set.width).toBeCloseTo(plain.width * h, 9);
        },
      ),
    );
  });

  it('turned by a quarter it runs up the page', () => {
    const { paths, width } = strokeText('RING', { at: { x: 5, y: 7 }, height: 2, angle: Math.PI / 2 });
    const points = sampled(paths);
    expect(Math.min(...points.map(({ x }) => x))).toBeCloseTo(3, 9);
    expect(Math.max(...points.map(({ x }) => x))).toBeCloseTo(5, 9);
    expect(Math.max(...points.map(({ y }) => y))).toBeCloseTo(7 + width, 9);
  });

  it('left starts, centre halves and right ends at the given point', () => {
    const xs = (align: 'left' | 'center' | 'right', t: string): number[] =>
      sampled(strokeText(t, { at: { x: 10, y: 0 }, height: 2.5, align }).paths).map(({ x }) => x);
    for (const t of ['HN', 'EMU', 'DOPH', 'IN']) {
      const left = xs('left', t);
      const center = xs('center', t);
      const right = xs('right', t);
      expect(Math.min(...left)).toBeGreaterThanOrEqual(10);
      expect(Math.max(...left)).toBeCloseTo(10 + textWidth(t, 2.5), 9);
      expect((Math.min(...center) + Math.max(...center)) / 2).toBeCloseTo(10, 9);
      expect(Math.max(...right)).toBeCloseTo(10, 9);
    }
  });

  it('letters follow one another without touching', () => {
    const apart = fc.constantFrom(...SEEN.filter((c) => c !== '_')); // underscores make one line, as they should
    fc.assert(
      fc.property(apart, apart, (a, b) => {
        const first = draw(a).length;
        const both = draw(a + b);
        expect(gap(sampled(both.slice(0, first)), sampled(both.slice(first))), a + b).toBeGreaterThan(0.05);
      }),
    );
  });

  it('a space is room without ink, and widths add up', () => {
    expect(draw(' ')).toEqual([]);
    expect(textWidth('', 2)).toBe(0);
    expect(textWidth('A B', 2)).toBeGreaterThan(textWidth('AB', 2));
    expect(draw('84\u00a0mm')).toEqual(draw('84 mm'));
    fc.assert(
      fc.property(text, height, (t, h) => {
        expect(textWidth(t, h)).toBe(strokeText(t, { at: ORIGIN, height: h }).width);
        expect(textWidth(`${t}I`, h)).toBeGreaterThan(textWidth(t, h));
      }),
    );
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('refuses the height %s', (bad) => {
    expect(() => textWidth('A', bad)).toThrow(RangeError);
    expect(() => strokeText('A', { at: ORIGIN, height: bad })).toThrow(RangeError);
  });

  it.each([
    { at: { x: Number.NaN, y: 0 }, height: 2 },
    { at: { x: 0, y: Number.POSITIVE_INFINITY }, height: 2 },
    { at: ORIGIN, height: 2, angle: Number.NaN },
  ])('refuses a place or angle that is not finite', (options) => {
    expect(() => strokeText('A', options)).toThrow(RangeError);
  });
});
