import { placedDigits } from '../../block/block.ts';
import { blockSketch } from '../../block/block-sketch.ts';
import { blocks as libraryBlocks } from '../../block/library.ts';
import { success } from '../../units/result.ts';
import { defineCommand } from '../define-command.ts';
import { jsonFlag } from '../flags/output-flags.ts';

/** `blocks`: the blocks as text with a section of each. */
export const blocks = defineCommand({
  name: 'blocks',
  group: 'What it knows',
  about: 'list the blocks: which digits a strip takes in, and which it raises or lowers',
  args: [],
  flags: [jsonFlag],
  read: () => success(null),
  make: () => success(libraryBlocks()),
  report: {
    text: (list) => {
      const shown = list.map((block) => `${block.id}\n${block.title}\n${blockSketch(block)}\n`);
      return `Sections: digits end-on, radial on the left, dorsal up; lines are the strip's two layers.\n\n${shown.join('\n')}`;
    },
    json: (list) =>
      list.map((block) => ({
        id: block.id,
        title: block.title,
        places: Object.fromEntries(placedDigits(block).map(({ digit, place }) => [digit, place])),
      })),
  },
});
