import { polyline } from '../../geometry/path.ts';
import { textWidth } from '../../geometry/stroke-letters.ts';
import type { Label, Part, Pattern } from '../../pattern/pattern.ts';
import { validatePattern } from '../../pattern/validate-pattern.ts';
import { plain } from '../../units/number.ts';
import { type Result, success } from '../../units/result.ts';

/** Pieces in a row; each cut takes the kerf off one length of a piece, half at either end. */
export const KERF_TEST_PIECES = 5;
/** Length and height of a piece and the gap between two, mm. */
const LENGTH = 20;
const HEIGHT = 15;
const GAP = 5;
const NUMBER = 4;
const TEXT = 2.2;

/** The kerf from the length of all pieces pushed end to end, mm: what they lack, shared out. A length over the nominal one has no kerf to show. */
export function kerfFromTest(measured: number): number {
  return Math.max(0, (KERF_TEST_PIECES * LENGTH - measured) / KERF_TEST_PIECES);
}

/**
 * Pieces that show the kerf of a tool in one material: cut at their true size without any offset, pushed end to end and measured. Each is numbered, so that
 * they are pushed together as they lay. What to do stands beside them, and in the words of the file.
 */
export function kerfTest(material: string | null): Result<Pattern> {
  const parts = Array.from({ length: KERF_TEST_PIECES }, (_, k): Part => {
    const x = k * (LENGTH + GAP);
    const outline = polyline(
      [
        { x, y: 0 },
        { x: x + LENGTH, y: 0 },
        { x: x + LENGTH, y: HEIGHT },
        { x, y: HEIGHT },
      ],
      true,
    );
    const number = String(k + 1);
    const at = { x: x + (LENGTH - textWidth(number, NUMBER)) / 2, y: (HEIGHT - NUMBER) / 2 };
    const label: Label = { layer: 'MARK', text: number, at, height: NUMBER, align: 'left', angle: 0 };
    return { id: `kerf-${number}`, title: `kerf test, piece ${number}`, outline, holes: [], marks: [], labels: [label] };
  });
  const lines = kerfTestWords(material);
  const width = Math.max(KERF_TEST_PIECES * (LENGTH + GAP) - GAP, ...lines.map((text) => textWidth(text, TEXT)));
  const labels = lines.map(
    (text, k): Label => ({
      layer: 'INFO',
      text,
      at: { x: 0, y: HEIGHT + 4 + (lines.length - 1 - k) * 2 * TEXT },
      height: TEXT,
      align: 'left',
      angle: 0,
    }),
  );
  const pattern: Pattern = {
    kind: 'sheet',
    title: material === null ? 'Kerf test' : `Kerf test for ${material}`,
    parts,
    beside: { marks: [], labels },
    extents: { minX: 0, minY: 0, maxX: width + 1, maxY: HEIGHT + 6 + lines.length * 2 * TEXT },
    inputs: { schema: 'knucklewright/inputs@1', geometryVersion: '1', date: null, kind: 'sheet', kerfTest: { material } },
    lists: [{ heading: 'KERF TEST', lines }],
    warnings: [],
  };
  const sound = validatePattern(pattern);
  return sound.ok ? success(pattern) : sound;
}

/** What to do with the pieces, a line each. */
export function kerfTestWords(material: string | null): readonly string[] {
  const whole = KERF_TEST_PIECES * LENGTH;
  return [
    `Kerf test${material === null ? '' : ` for ${material}`}: cut with no offset set at the machine.`,
    `Push pieces 1 to ${KERF_TEST_PIECES} end to end and measure them together with a calliper.`,
    `kerf = (${whole} - measured) / ${KERF_TEST_PIECES} mm; ${plain(whole - 1, 1)} mm is a kerf of ${plain(kerfFromTest(whole - 1), 2)} mm.`,
    'Another sheet, tool, speed or power has another kerf: test each.',
  ];
}
