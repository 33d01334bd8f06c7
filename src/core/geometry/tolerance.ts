/**
 * Two different things, kept apart in one place.
 *
 * Rounding: what double precision leaves over after a chain of sums at car size (about 1e-12 mm each). Nothing a
 * person could measure hides below it. Tolerance: what the shop means by "the same place".
 */

/** mm. A millionth of what the accuracy of lengths promises (0.001 mm) would be 1e-9; a chain of nodes eats two digits. */
export const ROUNDING = 1e-7;

/** Radians. Axes this near to square, or to in line, are so. */
export const ANGLE_ROUNDING = 1e-9;

/** Degrees. The same of angles that are compared in degrees, with a limit that somebody typed. */
export const DEGREE_ROUNDING = 1e-9;

/** Of one division of a tape or a scale: a value that lies on a division, but for arithmetic, stays there. */
export const DIVISION_ROUNDING = 1e-6;

/** Radians (0.00006 degrees, below the accuracy of angles). A corner that turns less is straight-through: no bend, no bend plane. */
export const STRAIGHT_THROUGH = 1e-6;

/** Radians (179.9 degrees). A corner that turns more doubles back: its tangents would lie many metres off. */
export const DOUBLES_BACK = Math.PI - 0.1 * (Math.PI / 180);

/** mm. A tube's centreline passes a node when it comes this near to it. */
export const MEETING_DISTANCE = 1;

/** Radians (5 degrees). A tube in line with an end within this is butted, not coped. */
export const IN_LINE_ANGLE = (5 * Math.PI) / 180;

/** mm (100 m). Beyond this a place is a typing mistake, not a car. */
export const FARTHEST = 100_000;

/** mm. From a point to the mirror image of its pair: bodies are less unlike than that, and corners of one body stand further apart. */
export const PAIR_NEAR = 30;
