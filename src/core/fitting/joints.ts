/**
 * The joints of a cage that are welded under its roof: where an end is coped on a tube, or two ends meet. Ends at one place are one joint.
 * Car axes, mm.
 *
 * The top of a joint is the highest place of the round sections of its tubes there: of a tube whose axis is at height z, with radius r and
 * unit tangent t, z + r sqrt(1 - tz^2). Under the roof is a joint whose top lies at most UNDER_ROOF under the top of the cage, which is
 * the highest of its tubes' tops at their ends and tangents; lower ones have the car's inside over them, and are not asked about.
 */
import { placeAt } from '../geometry/path.ts';
import { MEETING_DISTANCE } from '../geometry/tolerance.ts';
import { distance, type Vec3 } from '../geometry/vector.ts';
import type { NodeRef, TubeRef } from '../job/reference.ts';
import type { Frame, SolvedTube, TubeEnd } from '../solve/types.ts';

export interface Joint {
  /** Null where a bar in pieces is cut. */
  readonly node: NodeRef | null;
  /** Whose end it is, the one built first; and which. */
  readonly tube: TubeRef;
  readonly end: 'A' | 'B';
  /** What that end is coped to, or meets: bars. */
  readonly to: readonly TubeRef[];
  readonly at: Vec3;
  /** Heights: the greatest of its tubes' tops, and of the axis of the tube that reaches it. */
  readonly top: number;
  readonly axis: number;
}

/** mm. Lower than this under the top of the cage no joint counts as one under the roof: a roof falls less from hoop to windscreen. */
export const UNDER_ROOF = 300;

/** In build order. */
export function jointsUnderRoof(frame: Pick<Frame, 'tubes' | 'bars'>): readonly Joint[] {
  const lowest = Math.max(...frame.tubes.map(topOf)) - UNDER_ROOF;
  const joints: Joint[] = [];
  for (const tube of frame.tubes) {
    for (const which of [0, 1] as const) {
      const joint = jointAt(tube, which, frame.bars);
      if (joint === null || joint.top < lowest) continue;
      const known = joints.findIndex(({ at }) => distance(at, joint.at) <= MEETING_DISTANCE);
      if (known === -1) joints.push(joint);
      else if (joints[known]!.top < joint.top) {
        joints[known] = { ...joints[known]!, top: joint.top, axis: joint.axis };
      }
    }
  }
  return joints;
}

/** Null where the end is welded to no tube. */
function jointAt(tube: SolvedTube, which: 0 | 1, bars: Frame['bars']): Joint | null {
  const end = tube.ends[which];
  const cuts = end.cuts.filter(({ reaches }) => reaches);
  const to = [...new Set([...cuts.map(({ against }) => against), ...end.butted])];
  if (to.length === 0) return null;
  const radius = tube.section.outerDiameter / 2;
  let [top, axis] = [end.position[2] + rise(radius, end.direction), end.position[2]];
  for (const { against, landing, landingAt } of cuts) {
    const run = bars.get(against)!;
    const height = landing[2] + rise(run.section.outerDiameter / 2, placeAt(run.path, landingAt).tangent);
    if (height > top) [top, axis] = [height, landing[2]];
  }
  return { node: end.node, tube: tube.id, end: which === 0 ? 'A' : 'B', to, at: end.position, top, axis };
}

/** From a tube's axis up to the top of its round section, whose axis runs along the unit vector. */
const rise = (radius: number, [, , z]: TubeEnd['direction']): number => radius * Math.sqrt(Math.max(0, 1 - z * z));

/** The height of the tube's highest place, but for what a bend bulges between its tangents. */
const topOf = ({ path, section }: SolvedTube): number =>
  Math.max(
    ...path.pieces.flatMap(({ from, to, startTangent, endTangent }) => [
      from[2] + rise(section.outerDiameter / 2, startTangent),
      to[2] + rise(section.outerDiameter / 2, endTangent),
    ]),
  );
