import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';
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

/** Height of the letters on a picture, CSS px, wherever there is room; and what it may come to on the picture of an average hand, mm. */
const LETTERS = { px: 11, mm: { from: 4.5, to: 16 } } as const;

/**
 * How high letters are on a picture so that they can be read at the size it is shown in, mm; found anew when that size changes.
 * @param shown what is seen of the picture, mm
 * @param margins how many heights of a letter the picture is wider and higher than that, for names that stand out
 * @param scale how large the hand is beside an average one: a child's fills the picture as an adult's does
 */
export function useLetters(
  picture: RefObject<SVGSVGElement | null>,
  shown: { readonly width: number; readonly height: number },
  margins: number,
  scale: number,
): number {
  const [pixelsPerMm, set] = useState(0);
  useLayoutEffect(() => {
    const element = picture.current;
    if (element === null) return;
    // Called first as soon as the element is watched, before it is painted.
    const watch = new ResizeObserver(() => {
      const { width, height } = element.getBoundingClientRect();
      const margin = margins * LETTERS.px;
      set(Math.round(20 * Math.min((width - margin) / shown.width, (height - margin) / shown.height)) / 20);
    });
    watch.observe(element);
    return () => watch.disconnect();
  }, [shown.width, shown.height]);
  const { from, to } = LETTERS.mm;
  return scale * (pixelsPerMm > 0 ? Math.min(to, Math.max(from, LETTERS.px / pixelsPerMm / scale)) : from);
}
