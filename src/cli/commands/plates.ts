import { plates as libraryPlates } from '../../pattern/plate/plate-names.ts';
import type { PlatePreset } from '../../pattern/plate/read-plate.ts';
import { plain } from '../../units/number.ts';
import { success } from '../../units/result.ts';
import { defineCommand } from '../define-command.ts';
import { jsonFlag } from '../flags/output-flags.ts';

/** `plates`: the plates that come with the program. */
export const plates = defineCommand({
  name: 'plates',
  group: 'What it knows',
  about: 'list the plates: which faces, digits and MP angles each holds',
  args: [],
  flags: [jsonFlag],
  read: () => success(null),
  make: () => success(libraryPlates()),
  report: {
    text: (list) => `Each can be changed with --digits, --angle and the option flags of draw.\n\n${list.map(plateText).join('\n')}`,
    json: (list) => list,
  },
});

function plateText({ id, title, faces, digits, angle, angles }: PlatePreset): string {
  const held = digits === 'target-and-neighbours' ? 'the digit to be treated and its neighbours' : digits.join(', ');
  const meant = angles ? ` (meant for ${plain(angles.from)} to ${plain(angles.to)})` : '';
  const at = angle === null ? "the plan's, or --angle" : `${plain(angle)} degrees${meant}`;
  return `${id}\n${title}\n  faces ${faces}; digits ${held}; MP angle: ${at}\n`;
}
