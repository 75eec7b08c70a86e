import type { Box, LineArcPath } from '../../geometry/path.ts';
import type { DrawnShape } from '../../pattern/drawing.ts';
import { svgPathData } from '../../writers/svg/svg-path.ts';

/** Shapes of a picture in the page's pens and tones; the style of class `inked` on what holds them applies. */
export function DrawnShapes({ items, extents }: { readonly items: readonly DrawnShape[]; readonly extents: Box }) {
  return (
    <>
      {items
        .filter(({ paths, circles }) => paths.length + circles.length > 0)
        .map((item, k) => (
          <path
            // Later items lie on top: the order is the picture.
            key={`${item.role} ${k}`}
            class={`${item.role} pen-${item.pen ?? 'none'} tone-${item.tone} fill-${item.fill ?? 'none'}`}
            d={item.circles.length === 0 ? pathData(item.paths, extents) : svgPathData(item.paths, item.circles, extents)}
          />
        ))}
    </>
  );
}

/** Straight lines to a tenth of a mm, which is all that a picture shows; whatever has arcs as files are written. */
function pathData(paths: readonly LineArcPath[], extents: Box): string {
  if (paths.some(({ vertices }) => vertices.some((v) => v.bulge))) return svgPathData(paths, [], extents);
  const at = (value: number) => Math.round(value * 10) / 10;
  return paths
    .map(
      ({ vertices, closed }) =>
        `M${vertices.map((v) => `${at(v.x - extents.minX)} ${at(extents.maxY - v.y)}`).join('L')}${closed ? 'Z' : ''}`,
    )
    .join('');
}
