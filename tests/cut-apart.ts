/** A rectangle by its lower left corner, mm. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

const CUT = /(along|across) the grain, ([\d.]+) .* from ([\d.]+) to ([\d.]+)$/;

/** The pieces that a sheet falls into when it is cut as the words say, one straight cut after the other. Throws when a cut does not cross one piece from edge to edge. */
export function cutApart(sheet: Rectangle, cuts: readonly string[]): readonly Rectangle[] {
  let pieces: readonly Rectangle[] = [sheet];
  for (const cut of cuts) {
    const [, way = '', ...figures] = CUT.exec(cut) ?? [];
    const [line = 0, start = 0, end = 0] = figures.map(Number);
    const same = (a: number, b: number) => Math.abs(a - b) < 0.06;
    const meant = pieces.filter(({ x, y, w, h }) =>
      way === 'along'
        ? same(x, start) && same(x + w, end) && y < line && line < y + h
        : same(y, start) && same(y + h, end) && x < line && line < x + w,
    );
    const [piece] = meant;
    if (piece === undefined || meant.length > 1) throw new Error(`${meant.length} pieces are meant by: ${cut}`);
    const { x, y, w, h } = piece;
    const halves =
      way === 'along'
        ? [
            { x, y, w, h: line - y },
            { x, y: line, w, h: y + h - line },
          ]
        : [
            { x, y, w: line - x, h },
            { x: line, y, w: x + w - line, h },
          ];
    pieces = [...pieces.filter((other) => other !== piece), ...halves];
  }
  return pieces;
}
