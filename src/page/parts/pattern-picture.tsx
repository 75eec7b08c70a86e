import { type Box, boxOf } from '../../geometry/path.ts';
import { strokeText } from '../../geometry/stroke-letters.ts';
import type { Label, Layer, Mark, Pattern } from '../../pattern/pattern.ts';
import { radians } from '../../units/angle.ts';
import { plain } from '../../units/number.ts';
import { svgPathData } from '../../writers/svg/svg-path.ts';

interface PatternPictureProps {
  readonly pattern: Pattern;
  /** With everything beside the parts, or the parts alone. */
  readonly whole: boolean;
  readonly title: string;
  readonly description: string;
  /** Width on the screen: CSS pixels per mm, or null to fit `zoom` times the room there is. */
  readonly pixelsPerMm: number | null;
  readonly zoom: number;
  readonly id?: string;
}

const MARGIN = 2;

/** The pattern in true proportion, its paths written as the SVG file writes them. */
export function PatternPicture({ pattern, whole, title, description, pixelsPerMm, zoom, id = 'pattern-picture' }: PatternPictureProps) {
  const box = whole ? pattern.extents : grown(boxOf(pattern.parts.map((part) => part.outline)));
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  const style = { width: pixelsPerMm === null ? `${plain(100 * zoom)}%` : `${plain(width * pixelsPerMm, 3)}px` };
  const marks = [...pattern.parts.flatMap((p) => p.marks), ...(whole ? pattern.beside.marks : [])];
  const labels = [...pattern.parts.flatMap((p) => p.labels), ...(whole ? pattern.beside.labels : [])];
  return (
    <svg
      class="pattern"
      id={id}
      viewBox={`0 0 ${plain(width, 4)} ${plain(height, 4)}`}
      style={style}
      role="img"
      aria-labelledby={`${id}-title ${id}-description`}
    >
      <title id={`${id}-title`}>{title}</title>
      <desc id={`${id}-description`}>{description}</desc>
      {pattern.parts.map((part) => (
        <path key={part.id} class="layer-CUT" d={svgPathData([part.outline, ...part.holes], [], box)} />
      ))}
      {(['MARK', 'INFO'] as const).map((layer) => (
        <path key={layer} class={`layer-${layer}`} d={layerData(layer, marks, labels, box)} />
      ))}
    </svg>
  );
}

function layerData(layer: Exclude<Layer, 'CUT'>, marks: readonly Mark[], labels: readonly Label[], box: Box): string {
  const own = marks.filter((m) => m.layer === layer);
  const drawn = own.map((m) => svgPathData(m.paths, m.circles, box));
  const lettered = labels
    .filter((label) => label.layer === layer)
    .map(({ text, at, height, align, angle }) =>
      svgPathData(strokeText(text, { at, height, align, angle: radians(angle) }).paths, [], box),
    );
  return [...drawn, ...lettered].join(' ');
}

function grown({ minX, minY, maxX, maxY }: Box): Box {
  return { minX: minX - MARGIN, minY: minY - MARGIN, maxX: maxX + MARGIN, maxY: maxY + MARGIN };
}
