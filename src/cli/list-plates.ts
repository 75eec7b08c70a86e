import { plates } from '../pattern/plate/plate-library.ts';
import { plain } from '../units/number.ts';

/** The plates that come with the program, as text or as JSON. */
export function listPlates(json: boolean): string {
  const list = plates();
  if (json) return `${JSON.stringify(list, null, 2)}\n`;
  const shown = list.map((p) => {
    const digits = p.digits === 'target-and-neighbours' ? 'the digit to be treated and its neighbours' : p.digits.join(', ');
    const meant = p.angles ? ` (meant for ${plain(p.angles.from)} to ${plain(p.angles.to)})` : '';
    const angle = p.angle === null ? 'give --angle' : `${plain(p.angle)} degrees${meant}`;
    return `${p.id}\n${p.title}\n  faces ${p.faces}; digits ${digits}; MP angle: ${angle}\n`;
  });
  return `Each can be changed with --digits, --angle and the option flags of draw.\n\n${shown.join('\n')}`;
}
