/** What the codes of a cut list ask to look at, in a few words for the printed list; the whole sentence stands on the pattern and in `draw`. */
const WORDS: Readonly<Record<string, string>> = {
  BORDER_TARGET_IN_THREE: 'a border digit turns in a three-digit block: a four-digit one holds it better',
  CIRCUMFERENCE_ORDER: 'the digits are not as thick beside each other as usual: measure the circumferences again',
  DEPTH_RATIO_UNUSUAL: 'a digit is unusually flat or deep: measure width and circumference again',
  DIFFERENTIAL_UNUSUAL: 'the MP angle between held and enclosed digits is outside what therapists use',
  ESTIMATED: 'a length was estimated, not measured: measure it before cutting',
  HARD_END_FEEL: 'hard end-feel: not for this kind of splint before it is cleared',
  HYPERMOBILE: 'hypermobile joints: see that the strip holds them from turning',
  LENGTH_RATIO_UNUSUAL: 'a digit is unusually long or short: measure again',
  LOOP_OVER_PIP: 'closed for good the loop does not pass over the PIP joint: make the seam so that it opens',
  PIP_FLEXION_NOT_FREE: 'the strip may stop PIP flexion of a digit: try the fist before it sets',
  OPTION_RETIRED: 'pipClearance was not used: say freeFlexion instead',
  STRAIGHT_PULLED: 'a straight strip must be pulled to follow the webs: warm it there and pull it slowly',
  STRAIGHT_NOT_TAPERED: 'the fingers taper and a straight strip does not: an edge stands off',
  TAPER_UNUSUAL: 'a finger tapers unusually: measure both circumferences again',
  SENSATION: 'reduced sensation: test the heat on your own skin, look at the skin often',
  SWELLING: 'swelling changes the fit: measure again on the day',
  TRIM_TOO_SHORT: 'the trim may be too short for the measuring errors: cut longer',
  VALUE_UNUSUAL: 'a measurement is unusual: measure it again',
};

/** The words of a code; null for one that has none here. */
export function warningWords(code: string): string | null {
  return Object.hasOwn(WORDS, code) ? (WORDS[code] as string) : null;
}
