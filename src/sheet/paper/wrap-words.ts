import type { Measure } from './page.ts';

/**
 * Breaks text at spaces so that each line is at most `width` mm at the capital height in the page's font. A word that is longer by itself
 * is broken inside, so that no line is wider.
 */
export function wrapWords(text: string, width: number, height: number, bold: boolean, measure: Measure): readonly string[] {
  const lines: string[] = [];
  const fits = (line: string) => measure(line, height, bold) <= width;
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    // Wide spaces part what stands on one line; they do not begin the next.
    if (word === '' && last !== undefined && !fits(`${last} `)) continue;
    if (last !== undefined && fits(`${last} ${word}`)) {
      lines[lines.length - 1] = `${last} ${word}`;
      continue;
    }
    let rest = word;
    while (rest.length > 1 && !fits(rest)) {
      let cut = rest.length - 1;
      while (cut > 1 && !fits(rest.slice(0, cut))) cut--;
      lines.push(rest.slice(0, cut));
      rest = rest.slice(cut);
    }
    lines.push(rest);
  }
  return lines;
}
