import { boxOf, type LineArcPath } from '../../geometry/path.ts';
import type { DigitName, Side } from '../../hand/digits.ts';
import { boxOfDrawn } from '../../pattern/place-marks.ts';
import { sectionView } from '../../pattern/strip/section-view.ts';
import type { StripOptions } from '../../pattern/strip/strip-options.ts';
import type { StripPath } from '../../pattern/strip/strip-path.ts';
import { plain } from '../../units/number.ts';
import { svgPathData } from '../../writers/svg/svg-path.ts';
import type { Texts } from '../texts/english.ts';

interface SectionPictureProps {
  readonly path: StripPath;
  readonly side: Side;
  readonly options: Pick<StripOptions, 'thickness'>;
  readonly texts: Texts;
  readonly treated?: DigitName | '';
  /** Small: no words in it, hidden from readers since words stand beside it. */
  readonly small?: boolean;
}

/** Free space round the section, mm. */
const MARGIN = 2;
/** Height of the words that say which side is which, and of the row above and below that they stand in, mm. */
const SIDES = { letters: 2.4, row: 4 } as const;
/** Letters' capital height over font size, for system fonts about this; those are broader than the files' own, so that in a digit they are smaller. */
const CAPITALS = { font: 0.72, inDigit: 0.82 } as const;

/** The digits end-on with the strip round them: marks and places of words from the same view that the files carry. */
export function SectionPicture({ path, side, options, texts, treated, small }: SectionPictureProps) {
  const view = sectionView(path, side, options);
  const paths: readonly LineArcPath[] = view.marks.flatMap((m) => m.paths);
  const tight = small ? boxOf(paths) : boxOfDrawn(view);
  const row = small ? 0 : SIDES.row;
  const box = { minX: tight.minX - MARGIN, minY: tight.minY - MARGIN - row, maxX: tight.maxX + MARGIN, maxY: tight.maxY + MARGIN + row };
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  const seen = side === 'right' ? path.hand.sections.toReversed() : path.hand.sections;
  const named = seen.map((s) => texts.pattern.sectionDigit(texts.hand.first[s.digit], texts.hand.place[s.place]));
  const words = new Map<string, string>([
    ...Object.entries(texts.hand.short),
    ...Object.entries(texts.hand.place),
    ['seam, outer layer', texts.pattern.seamLabel],
  ]);
  const viewBox = `0 0 ${plain(width, 3)} ${plain(height, 3)}`;
  // The digits' marks come first, in the order of the hand's sections.
  const lines = view.marks.map((mark, k) => (
    <path
      key={mark.title}
      class={treated && path.hand.sections[k]?.digit === treated ? `${mark.role} treated` : mark.role}
      d={svgPathData(mark.paths, mark.circles, box)}
    />
  ));
  if (small) {
    return (
      <svg class="section small" viewBox={viewBox} aria-hidden="true">
        {lines}
      </svg>
    );
  }
  return (
    <svg class="section" viewBox={viewBox} role="img" aria-labelledby="section-title section-description">
      <title id="section-title">{texts.pattern.section}</title>
      <desc id="section-description">{texts.pattern.sectionDescription(named.join('; '))}</desc>
      {lines}
      <g font-size={SIDES.letters}>
        <text x={plain(width / 2, 2)} y={SIDES.letters + 0.5}>
          {texts.measure.face.back}
        </text>
        <text x={plain(width / 2, 2)} y={plain(height - 1.5, 2)}>
          {texts.measure.face.palm}
        </text>
        <text class={side === 'left' ? 'from-left' : 'from-right'} x={side === 'left' ? 1 : plain(width - 1, 2)} y={plain(height - 1.5, 2)}>
          {side === 'left' ? `◂ ${texts.measure.thumb}` : `${texts.measure.thumb} ▸`}
        </text>
      </g>
      {view.labels.map((label) => {
        const word = words.get(label.text) ?? label.text;
        // Long words of other languages must keep to the room that the English one had.
        const capitals = label.text === 'seam, outer layer' ? CAPITALS.font : CAPITALS.inDigit;
        const size = (label.height / capitals) * Math.min(1, Math.max(label.text.length, 6) / word.length);
        return (
          <text key={`${label.text}${label.at.x}`} x={label.at.x - box.minX} y={box.maxY - label.at.y} font-size={plain(size, 2)}>
            {word}
          </text>
        );
      })}
    </svg>
  );
}
