import { DIGIT_FIELDS, type Field, PALM_FIELDS, TARGET_FIELDS, WEB_FIELDS } from '../../hand/fields.ts';
import { CHOICE_OPTIONS, NUMBER_OPTIONS } from '../../pattern/strip/strip-options.ts';
import { cautionsEnglish, pencilTestEnglish } from '../../words/cautions.ts';
import { capital, handWords } from '../../words/hand-words.ts';
import type { Translations } from '../../words/language.ts';
import { OPTION_WORDS } from '../../words/record/option-words.ts';
import { aboutWords } from '../sections/about/about-words.ts';
import { filesWords } from '../sections/files/files-words.ts';
import { fingerWords } from '../sections/finger/finger-words.ts';
import { headWords } from '../sections/head/head-words.ts';
import { lookWords } from '../sections/look/look-words.ts';
import { makeWords } from '../sections/make/make-words.ts';
import { measureWords } from '../sections/measure/measure-words.ts';
import { moreWords } from '../sections/more/more-words.ts';
import { stopWords } from '../sections/stop/stop-words.ts';
import { suggestionsWords } from '../sections/suggestions/suggestions-words.ts';
import { visitsWords } from '../sections/visits/visits-words.ts';
import { waysWords } from '../sections/ways/ways-words.ts';
import { englishMessages } from './english-messages.ts';

/** How each measure is taken. */
function howOf<Id extends string>(fields: Readonly<Record<Id, Field>>): Readonly<Record<Id, string>> {
  return Object.fromEntries(Object.entries<Field>(fields).map(([id, { howToMeasure }]) => [id, howToMeasure])) as Record<Id, string>;
}

const optionTexts = Object.fromEntries([...NUMBER_OPTIONS, ...CHOICE_OPTIONS].map((o) => [o.key, capital(o.about)])) as Record<
  (typeof NUMBER_OPTIONS)[number]['key'] | (typeof CHOICE_OPTIONS)[number]['key'],
  string
>;

/** Every word of the page in English. Fields, flags, options and cautions come from where the program keeps them. */
export const english = {
  decimal: '.',
  languageName: 'English',
  title: 'Knucklewright: a strip for relative motion, from a measured hand',
  settings: 'Settings of this page',
  language: 'Language',
  units: 'Lengths in',
  decimalSign: 'Decimal sign',
  decimalPoint: 'point, 84.5',
  decimalComma: 'comma, 84,5',
  caution: { ...cautionsEnglish, pencil: pencilTestEnglish },
  mm: 'mm',
  cm: 'cm',
  in: 'in',
  quoted: (text: string) => `“${text}”`,
  degrees: 'degrees',
  fraction: 'fraction, 0.05 is 5 %',
  to: 'to',
  optional: 'optional',
  out: 'left out',
  hand: handWords('en'),
  how: howOf({ ...DIGIT_FIELDS, ...WEB_FIELDS, ...PALM_FIELDS, ...TARGET_FIELDS }),
  block: {
    length: (length: string) => `${length} long`,
    nextLarger: (degrees: string) => `If it does not redirect, try ${degrees} first, then the next suggestion.`,
    nextMost: 'If it does not redirect, try the next suggestion; a larger differential is not in use.',
    plate: (degrees: string, range: string) =>
      `A plate holds the MP joint: ${degrees} of flexion to begin with, range ${range}. Common practice, no published source; your judgement decides.`,
    own: 'Your own arrangement',
    ownAbout: 'Give each finger a place. What cannot be made is refused, with the reason.',
    why: (digit: string, lacks: string, wanted: string) => `${digit} lacks PIP ${lacks}: its MP joint is held in relative ${wanted}.`,
    flexion: 'flexion',
    extension: 'extension',
  },
  plate: {
    choose: 'A plate that holds the MP joint',
    about: 'For a PIP joint that lacks both motions. It lies on the hand and the proximal phalanges.',
    suggested: 'Suggestion',
    angle: 'MP angle',
    angleHint: (planned: string) => `Flexion, 0 to 90. Empty: ${planned}, where the plan begins.`,
    angleAsked: 'Flexion, 0 to 90. The plan names none for this hand.',
    faces: 'Which side',
    face: { dorsal: 'dorsal', palmar: 'palmar', both: 'dorsal and palmar' },
    digits: 'Which fingers',
    digitsOf: { measured: 'all that were measured', neighbours: 'the treated finger and its neighbours' },
    bendWay: 'Bend over the MP joints',
    bendOf: {
      auto: 'the gentlest',
      straight: 'one straight line',
      split: 'with a slot before the little finger',
      kinked: 'from joint to joint, the sheet stretches',
    },
    made: (face: string, angle: string) => `MP plate, ${face}, ${angle}`,
    title: (face: string, angle: string, digits: string) => `MP plate, ${face}, ${angle} (${digits})`,
    description: (parts: string) => `The flat plate with its marks: ${parts}. The table gives every figure.`,
    size: (face: string) => `Flat piece, ${face}, across and along`,
    bend: (face: string) => `Bend allowance, ${face}`,
    cover: 'Covered of the hand',
    wrist: 'Free to the wrist crease',
    strap: (id: string) => `Strap ${id}, width and length`,
    by: 'by',
    drawn: (title: string) => `Pattern drawn: ${title}.`,
  },
  options: {
    heading: 'Strip and sheet',
    about: 'Usual values are filled in.',
    more: 'More options',
    name: OPTION_WORDS.en.name,
    none: OPTION_WORDS.en.value.none,
    automatic: OPTION_WORDS.en.automatic,
    option: optionTexts,
    choice: {
      tacked: 'tacked',
      spanning: 'spanning',
      lap: 'lap',
      opening: 'lap that opens, with a strap',
      auto: 'as the joint needs',
      pinch: 'pinch',
      staggered: 'staggered',
      straight: 'straight',
    },
    date: 'Date on the pattern',
    dateHint: 'Optional. It is never taken from the clock.',
    reset: 'Usual values again',
  },
  pattern: {
    heading: 'Pattern',
    empty: 'The pattern appears here once the code, the side and three neighbouring fingers are there.',
    kept: 'Something above cannot be used yet. This is still the last pattern that could be drawn.',
    fault: 'Why there is no new pattern',
    draw: 'Check and draw',
    title: (code: string, side: string, block: string) => `${code}, ${side}: ${block}`,
    description: (length: string, width: string, marks: number) =>
      `A flat strip ${length} long and ${width} wide with ${marks} marks across it. The table of marks names each with its distance from the starting end.`,
    wholeSheet: 'the whole drawing',
    show: 'Show',
    zoom: 'Zoom',
    zoomIn: 'Larger',
    zoomOut: 'Smaller',
    fit: 'Fit',
    actual: 'Actual size',
    scroll: 'Pattern, can be scrolled; plus and minus zoom, 0 fits',
    section: 'Section, seen from the fingertips, dorsal up',
    sectionDescription: (digits: string) => `The digits end-on with the strip round them, from left to right: ${digits}.`,
    sectionDigit: (digit: string, place: string) => `${digit}, ${place}`,
    seamLabel: 'seam, outer layer',
    moulded: 'Moulded, in three dimensions',
    mouldedDescription: (digits: string) => `The hand with the strip on, each finger at its MP angle: ${digits}.`,
    mouldedDigit: (digit: string, angle: string, bend: string) => `${digit} ${angle} degrees ${bend}`,
    bendFlexion: 'flexed',
    bendExtension: 'extended',
    bendNone: 'straight',
    turn: { left: 'Turn left', right: 'Turn right', up: 'Tip up', down: 'Tip down', home: 'Front view' },
    turnKeys: 'arrow keys turn it, Home is the front view',
    figures: 'Figures',
    flatLength: 'Flat length',
    band: '95 % band of the length',
    bandRead: '95 % band of the length, of the paper reading',
    pathLength: 'Neutral line round the fingers',
    flatWidth: 'Width',
    relief: (digit: string) => `Cut back palmar to the ${digit}`,
    freePip: (digit: string) => `Free PIP flexion, ${digit}`,
    loop: (digits: string) => `Loop inside, ${digits}`,
    standOff: (digit: string) => `Stand-off at the ${digit}`,
    ringSize: (size: number) => `ring size ${size}`,
    marks: 'Marks from the starting end',
    distance: 'Distance',
    mark: 'Mark',
    midline: (digit: string, aspect: string, layer: string) => `${digit}, midline, ${aspect}, ${layer}`,
    web: (one: string, other: string, layer: string) => `Web ${one} and ${other}, ${layer}`,
    borderTurn: (border: string, digit: string) => `${border}, ${digit}`,
    seamStart: 'Seam, starting end',
    seamEnd: 'Seam, finishing end',
    overlapStart: 'Overlap ends, starting end',
    overlapEnd: 'Overlap begins, finishing end',
    trim: 'Trim to here when it fits',
    end: 'End of the strip',
    item: 'Item',
    value: 'Value',
    warnings: 'Look at these first',
    next: 'Next:',
    estimatedList: 'Estimated, not measured',
  },
  errors: {
    heading: 'Please look at this first',
    prefix: 'Error:',
  },
  head: headWords.en,
  finger: fingerWords.en,
  stop: stopWords.en,
  suggestions: suggestionsWords.en,
  measure: measureWords.en,
  make: makeWords.en,
  look: lookWords.en,
  more: moreWords.en,
  about: aboutWords.en,
  files: filesWords.en,
  visits: visitsWords.en,
  ways: waysWords.en,
  message: englishMessages,
};

export type Texts = Translations<typeof english>;
