/**
 * What each end of a tube is set to before it is cut: where it stands, which way it points, how it is to be fitted, and
 * which tubes it meets. Here the primes are worked out: what a twin stands on and is cut by.
 */
import { nearestOnPath } from '../geometry/path.ts';
import { MEETING_DISTANCE } from '../geometry/tolerance.ts';
import { dot, mirrored, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import { bareId, isPrimed, primed, type NodeRef, type TubeRef } from '../job/reference.ts';
import type { EndFit } from '../job/kinds/end.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import { endDirections, type EndSetting, type SquareSense } from './ends.ts';
import type { LaidTube } from './lay-out.ts';
import { meetingOf, type RunTubes } from './meetings.ts';

export interface EndContext {
  readonly nodes: ReadonlyMap<NodeRef, Vec3>;
  readonly nodeRecords: ReadonlyMap<string, FrameNode>;
  readonly mirroredMembers: ReadonlySet<string>;
  readonly runTubes: RunTubes;
}

/** The setting of end A and of end B: node, direction, fit, and which tubes it meets; a twin's are the mirror images of its member's. */
export function endSettings(
  tube: LaidTube,
  { nodes, nodeRecords, mirroredMembers, runTubes }: EndContext,
): readonly [EndSetting, EndSetting] {
  const twin = isPrimed(tube.id);
  /** A tube as the twin sees it: the other of a mirrored pair, or the one that spans the car. */
  const seen = (reference: TubeRef, flip: boolean) =>
    flip && mirroredMembers.has(bareId(reference)) ? primed(reference) : reference;
  /** The tube that the node stands on, if any. The image of a place on a tube of one side only stands on nothing. */
  const hostOf = (node: NodeRef): TubeRef | null => {
    const { at } = nodeRecords.get(bareId(node))!;
    if (at.kind !== 'on') return null;
    const host = seen(at.member, isPrimed(node));
    if (!isPrimed(node) || host !== at.member) return host;
    const place = subtract(nodes.get(node)!, mirrored(at.offset));
    return nearestOnPath(runTubes.byId.get(host)!.path, place).distance <= MEETING_DISTANCE ? host : null;
  };
  const directions = endDirections(tube.centreline.corners);
  const setting = (which: 0 | 1): EndSetting => {
    const named = tube.member.path.at(which === 0 ? 0 : -1)!;
    const node = twin ? primed(named) : named;
    const spec: EndFit = tube.member.ends[which];
    const position = nodes.get(node)!;
    const direction = directions[which];
    const against = spec.fit === 'cope' ? spec.against.map((reference) => seen(reference, twin)) : [];
    return {
      node,
      position,
      direction,
      spec,
      plateNormal: spec.fit === 'plate' ? (twin ? mirrored(spec.normal) : spec.normal) : null,
      meeting: meetingOf({ position, direction, order: tube.order }, spec.fit, against, hostOf(node), runTubes),
    };
  };
  return [setting(0), setting(1)];
}

/**
 * A square cut has two acute sides, and the run tube's direction of travel picks one. For a twin the choice is the mirror image
 * of its member's, also against a run tube that spans the car and so travels the other way on the twin's side.
 */
export function squareSense(twin: boolean): SquareSense {
  return (runTube, tangent, position) => {
    if (!twin || runTube.mirrored) return tangent;
    const members = mirrored(nearestOnPath(runTube.path, mirrored(position), true).tangent);
    return scale(tangent, dot(members, tangent) < 0 ? -1 : 1);
  };
}
