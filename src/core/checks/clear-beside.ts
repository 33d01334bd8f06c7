/**
 * What shows, without going through it, that the wall on a tube's straight is clear of a run tube: first the pieces of the run tube that
 * it comes near at all, then each line beside each of these.
 *
 * A line's distance from a straight axis has no greatest value, so from where it leaves, or up to where it is cut off on the way in, it is clear.
 * From a ring it has one only where its angle t with the nearest tangent is so small that tan^2 t <= R / r - 1, with R the ring's radius
 * and r the place's distance from the ring's own axis (docs/maths/cope.md).
 */
import type { AlongMet, CylinderMet } from '../geometry/leave-cylinder.ts';
import type { TorusMet } from '../geometry/leave-torus.ts';
import { laidOut, type MetSleeve, type Sleeve } from '../geometry/met-sleeve.ts';
import { ANGLE_ROUNDING, ROUNDING } from '../geometry/tolerance.ts';
import type { Cut, TubeEnd } from '../solve/types.ts';
import { awayFrom, axisPieces, piecesNear, type AxisPiece } from './near-pieces.ts';

/** mm. A line that is trimmed may begin so deep within what it is trimmed by, by rounding: a tenth of what counts. */
const SHALLOW = 0.001;

/** A straight of a finished tube beside a run tube. */
export interface Beside {
  readonly sleeve: Sleeve;
  readonly end: TubeEnd;
  /** The one that the sleeve makes at that end; null where it does not cut there. */
  readonly cut: Cut | null;
  /** The end that a straight tube has on the other side. */
  readonly other: TubeEnd | null;
  readonly otherCut: Cut | null;
  /** From the end's node to where the straight ends, mm. */
  readonly long: number;
}

/** The pieces of the run tube that some of the wall may lie in, between the end's cut and where the straight ends. */
export function piecesBeside({ sleeve, end, other, long }: Beside): readonly AxisPiece[] {
  const radius = end.cutter.section.outerDiameter / 2;
  // The bore may be trimmed a little short of the tip.
  const before = (of: TubeEnd): number => (of.tip ?? 0) - (of.cuts.length > 0 ? radius : 0);
  const to = other === null ? long : long - before(other);
  const stretch = { origin: end.position, direction: end.direction, from: before(end), to };
  return piecesNear(axisPieces(sleeve.path), stretch, radius + sleeve.radius);
}

/**
 * Whether these pieces, all that come near, are straights that the ends are coped to: convex each, so that a line lies within one in one
 * stretch, which is within the joint's reach and so the one that its end is trimmed by.
 */
export function areLandedOn({ end, cut, other, otherCut, long }: Beside, near: readonly AxisPiece[]): boolean {
  const reachOf = (of: TubeEnd | null, by: Cut | null): number =>
    of === null || by === null ? 0 : of.cutter.sleeves[of.cuts.indexOf(by)]!.reach;
  return (
    near.every((piece) => piece.arc === null && (isLanding(piece, cut) || isLanding(piece, otherCut))) &&
    (near.length < 2 || reachOf(end, cut) + reachOf(other, otherCut) < long)
  );
}

/** Whether the place of the run tube's axis that is nearest the node lies on this straight, which the branch is not along. */
const isLanding = (piece: AxisPiece, cut: Cut | null): boolean =>
  cut !== null && cut.includedAngle > ANGLE_ROUNDING && awayFrom(piece, cut.landing) <= ROUNDING;

/** Whether the line of this cosine and sine of phi is surely clear of the run tube from `start` to `stop`, mm along it. */
export function isLineClear(met: MetSleeve, c: number, n: number, start: number, stop: number): boolean {
  for (const piece of met.pieces) {
    const laid = laidOut(piece, met);
    const isClear =
      laid.kind === 'torus' ? isClearOfRing(laid, c, n, start, stop) : isClearOfStraight(laid, c, n, start, stop);
    if (!isClear) return false;
  }
  return true;
}

function isClearOfStraight(met: CylinderMet | AlongMet, c: number, n: number, start: number, stop: number): boolean {
  if (met.kind === 'along') return false;
  const { cosine, sine } = met;
  const along = met.startAlong + c * met.cosAlong + n * met.sinAlong;
  const [low, high] = [(met.low - along) / cosine, (met.high - along) / cosine];
  const from = cosine === 0 ? start : Math.max(start, Math.min(low, high));
  const to = cosine === 0 ? stop : Math.min(stop, Math.max(low, high));
  if (from >= to) return true;
  const aside = met.startAside + c * met.cosAside + n * met.sinAside;
  const ahead = met.startAhead + c * met.cosAhead + n * met.sinAhead;
  const [first, last] = [ahead + from * sine, ahead + to * sine];
  const beside = aside * aside - (met.radius - SHALLOW) ** 2;
  return beside >= 0 || (first >= 0 && first * first + beside >= 0) || (last <= 0 && last * last + beside >= 0);
}

function isClearOfRing(met: TorusMet, c: number, n: number, start: number, stop: number): boolean {
  const { ring, direction, start: origin, cos, sin, cosEnd, sinEnd } = met;
  const [ux, uy] = direction;
  const x = origin[0] + c * cos[0] + n * sin[0];
  const y = origin[1] + c * cos[1] + n * sin[1];
  const z = origin[2] + c * cos[2] + n * sin[2];
  // Between the planes that the bend begins and ends at, each linear along the line.
  const [first, last] = [y + ROUNDING, x * sinEnd - y * cosEnd + ROUNDING];
  const endRate = ux * sinEnd - uy * cosEnd;
  if ((uy === 0 && first < 0) || (endRate === 0 && last < 0)) return true;
  let [from, to] = [start, stop];
  if (uy > 0) from = Math.max(from, -first / uy);
  else if (uy < 0) to = Math.min(to, -first / uy);
  if (endRate > 0) from = Math.max(from, -last / endRate);
  else if (endRate < 0) to = Math.min(to, -last / endRate);
  if (from >= to) return true;

  // With t the angle to the nearest tangent, r cos t is the same all along the line. Where r is more than `turns` none is greatest.
  const moment = x * uy - y * ux;
  const turns = Math.cbrt(ring * moment * moment);
  const flat = ux * ux + uy * uy;
  const about = turns * turns * flat - moment * moment;
  if (flat === 0 || about < 0) return leadsAway(met, x, y, z, from, to);
  const foot = -(x * ux + y * uy) / flat;
  const half = Math.sqrt(about) / flat;
  if (foot + half <= from || foot - half >= to) return leadsAway(met, x, y, z, from, to);
  return (
    ring - turns >= met.radius - SHALLOW &&
    leadsAway(met, x, y, z, from, Math.min(to, foot - half)) &&
    leadsAway(met, x, y, z, Math.max(from, foot + half), to)
  );
}

/**
 * Whether the line from x, y, z (at s = 0) is outside the ring and leads away from it at one of these two s, going in from there to the
 * other; or there is nothing between them.
 */
function leadsAway({ ring, radius, direction }: TorusMet, x: number, y: number, z: number, from: number, to: number) {
  if (from >= to) return true;
  const [ux, uy, uz] = direction;
  const least = (radius - SHALLOW) * (radius - SHALLOW);
  for (let sense = 1, s = from; sense >= -1; sense -= 2, s = to) {
    const px = x + s * ux;
    const py = y + s * uy;
    const pz = z + s * uz;
    const r = Math.sqrt(px * px + py * py);
    const along = px * ux + py * uy;
    const isOutside = (r - ring) * (r - ring) + pz * pz >= least;
    if (isOutside && sense * (along + pz * uz - (ring * along) / r) >= 0) return true;
  }
  return false;
}
