/**
 * The outside of a coped tube, taken as a filled solid: a bar round the centreline from tip to tip, less what its ends are cut away
 * by (rim.ts). Frame of an end: u into the tube, phi = 0 at the end's reference, right-hand about u.
 */
import { toDegrees, type Radians } from '../geometry/angle.ts';
import { linePiece, type Path, type Piece } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { addScaled, cross, dot, type Vec3 } from '../geometry/vector.ts';
import { remembered } from '../remembered.ts';
import type { SolvedTube, TubeEnd } from '../solve/types.ts';
import type { Chain } from './chain.ts';
import type { Hollow } from './hollows.ts';
import { isBeyond, rimOf, trimAt, type Rim } from './rim.ts';

/** A tube as seen from outside. */
export interface Outside {
  readonly radius: number;
  /** The centreline from tip to tip; `at` counts from end A's node, below 0 where the tip reaches past it. */
  readonly pieces: readonly Piece[];
  /** Node to node. */
  readonly length: number;
  readonly ends: readonly [OutsideEnd, OutsideEnd];
}

/** One end of it. */
export interface OutsideEnd {
  readonly end: TubeEnd;
  readonly radius: number;
  readonly origin: Vec3;
  /** u, phi = 0 and phi = a quarter turn. */
  readonly axes: readonly [Vec3, Vec3, Vec3];
  /** Least and greatest trim on the wall, mm from the node along u; 0 where no line is reached. */
  readonly tip: number;
  readonly throat: number;
  /** How long the straight is that the end stands on, from the node: beyond, the wall is whole. */
  readonly room: number;
  /** Its edge and what made it, worked out when a search asks for them: kept here, since a search asks some thousand times. */
  readonly edge: { rim: Rim | null; chain: Chain | null; hollows: readonly Hollow[] | null };
}

/** The tube's outside; worked out once a tube. */
export const outsideOf = remembered((tube: SolvedTube): Outside => {
  const radius = tube.section.outerDiameter / 2;
  const ends = [endOf(tube, 0, radius), endOf(tube, 1, radius)] as const;
  return { radius, pieces: tipToTip(tube.path, ends[0].tip, ends[1].tip), length: tube.path.length, ends };
});

function endOf(tube: SolvedTube, which: 0 | 1, radius: number): OutsideEnd {
  const end = tube.ends[which];
  const room = tube.bends.length === 0 ? Infinity : Math.max(0, tube.straights.at(which === 0 ? 0 : -1)!);
  return {
    end,
    radius,
    origin: end.position,
    axes: [end.direction, end.reference, cross(end.direction, end.reference)],
    tip: Math.min(end.tip ?? 0, room),
    throat: Math.min(end.throat ?? 0, room),
    room,
    edge: { rim: null, chain: null, hollows: null },
  };
}

/** The pieces with their outer ends moved to the tips. A tube that is cut away from end to end keeps its whole centreline. */
function tipToTip({ pieces, length }: Path, tipA: number, tipB: number): readonly Piece[] {
  const moved = [...pieces];
  const first = pieces[0]!;
  const last = pieces[pieces.length - 1]!;
  const only = pieces.length === 1;
  if (only && first.kind === 'line' && first.length - tipA - tipB <= ROUNDING) return pieces;
  const start = addScaled(first.from, first.startTangent, tipA);
  const stop = addScaled(last.to, last.endTangent, -tipB);
  if (only && first.kind === 'line') return [linePiece(start, stop, tipA)];
  if (last.kind === 'line' && last.length - tipB > ROUNDING)
    moved[moved.length - 1] = linePiece(last.from, stop, last.at);
  else if (tipB < 0) moved.push(linePiece(last.to, stop, length));
  if (first.kind === 'line' && first.length - tipA > ROUNDING) moved[0] = linePiece(start, first.to, tipA);
  else if (tipA < 0) moved.unshift(linePiece(start, first.from, tipA));
  return moved;
}

/** Whether two tubes have the same outside and are cut by the same: what was measured of one holds for the other. */
export const sameOutside = (a: SolvedTube, b: SolvedTube): boolean =>
  a === b ||
  (a.path === b.path &&
    a.section === b.section &&
    a.ends.every(({ outer, cuts, butted }, i) => {
      const other = b.ends[i]!;
      return outer === other.outer && cuts === other.cuts && butted === other.butted;
    }));

/** mm along a line from where the rim is: as near as this the wall stands. */
const AT_RIM = 1e-6;

/** Whether the wall stands at the developed length `at`, in the direction `towards` (of any length) square to the tube there. */
export function wallStands(tube: Pick<Outside, 'ends' | 'length'>, at: number, towards: Vec3): boolean {
  return standsAt(tube.ends[0], at, towards) && standsAt(tube.ends[1], tube.length - at, towards);
}

function standsAt(end: OutsideEnd, s: number, towards: Vec3): boolean {
  if (s >= end.throat || s >= end.room) return true;
  return s >= trimAt(rimOf(end), degreesTowards(end, towards)) - AT_RIM;
}

/** Whether no wall is left within half a length of the developed length `at` and half an angle of the direction `towards`. */
export function wallIsGone(
  tube: Pick<Outside, 'ends' | 'length'>,
  at: number,
  towards: Vec3,
  half: number,
  angle: Radians,
): boolean {
  return (
    goneAt(tube.ends[0], at + half, towards, angle) || goneAt(tube.ends[1], tube.length - at + half, towards, angle)
  );
}

function goneAt(end: OutsideEnd, s: number, towards: Vec3, angle: Radians): boolean {
  if (s >= end.throat || s >= end.room) return false;
  return isBeyond(rimOf(end), s, degreesTowards(end, towards), toDegrees(angle));
}

const degreesTowards = ({ axes: [, c, s] }: OutsideEnd, towards: Vec3): number => {
  const phi = toDegrees(Math.atan2(dot(towards, s), dot(towards, c)));
  return phi < 0 ? phi + 360 : phi;
};
