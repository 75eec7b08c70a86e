import { polyline } from '../../geometry/path.ts';
import type { Label, Mark, Pattern } from '../../pattern/pattern.ts';
import { GEOMETRY_VERSION } from '../../pattern/strip/geometry-version.ts';
import { wrapText } from '../../pattern/text-lines.ts';
import { plain } from '../../units/number.ts';
import { type Language, spokenIn } from '../../words/language.ts';
import { plasticWords } from '../../words/plastic/plastic-words.ts';
import { withDecimalSign } from '../../words/speech.ts';
import type { SizePlan } from './size-plan.ts';

/** The plot's lower left corner and size, mm. */
const PLOT = { x: 25, y: 22, width: 130, height: 76 };
const TEXT = 2.5;
const DOT = 1;

/** The step of an axis that gives four to eight labels up to `most`: 1, 2 or 5 times a power of ten. */
function stepFor(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most / 4));
  return ([1, 2, 5, 10].find((f) => most / (f * power) <= 8) ?? 10) * power;
}

/** What is cut off on average, over the number of sizes, with the chosen one ringed; drawn on INFO at true size. @param chosen its place in `all` */
export function sizeChart(all: readonly SizePlan[], chosen: number, subtitle: string, language: Language = 'en'): Pattern {
  const w = plasticWords(language).chart;
  const spoken = (text: string) => withDecimalSign(text, language);
  const most = Math.max(...all.map((s) => s.meanWaste), 0.1);
  const step = stepFor(most);
  const top = Math.ceil(most / step - 1e-9) * step;
  const x = (k: number) => PLOT.x + (PLOT.width * (k - 0.5)) / all.length;
  const y = (waste: number) => PLOT.y + (PLOT.height * waste) / top;
  const marks: Mark[] = [];
  const labels: Label[] = [];
  const mark = (role: string, title: string, paths: Mark['paths'], circles: Mark['circles'] = []) =>
    marks.push({ layer: 'INFO', role, title, paths, circles });
  const word = (text: string, at: Label['at'], align: Label['align'] = 'center', height = TEXT, angle = 0) =>
    labels.push({ layer: 'INFO', text, at, height, align, angle });
  const { x: left, y: low, width, height } = PLOT;
  mark('axes', 'axes', [
    polyline([
      { x: left, y: low + height },
      { x: left, y: low },
      { x: left + width, y: low },
    ]),
  ]);
  for (let waste = 0; waste <= top + 1e-9; waste += step) {
    mark('scale', `${plain(waste, 2)} mm`, [
      polyline([
        { x: left - 1.5, y: y(waste) },
        { x: left, y: y(waste) },
      ]),
    ]);
    word(spoken(plain(waste, 2)), { x: left - 2.5, y: y(waste) - TEXT / 2 }, 'right');
  }
  const points = all.map((sizes, i) => ({ x: x(i + 1), y: y(sizes.meanWaste) }));
  if (points.length > 1) mark('waste', 'cut off on average', [polyline(points)]);
  for (const [i, point] of points.entries()) {
    mark('waste-point', `${all[i]?.sizes.length} sizes: ${plain(all[i]?.meanWaste ?? 0, 2)} mm`, [], [{ center: point, radius: DOT }]);
    word(String(all[i]?.sizes.length), { x: point.x, y: low - 2 - TEXT });
    word(spoken((all[i]?.meanWaste ?? 0).toFixed(1)), { x: point.x + 1.5, y: point.y + 1.8 }, 'left', TEXT * 0.7);
  }
  const picked = points[chosen];
  const count = all[chosen]?.sizes.length ?? 0;
  if (picked) mark('chosen', `${count} sizes, chosen`, [], [{ center: picked, radius: 2 * DOT }]);
  word(w.across, { x: left + width / 2, y: low - 12 });
  word(w.up, { x: 8, y: low + height / 2 }, 'center', TEXT, 90);
  word(w.heading, { x: left, y: low + height + 18 }, 'left', 3.5);
  const lines = [...wrapText(subtitle, width, TEXT * 0.8), ...(picked ? [w.ringed(String(count))] : [])];
  for (const [k, text] of lines.entries()) word(text, { x: left, y: low + height + 13 - k * 4 }, 'left', TEXT * 0.8);
  return {
    kind: 'page',
    title: w.title,
    parts: [],
    beside: { marks, labels },
    extents: { minX: 0, minY: 0, maxX: 170, maxY: 125 },
    inputs: {
      schema: 'knucklewright/inputs@1',
      geometryVersion: GEOMETRY_VERSION,
      date: null,
      kind: 'page',
      page: 'stock sizes',
      ...spokenIn(language),
    },
    warnings: [],
  };
}
