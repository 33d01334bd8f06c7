/**
 * A straight line through points by least squares, and how sure it is of one more point.
 *
 * y = intercept + slope x. Sums are taken about the means, so that readings far from zero lose no digits. The prediction
 * interval at x for one more reading has the half-width t s sqrt(1 + 1/n + (x - mean)^2 / Sxx), s^2 the residual sum of
 * squares over n - 2 and t Student's 97.5 % quantile for n - 2 (ordinary least squares, any text on regression).
 */
export interface LineFit {
  readonly count: number;
  readonly intercept: number;
  readonly slope: number;
  readonly meanX: number;
  /** Sum of squares of x about its mean; 0 when all readings were taken at one x and no slope can be known. */
  readonly spreadX: number;
  /** Standard deviation of the residuals; null for two points or fewer, which a line always meets. */
  readonly scatter: number | null;
}

/** Null if there are no points, or all have the same x. */
export function fitLine(points: readonly { readonly x: number; readonly y: number }[]): LineFit | null {
  const count = points.length;
  const mean = (of: (point: { x: number; y: number }) => number) =>
    points.reduce((sum, point) => sum + of(point), 0) / count;
  const [meanX, meanY] = [mean(({ x }) => x), mean(({ y }) => y)];
  const total = (of: (dx: number, dy: number) => number) =>
    points.reduce((sum, { x, y }) => sum + of(x - meanX, y - meanY), 0);
  const spreadX = total((dx) => dx * dx);
  if (count === 0 || spreadX === 0) return null;
  const slope = total((dx, dy) => dx * dy) / spreadX;
  const squares = total((dx, dy) => (dy - slope * dx) ** 2);
  const scatter = count > 2 ? Math.sqrt(squares / (count - 2)) : null;
  return { count, intercept: meanY - slope * meanX, slope, meanX, spreadX, scatter };
}

/** Half-width of the 95 % prediction interval at x by these readings alone; null where their scatter is not known. */
export function predictionHalfWidth(fit: LineFit, x: number): number | null {
  const { count, scatter } = fit;
  return scatter === null ? null : studentQuantile975(count - 2) * scatter * spreadAt(fit, x);
}

/** How widely one more reading at x scatters about the line, as a multiple of one reading's deviation. */
export const spreadAt = ({ count, meanX, spreadX }: LineFit, x: number): number =>
  Math.sqrt(1 + 1 / count + (x - meanX) ** 2 / spreadX);

/** How widely intercept and slope scatter, as multiples of one reading's deviation. */
export const parameterSpreads = ({ count, meanX, spreadX }: LineFit): { intercept: number; slope: number } => ({
  intercept: Math.sqrt(1 / count + meanX ** 2 / spreadX),
  slope: Math.sqrt(1 / spreadX),
});

/** A deviation of one reading that was known beforehand, as surely as from so many degrees of freedom. */
export interface KnownDeviation {
  readonly deviation: number;
  readonly freedom: number;
}

/**
 * Half-width, 95 %, of what scatters as one reading does: the deviation known beforehand and that of these residuals, pooled
 * by their degrees of freedom (the pooled variance of any text on statistics), times Student's quantile for both together.
 *
 * @param squares sum of squares of the residuals
 * @param freedom readings less what was fitted to them; 0 where they were met exactly
 */
export function pooledHalfWidth(squares: number, freedom: number, known: KnownDeviation): number {
  const together = known.freedom + freedom;
  return studentQuantile975(together) * Math.sqrt((known.freedom * known.deviation ** 2 + squares) / together);
}

/** Student's t, 97.5 %, for 1 to 30 degrees of freedom: the table printed in every text on statistics. */
const TABLE_975 = [
  12.7062, 4.3027, 3.1824, 2.7764, 2.5706, 2.4469, 2.3646, 2.306, 2.2622, 2.2281, 2.201, 2.1788, 2.1604, 2.1448, 2.1314,
  2.1199, 2.1098, 2.1009, 2.093, 2.086, 2.0796, 2.0739, 2.0687, 2.0639, 2.0595, 2.0555, 2.0518, 2.0484, 2.0452, 2.0423,
];

/** To 0.0001. Beyond the table, the normal quantile z and two terms in 1/n (Cornish-Fisher). */
export function studentQuantile975(freedom: number): number {
  const known = TABLE_975[freedom - 1];
  if (known !== undefined) return known;
  const z = 1.959964;
  return z + (z ** 3 + z) / (4 * freedom) + (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * freedom ** 2);
}
