/**
 * The least and the most that a job may hold. No shop meets these limits: they keep out typing errors and files
 * that were never a frame, and with them every number that arithmetic could lose (a square that vanishes, a division by
 * nothing). What is refused by them is in docs/file-formats.md.
 */
import type { Degrees } from '../geometry/angle.ts';

/** mm. Of whatever is nothing unless it has a size: diameters, walls, radii, sticks, sides of a box. A sheet of foil has more. */
export const LEAST_SIZE = 0.01;

/** mm. Across a tube. A template for a wider one would fill a floor. */
export const GREATEST_TUBE = 1000;

/** Of an angle that is bent, or that a die can bend. No machine is read finer. */
export const LEAST_ANGLE: Degrees = 0.01;

/** Of a bend as it was pulled or came out. */
export const GREATEST_ANGLE: Degrees = 200;

/** Of what a level, a wheel or a scale can be read to. */
export const LEAST_STEP: Degrees = 0.001;
export const GREATEST_STEP: Degrees = 45;

/** Of a place between two nodes, as a share of the way, either side. */
export const GREATEST_FRACTION = 1000;

/** Of the number that a bend goes by. */
export const MOST_BENDS = 100_000;

/** Of the number that a tube goes by. */
export const GREATEST_NUMBER = 100_000;

/** kg. Of a car, as a rule book weighs it. */
export const HEAVIEST = 100_000;

/** Characters of an id. */
export const LONGEST_ID = 200;

/** Characters of a name as it is typed, shown and written; see shown.ts for a longer one in a file. */
export const LONGEST_NAME = 200;

/**
 * Every envelope is measured against every tube, every tube is swept past all that stands round its bender, every pull is
 * held against every other, every tube that an end meets is a cut of it: a job has a handful, and a file with many more
 * would only hold the page up. Fifty tubes at one place are more than there is room to weld.
 */
export const MOST_BOXES = 100;
export const MOST_PULLS = 1000;
export const MOST_AT_AN_END = 50;

/** Notchers, and hole saws: of a shop as of a job, which takes them over whole. */
export const MOST_TOOLS = 100;

/** Findings that are marked as seen. */
export const MOST_SEEN = 10_000;

/** mm. Of a place that was measured: a deviation of more is no measure. */
export const GREATEST_ACCURACY = 100;

/** Certificates of material, and photos of the work: each is printed. */
export const MOST_CERTIFICATES = 500;
export const MOST_PHOTOS = 200;

/** Scans of one car, and the pairs of places by which one of them is laid: each is drawn whole. */
export const MOST_SCANS = 10;
export const MOST_PAIRS = 200;

/** Holes in a foot. */
export const MOST_HOLES = 50;

/** Measurements of a survey: ten of each of a hundred points and more. */
export const MOST_MEASUREMENTS = 2000;

/** Gussets: ten at every node of a cage. */
export const MOST_GUSSETS = 500;

/** Tubes that a bar in pieces is cut by: no bar of a car has a dozen. */
export const MOST_CUTTERS = 20;

/** Sticks of one sort, and what one of them costs, in whatever money the shop reckons in; sorts of sticks, and of spares. */
export const MOST_STICKS = 10_000;
export const GREATEST_COST = 1_000_000;
export const MOST_STICK_SORTS = 200;

/** Spares of a job, all records together: a plan of so many parts ends while one waits for it. */
export const MOST_SPARES = 20_000;

/** Sticks that were sawn for a job: each is shown. Parts of one of them. */
export const MOST_SAWN = 1000;
export const MOST_ON_A_STICK = 1000;

/** Sticks of plans that are being sawn. */
export const MOST_BEGUN = 2000;

/** Of a quote: minutes of one thing, hours that a line took, percent on top; characters of what money is called; what is charged beside, and what is noted of lines. */
export const GREATEST_MINUTES = 10_000;
export const GREATEST_HOURS = 10_000;
export const GREATEST_SHARE = 1000;
export const LONGEST_CURRENCY = 12;
export const MOST_EXTRAS = 50;
export const MOST_TOOK = 300;

/** Rule sheets of one job, articles of one of them, roles that an article names, sizes that it allows; characters of its words. */
export const MOST_SHEETS = 30;
export const MOST_ARTICLES = 300;
export const MOST_ROLES = 40;
export const MOST_SIZES = 20;
export const LONGEST_TEXT = 2000;

/** mm of trim over a measured point: a headliner, a door card, a carpet. */
export const MOST_TRIM = 100;

/** A job kept by a name within itself, and characters of one: a cage of 200 tubes has a million. */
export const MOST_VARIANTS = 12;
export const LONGEST_VARIANT = 5_000_000;
