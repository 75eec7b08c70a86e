/** A strip as it lies in a finished SVG file: read from the text alone, mm, y up. */
export interface DrawnStrip {
  /** x of each line across the strip, by its title. */
  readonly marks: ReadonlyMap<string, number>;
  /** The two ends of each, the proximal one first. */
  readonly lines: ReadonlyMap<string, readonly [Spot, Spot]>;
  /** The cut outline as short straight pieces, closed. */
  readonly outline: readonly Spot[];
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

const PATH = /<path d="([^"]+)"[^>]*>(?:<title>([^<]*)<\/title>)?/g;

/** Reads the one part of an SVG of ours; throws where there is no cut outline. */
export function drawnStrip(svg: string): DrawnStrip {
  const part = svg.slice(svg.indexOf('<g id="part-1"'), svg.indexOf('<g id="beside"'));
  const cut = part.slice(part.indexOf('data-layer="CUT"'));
  const marked = part.slice(0, part.indexOf('data-layer="CUT"'));
  const marks = new Map<string, number>();
  const lines = new Map<string, readonly [Spot, Spot]>();
  for (const [, data = '', title = ''] of marked.matchAll(PATH)) {
    const points = pointsOf(data).sort((a, b) => a.y - b.y);
    const [low, high] = [points[0], points.at(-1)];
    if (title === '' || marks.has(title) || !low || !high) continue;
    marks.set(title, Math.min(...points.map((p) => p.x)));
    lines.set(title, [low, high]);
  }
  const [, outline = ''] = [...cut.matchAll(PATH)][0] ?? [];
  if (outline === '') throw new Error('no cut outline');
  return { marks, lines, outline: pointsOf(outline) };
}

/** Corners of a path, its arcs in pieces of at most 0.05 mm. Only the commands that our files have. */
function pointsOf(data: string): { x: number; y: number }[] {
  const points: { x: number; y: number }[] = [];
  for (const [, command = '', rest = ''] of data.matchAll(/([MLA])([^MLAZ]*)/g)) {
    const n = rest
      .trim()
      .split(/[\s,]+/)
      .map(Number);
    const [x = 0, y = 0] = n.slice(-2);
    const from = points.at(-1);
    if (command === 'A' && from) points.push(...arcPoints(from, { x, y: -y }, n[0] ?? 0, n[3] === 1, n[4] === 1));
    else points.push({ x, y: -y });
  }
  return points;
}

/** SVG's sweep flag turns clockwise as seen, which is clockwise with y up as well. */
function arcPoints(from: { x: number; y: number }, to: { x: number; y: number }, r: number, large: boolean, clockwise: boolean) {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const chord = Math.hypot(dx, dy);
  const height = Math.sqrt(Math.max(0, r * r - (chord / 2) ** 2)) * (large === clockwise ? -1 : 1);
  // The centre lies left of the chord for a small counter-clockwise arc.
  const centre = { x: (from.x + to.x) / 2 + (height * dy) / chord, y: (from.y + to.y) / 2 - (height * dx) / chord };
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  let sweep = Math.atan2(to.y - centre.y, to.x - centre.x) - start;
  if (clockwise && sweep > 0) sweep -= 2 * Math.PI;
  if (!clockwise && sweep < 0) sweep += 2 * Math.PI;
  const count = Math.max(1, Math.ceil((Math.abs(sweep) * r) / 0.05));
  return Array.from({ length: count }, (_, k) => {
    const angle = start + (sweep * (k + 1)) / count;
    return { x: centre.x + r * Math.cos(angle), y: centre.y + r * Math.sin(angle) };
  });
}

/** The two edges of the outline above and below a place along it. */
export function edgesAt({ outline }: DrawnStrip, x: number): { readonly low: number; readonly high: number } {
  const crossings = outline.flatMap((p, k) => {
    const q = outline[(k + 1) % outline.length] ?? p;
    if (p.x === q.x || (p.x - x) * (q.x - x) > 0) return [];
    return [p.y + ((q.y - p.y) * (x - p.x)) / (q.x - p.x)];
  });
  return { low: Math.min(...crossings), high: Math.max(...crossings) };
}
