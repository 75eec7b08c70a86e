import { placedDigits } from '../block/block.ts';
import { blockSketch } from '../block/block-sketch.ts';
import { blocks } from '../block/library.ts';

/** The blocks as text with a section of each, or as JSON. */
export function listBlocks(json: boolean): string {
  if (json) {
    const list = blocks().map((b) => ({
      id: b.id,
      title: b.title,
      places: Object.fromEntries(placedDigits(b).map(({ digit, place }) => [digit, place])),
    }));
    return `${JSON.stringify(list, null, 2)}\n`;
  }
  const shown = blocks().map((b) => `${b.id}\n${b.title}\n${blockSketch(b)}\n`);
  return `Sections: digits end-on, radial on the left, dorsal up; lines are the strip's two layers.\n\n${shown.join('\n')}`;
}
