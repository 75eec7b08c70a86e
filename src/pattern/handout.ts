import type { DigitName } from '../hand/digits.ts';
import type { TextSection } from './making-notes.ts';

/** What patients call the fingers. */
export const PLAIN_FINGER: Readonly<Record<DigitName, string>> = {
  index: 'index finger',
  long: 'middle finger',
  ring: 'ring finger',
  little: 'little finger',
};

const BLANK = '..............................';

/**
 * A page for the patient in plain words, with blanks for everything that the clinician decides: nothing is prescribed here. First wear
 * and redness as in the cautions of this project (trade facts); the rest common practice, no source.
 */
export function handout(thing: 'strip' | 'plate', whatItDoes: string): readonly TextSection[] {
  return [
    { heading: 'What it does', paragraphs: [whatItDoes] },
    {
      heading: 'Wearing it (your clinician fills this in)',
      paragraphs: [
        `Wear it for ${BLANK} at a time, ${BLANK} times a day, until ${BLANK}.`,
        `During: ${BLANK}${BLANK}`,
        `Take it off for: ${BLANK}${BLANK}`,
        `Exercises with it on: ${BLANK} ${BLANK}${BLANK}`,
      ],
    },
    {
      heading: 'Look at your skin',
      paragraphs: [
        `The first time, wear it for about 20 minutes, take it off and look at your skin. Redness should be gone after 15 to 20 minutes. If it stays, do not wear the ${thing} and call us.`,
        'After that, look each time you take it off. Swelling changes the fit: if it gets tight or loose, call us.',
      ],
    },
    {
      heading: 'Keep it away from heat',
      paragraphs: [
        'It softens in hot water and loses its shape on a radiator, on a stove or in a hot car. Wash it with soap in cool water and dry it. Do not bend or heat it yourself.',
      ],
    },
    {
      heading: 'Take it off and call us',
      paragraphs: [
        'if it hurts, if fingers tingle, go numb, turn white, blue or cold, if they swell, if the skin blisters or opens, if it cracks, or if it will not come off easily.',
        `Telephone: ${BLANK}   Clinician: ${BLANK}`,
        `Next visit: ${BLANK}`,
      ],
    },
  ];
}

/** `a, b and c`. */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
