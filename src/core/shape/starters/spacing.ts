/** How far apart joints are put on one upright, in outer diameters of the main tube, so that each can be welded all round (common practice). */

/** Above the foot: the sill bar, the diagonal, the lowest door bar. */
export const SILL = 1.2;
export const DIAGONAL = 2.1;
export const LOW = 3.65;

/** On a front upright, where no diagonal comes between: above the sill bar. */
export const PAST_SILL = 2.9;

/** From a bend to the first joint beside it; from the dash bar's to the next one down. */
export const CLEAR = 1.3;
export const PAST_DASH = 1.8;
/** Of level door bars on one another. */
export const PAST_LEVEL = 2;

/** The diagonal's top below the stay's, where both are in the bend; or clear of the bend by a little more than a diameter, where the stay is within mm. */
export const BELOW = 1.7;
export const PAST_BEND = 1.02;
export const STAY_REACH = 105;

/** On a side hoop: the diagonal's top below the stay's, above a harness bar that it cuts, and the header ahead of the rear roof bar. */
export const BELOW_STAY = 1.9;
export const OVER_HARNESS = 2;
export const ROOF = 3;

/** A pillar brace's upper end above the bend at the dash, at least; and how far from that bend either end may be, for the brace to stand clear of it. */
export const BRACE = 3;
export const FARTHEST_BRACE = 5.5;
