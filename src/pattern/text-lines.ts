import type { Point } from '../geometry/path.ts';
import { textWidth } from '../geometry/stroke-letters.ts';
import type { Label } from './pattern.ts';

/** Baseline to baseline, in capital heights. */
const LINE_PITCH = 1.75;

/** Breaks text at spaces so that each line is at most `width` mm at the given capital height; a single longer word stands alone. */
export function wrapText(text: string, width: number, height: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && textWidth(`${last} ${word}`, height) <= width) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** Lines of text on INFO, one under the other from the top left corner; with the height they take, mm. */
export function textBlock(
  lines: readonly string[],
  topLeft: Point,
  height: number,
): { readonly labels: readonly Label[]; readonly depth: number } {
  const labels = lines.flatMap((text, k): Label[] =>
    text === ''
      ? []
      : [{ layer: 'INFO', text, at: { x: topLeft.x, y: topLeft.y - height - k * height * LINE_PITCH }, height, align: 'left', angle: 0 }],
  );
  return { labels, depth: lines.length === 0 ? 0 : height + (lines.length - 1) * height * LINE_PITCH };
}
