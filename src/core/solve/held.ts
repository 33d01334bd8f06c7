/**
 * A tube that is cut, as it was cut: its shape and its ends are worked out from what was kept of it then, and so stay what they were, number for
 * number. Only where it lies goes with the frame: where its ends and corners come nearest to the drawn ones (least squares, equal weights), or where it was
 * measured in the car.
 */
import { equal, type Vec3 } from '../geometry/vector.ts';
import { moved, movedPath, turned, type RigidMotion } from '../geometry/rigid-motion.ts';
import type { EndFit } from '../job/kinds/end.ts';
import type { Foot } from '../job/kinds/foot.ts';
import type { HeldEnd, HeldLine, HeldTube, MadeTube } from '../job/kinds/made.ts';
import type { Section } from '../job/kinds/section.ts';
import type { NodeRef } from '../job/reference.ts';
import { remembered, withLater } from '../remembered.ts';
import { endDirections, roundCorners, type Centreline } from './centreline.ts';
import { NO_PLANE } from './end-plane.ts';
import { solveEnds } from './ends.ts';
import { seated, type SeatFigure } from './seat.ts';
import type { EndSetting } from './meet-tubes.ts';
import type { TubeEnd } from './types.ts';

/** A tube that is held, and how it has moved since; null while it lies where it lay. */
export interface Held {
  readonly made: MadeTube;
  readonly motion: RigidMotion | null;
}

const lineOf = ({ corners, radii }: HeldLine): Centreline => ({
  route: corners,
  ...roundCorners(corners, (_, i) => radii[i]!),
});

const heldLine = remembered(lineOf);

/** Where it goes with the drawing; null where that has another number of bends now. */
export function heldAt(
  made: MadeTube,
  drawn: Centreline,
  seat: readonly SeatFigure[],
): { readonly centreline: Centreline; readonly held: Held } | null {
  const { corners } = made.held;
  if (corners.length !== drawn.corners.length) return null;
  const line = heldLine(made.held);
  const stays = seat.length === 0 && corners.every((corner, i) => equal(corner, drawn.corners[i]!));
  const motion = stays ? null : seated(line, drawn.corners, seat);
  return { centreline: { ...movedLine(line, motion), route: drawn.route }, held: { made, motion } };
}

const movedLine = (line: Centreline, motion: RigidMotion | null): Centreline =>
  motion === null
    ? line
    : {
        ...line,
        corners: line.corners.map((corner) => moved(motion, corner)),
        path: movedPath(line.path, motion),
        bends: line.bends.map((bend) => ({
          ...bend,
          corner: moved(motion, bend.corner),
          centre: moved(motion, bend.centre),
          normal: turned(motion, bend.normal),
        })),
      };

/** What the ends are called and asked to be now: no more than names. */
export interface AskedEnd {
  readonly node: NodeRef | null;
  readonly spec: EndFit;
  readonly foot: Foot | null;
}

/** The ends as they were cut, where the tube lies now. `section` is the tube's of that time. */
export function heldEnds(
  { made: { held }, motion }: Held,
  section: Section,
  twin: boolean,
  asked: readonly [AskedEnd, AskedEnd],
): readonly [TubeEnd, TubeEnd] {
  const line = heldLine(held);
  const directions = endDirections(line.corners);
  const setting = (which: 0 | 1): EndSetting => ({
    ...asked[which],
    spec: { ...asked[which].spec, allowance: held.ends[which].allowance },
    position: line.corners.at(which === 0 ? 0 : -1)!,
    direction: directions[which],
    plane: planeOf(held.ends[which], asked[which].foot),
    meeting: {
      cutters: held.ends[which].cutters.map(({ against, mirrored, outerDiameter, ...cutter }) => ({
        id: against,
        order: 0,
        mirrored,
        path: lineOf(cutter).path,
        section: { ...section, outerDiameter },
      })),
      butted: [],
    },
  });
  const ends = solveEnds(line, section, [setting(0), setting(1)], twin);
  return motion === null ? ends : [movedEnd(ends[0], motion), movedEnd(ends[1], motion)];
}

function planeOf({ fit, normal, rise }: HeldEnd, foot: Foot | null): EndSetting['plane'] {
  if (normal === undefined || fit === 'cope' || fit === 'square') return NO_PLANE;
  const stands = fit === 'foot' && foot !== null;
  return {
    ...NO_PLANE,
    fit: fit === 'foot' && !stands ? 'plate' : fit,
    normal,
    rise: rise ?? 0,
    foot: stands ? foot : null,
  };
}

/** The section that it was cut of. */
export const heldSection = ({ outerDiameter, wall }: HeldTube, section: Section): Section =>
  section.outerDiameter === outerDiameter && section.wall === wall ? section : { ...section, outerDiameter, wall };

/** The same end elsewhere: what is counted along the tube and round it is that of before. */
function movedEnd(end: TubeEnd, motion: RigidMotion): TubeEnd {
  const { inner: _, meanTrim: __, ...rest } = end;
  const { cutter } = end;
  const direction = (given: Vec3) => turned(motion, given);
  const position = moved(motion, end.position);
  const elsewhere = {
    ...rest,
    position,
    direction: direction(end.direction),
    reference: direction(end.reference),
    plateNormal: end.plateNormal && direction(end.plateNormal),
    cuts: end.cuts.map((cut) => ({ ...cut, landing: moved(motion, cut.landing) })),
    cutter: {
      ...cutter,
      bundle: { origin: position, direction: direction(end.direction), reference: direction(end.reference) },
      plateNormal: cutter.plateNormal && direction(cutter.plateNormal),
      sleeves: cutter.sleeves.map((sleeve) => ({ ...sleeve, path: movedPath(sleeve.path, motion) })),
    },
  };
  return withLater<typeof elsewhere, Pick<TubeEnd, 'inner' | 'meanTrim'>>({
    inner: () => end.inner,
    meanTrim: () => end.meanTrim,
  })(elsewhere);
}
