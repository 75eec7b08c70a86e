import type { Message } from './message-args.ts';

/** Problems and warnings by their code. A code without a text here is shown in the program's own English words. */
export const englishMessages = {
  problem: {
    FIELD_MISSING: ({ name }) => `${name} is missing. Fill it in.`,
    FIELD_UNREADABLE: ({ name, range }) => `${name} cannot be read as a number. Type ${range}, as 17.5.`,
    FIELD_OUT_OF_RANGE: ({ name, value, range }) => `${name} is ${value}; ${range} is allowed. Measure again, and look at the unit.`,
    FIELD_VALUE: ({ name }) => `${name} holds something that is not allowed. Use one line of plain text.`,
    CASE_CODE: () =>
      'The case code cannot be used. Take 1 to 24 capital letters, digits and hyphens, at least one digit, as DEMO-01; no name and no date of birth.',
    TOO_FEW_DIGITS: () => 'At least three neighbouring fingers are needed. Measure width and circumference of each.',
    TARGET_NOT_MEASURED: ({ digit }) => `The ${digit} is to be treated but was not measured. Measure it, or choose another.`,
    NOT_ESTIMABLE: ({ name }) => `${name} was not measured and cannot be estimated for this finger. Measure it.`,
    NO_CHILD_NORMS: ({ name }) =>
      `${name} was not measured. There are no norms for children, so nothing is estimated: measure it and what else is missing.`,
    SECTION_IMPOSSIBLE: ({ digit }) =>
      `Width and circumference of the ${digit} contradict each other: no finger has this shape. Measure both again.`,
    TAPER_IMPOSSIBLE: ({ digit }) =>
      `Circumference and root circumference of the ${digit} make no finger. Measure both again, or leave the one at the root away.`,
    LENGTHS_CONTRADICT: ({ digit }) => `The palmar room of the ${digit} cannot reach its dorsal length. Measure both again.`,
    PALM_IMPOSSIBLE: () => 'Breadth and circumference of the hand contradict each other. Measure both again.',
    SETBACK_CONTRADICTS: ({ name, limit }) =>
      `${name} is too much for a hand of this size: at most ${limit}. Measure the web setbacks again, ruler along the long finger, and the hand breadth.`,
    OPTION: ({ name, range }) => `${name} cannot be used. Type ${range}.`,
    DIGIT_NOT_MEASURED: ({ digit }) =>
      `This arrangement takes in the ${digit}, which was not measured. Measure it, or choose one without it.`,
    HOLDS_NOTHING: ({ limit }) =>
      `At this differential the strip runs straight past the held finger and would hold nothing. ${limit === '' ? 'Use a smaller one.' : `At ${limit} it holds.`}`,
    STRIP_TOO_BENT: ({ digit }) =>
      `The ${digit} tapers so much that no strip of this width can follow it. Measure its circumference and root circumference again, leave the one at the root away, or choose a narrower strip.`,
    STRIP_TOO_NARROW: ({ name, limit }) =>
      `Round these webs the strip would be too narrow to be made. Measure the web setbacks again, or choose another arrangement.${limit === '' ? '' : ` It can be made with ${name} of ${limit}.`}`,
    PAPER_NOT_LAID: () =>
      'No paper strip of this hand can have been read at this differential: it would hold nothing. Leave the reading empty, or choose a smaller differential and make the trial.',
    PAPER_READING: ({ limit }) =>
      `This reading is outside what skin and air can make. Weave the paper strip again, and measure the fingers again.${limit === '' ? '' : ` The nearest that can be is ${limit}.`}`,
    NO_PATH: ({ limit }) =>
      `The strip cannot be laid round these fingers. ${limit === '' ? 'Check width and circumference of each.' : `At ${limit} it holds.`}`,
    BLOCK_COUNT: () => 'A strip takes three or four digits. Add a neighbour.',
    BLOCK_NEIGHBOURS: () => 'The digits of a strip must be neighbours. Give the one between them a place.',
    BLOCK_BORDER: () => 'Both border digits must be enclosed, or the band slips off. Enclose them, or add a neighbour.',
    BLOCK_HOLDS_NONE: () => 'At least one digit must be raised or lowered, or nothing changes.',
    BLOCK_MIXED: () => 'Raised and lowered digits cannot be mixed: both layers would cross in one web space. Hold them all one way.',
    NO_TARGET: () => 'No treated finger is chosen yet, so nothing is suggested. Choose it, or choose an arrangement.',
    NO_DEFICIT: ({ digit }) =>
      `The ${digit} lacks neither PIP extension nor PIP flexion, so nothing is suggested. Choose an arrangement if you want one.`,
    BOTH_DEFICITS: ({ digit }) =>
      `The ${digit} lacks PIP extension and PIP flexion. A strip redirects one motion only; the MP joint is held still by a plate instead.`,
    NO_BLOCK: ({ digit }) => `None of the arrangements that serve the ${digit} can be made for this hand. “All ways” says why.`,
    HARD_END_FEEL: () => 'The PIP joint has a hard end-feel, and redirected active motion does not move such a stop: nothing is suggested.',
    UNPROTECTED_REPAIR: () =>
      "A repair or fracture is not protected, and motion outside the surgeon's protocol may break it: nothing is suggested.",
    MOTION_UNREADABLE: ({ name }) => `${name}: type degrees, as 25; for 10 degrees beyond straight, hyper 10.`,
    MOTION_SIGN: ({ name, value }) =>
      `${name} ${value}: a sign is used for both. If 10 degrees are lacking to straight, type 10; if it goes 10 beyond straight, hyper 10.`,
    MOTION_OUT_OF_RANGE: ({ name, value, range }) => `${name} is ${value}; ${range} is allowed.`,
    MOTION_IMPOSSIBLE: ({ name, value }) => `${name} ${value} is less than what it lacks to straight. Both count from straight.`,
    PLATE_ANGLE_FORCES: () =>
      'At this angle the plate would force the MP joint past its measured passive motion. Type an angle inside that motion, or measure it again.',
    PLATE_ANGLE: () => 'The MP angle of the plate is missing or cannot be used. Type 0 to 90 degrees of flexion.',
    JSON_SYNTAX: () => 'The file is broken: it is not JSON. Open the original file.',
    JSON_NAME_TWICE: ({ name }) => `The file has “${name}” twice in one place, and only one would count. Remove the wrong one.`,
    FILE_NEWER: () => 'A newer Knucklewright wrote this file. Open it with that one; the file was left as it is.',
    CASE_FULL: () => 'The case has more visits or corrections than the 400 that one file holds. Begin a new case.',
    FILE_TOO_LARGE: () => 'The file is larger than the 1 MB that is read. Is it the right file?',
    DATE: () => 'The date cannot be read. Write it as 2026-03-31, or leave it empty.',
  },
  warning: {
    VALUE_UNUSUAL: ({ name, value, range }) => `${name} ${value} is unusual; ${range} is plausible. Measure again; go on if it is so.`,
    RING_CHARTS_DIFFER: ({ name, value }) =>
      `${name}: the ring size is taken as ${value}; charts differ. Measure with a tape, or give an ISO 8653 size, as ring 54.`,
    DEPTH_RATIO_UNUSUAL: ({ digit }) => `Width and circumference of the ${digit} hardly agree. Measure both again, at the same level.`,
    LENGTH_RATIO_UNUSUAL: ({ digit }) => `Palmar room and dorsal length of the ${digit} hardly agree. Measure both again.`,
    TAPER_UNUSUAL: ({ digit }) =>
      `The ${digit} tapers more than fingers do. Measure both circumferences again: at its root crease, and half-way to the PIP crease.`,
    SETBACK_UNUSUAL: ({ name, value, limit }) =>
      `${name}: ${value} behind the foremost web is much for a hand of this size; up to ${limit} is usual. Measure the webs again, ruler along the long finger.`,
    STRIP_UNDER_LEAST_WIDTH: () =>
      'The strip is narrower in one place than its least width. Measure the web setbacks again; do not make it as drawn.',
    STRAIGHT_NOT_TAPERED: () =>
      'The fingers taper, which a straight strip does not follow: its distal edge will stand off. Use the staggered outline.',
    PIP_THINNER: ({ digit }) =>
      `The PIP joint of the ${digit} is thinner than its proximal phalanx. Measure both again; swelling may make it so.`,
    CIRCUMFERENCE_ORDER: ({ digit }) =>
      `The ${digit} is thicker than usual beside the others. Check that two were not swapped; swelling or an old injury may make it so.`,
    WIDTH_ORDER: ({ digit }) =>
      `The ${digit} is wider than usual beside the others. Check that two were not swapped; swelling or an old injury may make it so.`,
    PASSIVE_EXCEEDS_ACTIVE: ({ name }) => `${name} is larger than the active one. Check that the two were not swapped.`,
    NO_MOTION_LEFT: () => 'The two deficits together leave no PIP motion. Check that each is a deficit, not the angle reached.',
    PALM_RATIO_UNUSUAL: () => 'Breadth and circumference of the hand hardly agree. Measure both again, without the thumb.',
    ESTIMATED: ({ name, value }) => `${name} was not measured; ${value} is estimated. Measure it.`,
    DIFFERENTIAL_UNUSUAL: ({ value }) =>
      `The differential of ${value} lies outside the 11 to 30 degrees that surveyed therapists use. Use those unless you have a reason.`,
    FOLD_PRESSES: () =>
      'Folded and laid on the modelled hand, the plate presses into a finger. Pad there before moulding, or use a larger space to the skin.',
    FOLD_STRETCH: () =>
      'At its bend the sheet would have to stretch more than stroking gives. Let the bend be the gentlest, one straight line, or one with a slot.',
    PIP_CLEARANCE: ({ value, limit }) => `Folded, the plate ends ${value} from a PIP joint, under ${limit}. Trim its distal edge there.`,
    THUMB_CLEARANCE: ({ value, limit }) => `The radial wing ends ${value} from the thumb web, under ${limit}. Trim it there.`,
    HELD_SHORT: ({ digit, value, limit }) =>
      `The plate covers only ${value} of the ${digit} beyond its bend, under ${limit}: it hardly holds it. Use a smaller MP angle or a dorsal plate if this MP joint must be held.`,
    PIP_CLEARANCE_LESS: ({ value, limit }) =>
      `The palmar plate ends ${value} from the PIP creases, not ${limit}: else it would hold too little of the fingers. See that each PIP joint bends freely over the edge, or use a smaller MP angle or a dorsal plate.`,
    BEND_SHARPER: ({ value, limit }) =>
      `The palmar plate is bent to an inside radius of ${value}, not ${limit}: else it would hold too little of the fingers. Heat the bend well, or use a smaller MP angle, a thinner sheet or a dorsal plate.`,
    DIGIT_LEFT_OUT: ({ digit }) =>
      `The ${digit} is left free: at this MP angle the plate would cover too little of it. Use a smaller MP angle or a dorsal plate if its MP joint must be held.`,
    CORNER_RADIUS: ({ value, limit }) =>
      `The tightest corner has a radius of ${value}, under ${limit}: there is no room for more. Flare it and feel that it is smooth.`,
    PIP_FLEXION_NOT_FREE: ({ digit, value, limit }) =>
      `PIP flexion of the ${digit} is stopped at about ${value}, under ${limit}. Less minimum width or less distance to the web helps, or an arrangement without a layer on its palmar side.`,
    PLATE_STOPS_PIP: ({ digit, value, limit }) =>
      `The plate stops PIP flexion of the ${digit} at about ${value}, under ${limit}. A dorsal plate leaves it free; check the fist before it sets.`,
    STRAIGHT_PULLED: () =>
      'A straight strip must be pulled along the hand to follow the webs, which stretches and presses it. Use the staggered outline.',
    TRIM_TOO_SHORT: ({ limit }) => `The length is known to ± ${limit} (95 %), more than the trim covers. Use at least that much trim.`,
    BORDER_TARGET_IN_THREE: ({ digit }) =>
      `The ${digit} is a border finger: among three digits its rotation is not controlled, above all when its joints are hypermobile. Prefer four digits.`,
    DEFICIT_WITHIN_ERROR: ({ name, value }) =>
      `${name}: ${value} is less than one measurement differs from the next. Measure it again; write 0 when the motion is full.`,
    NO_PASSIVE_GAIN: ({ name }) =>
      `${name} is as large as the active one: the joint is stiff, and redirecting active motion may gain little. Feel the end-feel; treat the stiffness first or beside it.`,
    LOOP_OVER_PIP: () =>
      'A loop that is closed for good would not pass over the PIP joint. Make the seam so that it opens: leave the lap unbonded and close it with a strap.',
  },
  caution: {
    UNPROTECTED_REPAIR: () => "Unprotected repair or fracture: only within the surgeon's protocol. Ask before anything moves it.",
    HARD_END_FEEL: () => 'Hard end-feel: the joint itself stops the motion, and redirecting active motion does not move such a stop.',
    SENSATION: () =>
      'Reduced sensation: heat and pressure are not felt. Let the plastic cool longer, try it on your own skin, look at the skin early and often.',
    SWELLING: () => 'Changing swelling: measure when it is as usual, again before making, and at each visit; fit loosely.',
    HYPERMOBILE: () => "Hypermobile joints: watch rotation, and that a raised digit's MP joint does not go past straight.",
  },
} satisfies Record<'problem' | 'warning' | 'caution', Record<string, Message>>;
