import { strokeText } from '../../geometry/stroke-letters.ts';
import type { Drawing } from '../../pattern/drawing.ts';
import { plain } from '../../units/number.ts';
import { svgPathData } from '../../writers/svg/svg-path.ts';

/** A drawing such as a chart, with the pens and tones of the page, in the language that it was drawn in. */
export function DrawingPicture({ drawing, id }: { readonly drawing: Drawing; readonly id: string }) {
  const { extents } = drawing;
  const viewBox = `0 0 ${plain(extents.maxX - extents.minX, 3)} ${plain(extents.maxY - extents.minY, 3)}`;
  return (
    <svg class="drawing inked" viewBox={viewBox} role="img" aria-labelledby={`${id}-title ${id}-description`}>
      <title id={`${id}-title`}>{drawing.title}</title>
      <desc id={`${id}-description`}>{drawing.description}</desc>
      {drawing.items.map((item, k) =>
        item.kind === 'shape' ? (
          <path
            // Later items lie on top: the order is the picture.
            key={`${item.role} ${k}`}
            class={`pen-${item.pen ?? 'none'} tone-${item.tone} fill-${item.fill ?? 'none'}`}
            d={svgPathData(item.paths, item.circles, extents)}
          />
        ) : (
          <path
            key={`${item.role} ${k}`}
            class={`letters tone-${item.tone}`}
            stroke-width={plain(item.height * (item.strong ? 0.15 : 0.1), 3)}
            d={svgPathData(strokeText(item.text, { at: item.at, height: item.height, align: item.align }).paths, [], extents)}
          />
        ),
      )}
    </svg>
  );
}
