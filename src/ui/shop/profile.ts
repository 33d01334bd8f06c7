/**
 * A tube's end unrolled flat: trim s (mm along the tube from its node) against the way round the outer surface
 * (phi x OD / 2, mm). The reference, phi = 0, stands in the middle and the sheet runs from -180 to 180 degrees, so both
 * edges are the same line of the tube: the seam. The bore's curve is drawn on the same angles as the outer one.
 *
 * A generator line that reaches no cutter has no trim (NaN): the curve is broken there, never bridged.
 */
import type { RimPlace } from '../../core/geometry/rim-search.ts';
import type { TubeEnd } from '../../core/solve/types.ts';

/** A place on the flat sheet: mm round from the reference, mm along from the node. */
export interface FlatPoint {
  readonly round: number;
  readonly along: number;
}

export interface ProfileDrawing {
  /** Outer surface: unbroken stretches, left to right. */
  readonly outer: readonly (readonly FlatPoint[])[];
  readonly inner: readonly (readonly FlatPoint[])[];
  /** Half the sheet's width: half the outer circumference, mm. */
  readonly halfWidth: number;
  /** Least and greatest trim of either curve, mm along from the node; both 0 where nothing is reached. */
  readonly lowest: number;
  readonly highest: number;
  /** Deepest and longest points of the outer curve; null where nothing is reached. */
  readonly throat: FlatPoint | null;
  readonly tip: FlatPoint | null;
}

/** The end's two curves on the flat sheet, in mm. */
export function profileDrawing(end: TubeEnd, outerDiameter: number): ProfileDrawing {
  const perDegree = (Math.PI * outerDiameter) / 360;
  const flat = ({ phi, s }: RimPlace): FlatPoint => ({ round: (phi * outerDiameter) / 2, along: s });
  const throat = end.high && flat(end.high);
  const tips = end.lows.map(flat);
  const extremes = throat === null ? tips : [...tips, throat];
  const outer = stretches(end.outer, perDegree).map((stretch) => withPoints(stretch, extremes, perDegree));
  const inner = stretches(end.inner, perDegree);
  const heights = [...outer, ...inner].flat().map((point) => point.along);
  return {
    outer,
    inner,
    halfWidth: 180 * perDegree,
    lowest: heights.length === 0 ? 0 : Math.min(...heights),
    highest: heights.length === 0 ? 0 : Math.max(...heights),
    throat,
    tip: tips[0] ?? null,
  };
}

/** From -180 to 180 degrees, both ends of the seam included, split wherever a line has no trim. */
function stretches(trims: Float64Array, perDegree: number): FlatPoint[][] {
  const all: FlatPoint[][] = [];
  let open: FlatPoint[] = [];
  for (let degree = -180; degree <= 180; degree += 1) {
    const along = trims[(degree + 360) % 360] ?? Number.NaN;
    if (Number.isNaN(along)) {
      if (open.length > 0) all.push(open);
      open = [];
    } else {
      open.push({ round: degree * perDegree, along });
    }
  }
  if (open.length > 0) all.push(open);
  return all;
}

/** The stretch with those of the points in it that lie on it, or less than a degree beyond its ends: there it may end in its tip. */
function withPoints(
  stretch: readonly FlatPoint[],
  points: readonly FlatPoint[],
  perDegree: number,
): readonly FlatPoint[] {
  const [first, last] = [stretch[0]!.round, stretch.at(-1)!.round];
  const near = points.filter(({ round }) => round > first - perDegree && round < last + perDegree);
  return [...stretch, ...near].toSorted((a, b) => a.round - b.round);
}
