/**
 * Where on a tube there is room to drill a hole or to put a gauge: the middle of the longest straight that is clear of bends, joints, gussets and the tube's
 * own cut ends, by its diameter at the least. Whether a hole is wanted, and where, no rule of ours says.
 *
 * A joint takes of a straight run tube, along its axis from where the two axes come nearest, what the edge of the cut covers. On the branch's line phi that
 * is ra cos(phi) / sin a + root / tan a, with ra the branch's radius, a the angle between the axes and root = sqrt(rb^2 - (ra sin(phi) + e)^2) of the
 * run's radius and the offset of the axes. Greatest on the acute side, at no more than ra / sin a + rb / tan a. Least opposite: where the axes meet it falls with
 * |cos(phi)| and so is -ra / sin a + rb / tan a; where they do not, it is no less than -ra / sin a, which is taken.
 */
import { isRole } from '../job/role.ts';
import { nearestOnPath, type LinePiece } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { dot } from '../geometry/vector.ts';
import { inCar } from '../gusset/corner.ts';
import { freeEdge } from '../gusset/flat.ts';
import { gussetsOf, isMade } from '../gusset/gussets.ts';
import { landedOn } from '../solve/bar-tubes.ts';
import type { Cut, Frame, SolvedTube, TubeEnd } from '../solve/types.ts';

export interface HolePlace {
  /** mm along the centreline from end A's node. */
  readonly at: number;
  /** mm along the tube from its finished tip A, what was left long there off. */
  readonly fromTipA: number;
  /** The same from its finished tip B. */
  readonly fromTipB: number;
  /** Which straight it lies on: 0 before bend 1, 1 after it ... */
  readonly straight: number;
  /** mm that are clear either way of it, as far as the tube's own diameter from whatever is there. */
  readonly clear: number;
}

/** mm along the centreline from end A's node, from and to. */
type Stretch = readonly [from: number, to: number];

/** Sines smaller than this are taken as this: axes that run along each other meet nowhere that a length could say. */
const LEAST_SINE = 1e-3;

/** Hoops, rear stays and front legs, by their role. */
export const asksForPlace = ({ member }: SolvedTube): boolean => ASKED.some((role) => isRole(member, role));

const ASKED = ['main-hoop', 'front-hoop', 'side-hoop', 'rear-stay', 'front-leg'];

/** Null where no straight of the tube is clear by that much. */
export function holePlace(frame: Frame, tube: SolvedTube): HolePlace | null {
  const off = tube.section.outerDiameter;
  const taken = takenOf(frame, tube);
  let best: { readonly at: number; readonly half: number; readonly straight: number } | null = null;
  let bends = 0;
  for (const piece of tube.path.pieces) {
    if (piece.kind === 'arc') {
      bends += 1;
      continue;
    }
    for (const [from, to] of clearOf(piece, taken)) {
      const half = (to - from) / 2 - off;
      if (half > 0 && (best === null || half > best.half)) best = { at: (from + to) / 2, half, straight: bends };
    }
  }
  if (best === null) return null;
  const [a, b] = tube.ends;
  return {
    at: best.at,
    fromTipA: best.at - (a.tip ?? 0),
    fromTipB: tube.path.length - best.at - (b.tip ?? 0),
    straight: best.straight,
    clear: best.half,
  };
}

/** What is left of a straight piece between what is taken. */
function clearOf({ at, length }: LinePiece, taken: readonly Stretch[]): readonly Stretch[] {
  const found: Stretch[] = [];
  let from = at;
  for (const [begins, ends] of taken.toSorted((one, other) => one[0] - other[0])) {
    if (ends <= from) continue;
    if (begins >= at + length) break;
    if (begins > from) found.push([from, begins]);
    from = Math.max(from, ends);
  }
  if (from < at + length) found.push([from, at + length]);
  return found;
}

function takenOf(frame: Frame, tube: SolvedTube): readonly Stretch[] {
  const { length } = tube.path;
  const [a, b] = tube.ends;
  return [
    [-Infinity, a.throat ?? 0],
    [length - (b.throat ?? 0), Infinity],
    ...frame.tubes.flatMap((branch) => branch.ends.flatMap((end) => jointsOn(frame, tube, branch, end))),
    ...gussetsOn(frame, tube),
  ];
}

/** What the end takes of the tube by its cuts on it. */
const jointsOn = (frame: Frame, tube: SolvedTube, branch: SolvedTube, end: TubeEnd): readonly Stretch[] =>
  end.cuts.flatMap((cut) =>
    cut.reaches && landedOn(frame.byId, cut) === tube ? [takenBy(cut, end, branch, tube)] : [],
  );

function takenBy(cut: Cut, end: TubeEnd, branch: SolvedTube, tube: SolvedTube): Stretch {
  const at = cut.landingAt - (tube.piece?.from ?? 0);
  const sine = Math.max(Math.sin(cut.includedAngle), LEAST_SINE);
  const half = branch.section.outerDiameter / 2 / sine;
  const lean = (tube.section.outerDiameter / 2) * (Math.cos(cut.includedAngle) / sine);
  const blunt = Math.abs(cut.axisOffset) > ROUNDING ? half : half - lean;
  const { tangent } = nearestOnPath(tube.path, cut.landing, true);
  return dot(end.direction, tangent) >= 0 ? [at - blunt, at + half + lean] : [at - half - lean, at + blunt];
}

/** From the corner that a gusset stands in to the end of its leg. */
const gussetsOn = (frame: Frame, tube: SolvedTube): readonly Stretch[] =>
  gussetsOf(frame).flatMap(({ gusset, ways, made }) => {
    if (!isMade(made)) return [];
    const { corner, sheet } = made;
    const at = sheet.shape.kind === 'flat' ? sheet.shape.face.corner : sheet.shape.fold.midway;
    const edge = freeEdge(at, corner.angle, gusset);
    return ways.flatMap(({ bar }, i) => {
      if (bar.id !== tube.bar) return [];
      const along = [corner.place, inCar(corner, edge[i as 0 | 1], 0)]
        .map((place) => nearestOnPath(tube.path, place).at)
        .toSorted((one, other) => one - other);
      return [[along[0]!, along[1]!] as const];
    });
  });
