/**
 * Moulding a plate, in order; and the cautions of a larger piece. Common practice, no source; the sheet's own instructions and the treating
 * clinician come first.
 */
export const PLATE_STEPS: readonly string[] = [
  'Print at 100 %, measure the 50 mm square, cut the paper out and lay it on the hand at the angle before any sheet is cut.',
  'Pad first: put the padding on the ulnar head if the edge comes near it, on the metacarpal heads and on every bony or tender point, and mould over it. Padding under a finished plate makes it tight.',
  'Mark on the sheet what the pattern marks, cut, heat as the sheet asks for (65 to 71 C water, under a minute for most), blot it dry.',
  'Two pairs of hands: one holds the MP joints at the angle with the gauge against the side, wrist straight, the other drapes. Gravity helps: dorsal plate with the palm down, palmar plate with the palm up.',
  'Bend along the MP bend line first, then lay the hand part down, then wrap wings and side walls. Stroke, do not press: finger prints are pressure points.',
  'Hold the gauge against it until it has set. Then flare the wrist edge, the thumb web and every edge beside a joint that stays free.',
  'Check: MP joints at the angle, wrist and thumb free, PIP joints through their whole motion in both directions, free digits to a full fist. Trim what stops them, round what you trimmed.',
  'Put on the hooks and cut the straps after the list. Straps hold, they do not pull.',
];

export const PLATE_CAUTIONS: readonly string[] = [
  'A larger sheet holds more heat and more water than a strip: blot longer, test it on your own skin, protect the forearm.',
  'Look at the skin over the metacarpal heads, the ulnar head, the radial border of the index finger and in the thumb web: there plates press first.',
  'MP joints held straight get stiff: hold them straight no longer than the plan says, and take the plate off for exercise when it says so.',
  'The MP angle is a starting point for the clinician to judge, common practice without a published source, never a prescription.',
];
