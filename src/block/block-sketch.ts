import type { DigitName } from '../hand/digits.ts';
import { type Block, heldPlace, placedDigits } from './block.ts';

/** Letters that a digit's name takes in the sketch, with a space on both sides. */
const NAME_ROOM = 8;

/**
 * The section of a block as four lines of text: digits end-on, radial on the left, dorsal up, the strip's two courses as lines.
 * Raised digits stand above both courses, lowered ones hang below them.
 * @param names of at most 8 letters each
 */
export function blockSketch(block: Block, names?: Readonly<Record<DigitName, string>>): string {
  const raised = heldPlace(block) === 'raised';
  const digits = placedDigits(block);
  const rows = ['', '', '', '', ''];
  const add = (parts: readonly [string, string, string, string, string]) => {
    for (const [k, part] of parts.entries()) rows[k] += part;
  };
  const line = '─'.repeat(NAME_ROOM);
  const blank = ' '.repeat(NAME_ROOM);
  for (const [k, { digit, place }] of digits.entries()) {
    const name = centred(names?.[digit] ?? digit);
    const before = digits[k - 1]?.place;
    if (before === undefined) add([' ', '╭', '│', '╰', ' ']);
    else if (before === place)
      add([
        ' ',
        place === 'enclosed' || !raised ? '─' : ' ',
        place === 'enclosed' ? ' ' : '─',
        place === 'enclosed' || raised ? '─' : ' ',
        ' ',
      ]);
    else if (raised) add([' ', place === 'raised' ? '╮' : '╭', place === 'raised' ? '╰' : '╯', '─', ' ']);
    else add([' ', '─', place === 'lowered' ? '╭' : '╮', place === 'lowered' ? '╯' : '╰', ' ']);
    if (place === 'enclosed') add([blank, line, name, line, blank]);
    else if (raised) add([name, blank, line, line, blank]);
    else add([blank, line, line, blank, name]);
  }
  add([' ', '╮', '│', '╯', ' ']);
  return rows
    .map((row) => row.trimEnd())
    .filter((row) => row !== '')
    .join('\n');
}

function centred(name: string): string {
  const left = Math.floor((NAME_ROOM - name.length) / 2);
  return name.padStart(left + name.length).padEnd(NAME_ROOM);
}
