/** The only tolerances of the project, in mm unless the name says otherwise. */

/** Two points closer than this are the same point; four written decimals cannot tell them apart. */
export const SAME_POINT = 1e-6;
/** Where an iteration on a length stops. */
export const LENGTH_SOLVED = 1e-12;
/** How far two lengths that were computed in two ways agree; far above LENGTH_SOLVED, far below anything drawn. */
export const LENGTH_COMPARED = 1e-10;
/** Where an iteration on an angle (radians) stops. */
export const ANGLE_SOLVED = 1e-13;
/** A turn against a contact's sense smaller than this (radians) is rounding, not a wrong turn. */
export const WRONG_TURN = 1e-9;
/** Shortest edge and narrowest neck that a cut outline may have (output rule 7). */
export const MINIMUM_FEATURE = 1;
/** Two cut edges of different parts that run nearer than this to each other are one edge, cut twice. */
export const DOUBLED_EDGE = 0.01;
/** Two parts may touch along less than this; more is a doubled edge. */
export const DOUBLED_LENGTH = 0.1;
/** Chord error of arcs that are written as short lines, unless the person asks for another. */
export const ARC_CHORD_ERROR = 0.01;
