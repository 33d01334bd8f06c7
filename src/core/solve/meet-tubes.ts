/**
 * Who meets whom: of every tube laid out, what each of its ends is set to before anything is cut. That is where it stands, which way
 * it points, how it is to be fitted, and which tubes it meets. Here the primes are worked out: what a twin stands on and is cut by.
 * A tube that an edit cannot have touched meets what it met, and is handed on whole (untouched-tubes.ts).
 */
import { nearestOnPath } from '../geometry/path.ts';
import { MEETING_DISTANCE } from '../geometry/tolerance.ts';
import { mirrored, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import { fault, type Fault, type Outcome } from '../job/fault.ts';
import { MOST_AT_AN_END } from '../job/limits.ts';
import type { EndFit } from '../job/kinds/end.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import type { Foot } from '../job/kinds/foot.ts';
import { hostOf } from '../job/places.ts';
import { bareId, isPrimed, primed, type FootId, type NodeRef, type TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { endDirections } from './centreline.ts';
import { endPlane, NO_PLANE, type EndPlane } from './end-plane.ts';
import type { LaidBar, Layout } from './lay-out.ts';
import { indexNeighbours, meetingOf, type Meeting, type Neighbours } from './meetings.ts';
import type { CutPlace, LaidTube } from './pieces.ts';
import type { Frame, SolvedTube } from './types.ts';
import { untouchedTubes } from './untouched-tubes.ts';

/** What is known of an end before it is cut. */
export interface EndSetting {
  /** Null where a bar in pieces is cut. */
  readonly node: NodeRef | null;
  readonly position: Vec3;
  readonly direction: Vec3;
  readonly spec: EndFit;
  readonly plane: EndPlane;
  readonly meeting: Meeting;
}

/** Of a tube laid out: the tube of before, handed on; or what its ends A and B are set to. */
export type Met =
  | { readonly same: SolvedTube }
  | { readonly same: null; readonly settings: readonly [EndSetting, EndSetting] };

export interface Meetings {
  readonly neighbours: Neighbours;
  /** Of every tube, in the order in which they are laid out. */
  readonly met: readonly Met[];
}

/** What every tube meets; or the fault of an end that meets more tubes than one place can hold. n log n. */
export function meetTubes(job: Job, { nodes, bars, tubes }: Layout, previous: Frame | undefined): Outcome<Meetings> {
  const nodeRecords = new Map(job.nodes.map((node) => [node.id, node]));
  const untouched = previous === undefined ? [] : untouchedTubes({ bars, tubes }, job, nodeRecords, previous);
  const neighbours = indexNeighbours(
    bars.map(({ id, order, member, centreline, section }) => ({
      id,
      order,
      mirrored: member.mirror,
      path: centreline.path,
      section,
    })),
  );
  const mirroredMembers = new Set(job.members.filter((member) => member.mirror).map((member) => member.id));
  const context: EndContext = {
    nodes,
    nodeRecords,
    mirroredMembers,
    neighbours,
    bars: new Map(bars.map((bar) => [bar.id, bar])),
    feet: new Map(job.feet.map((foot) => [foot.id, foot])),
  };
  const met: Met[] = [];
  for (const [index, tube] of tubes.entries()) {
    const same = untouched[index] ?? null;
    const each: Met = same === null ? { same, settings: endSettings(tube, context) } : { same };
    const trouble = each.same === null ? crowded(tube, each.settings) : null;
    if (trouble !== null) return { ok: false, faults: [trouble] };
    met.push(each);
  }
  return { ok: true, value: { neighbours, met } };
}

interface EndContext {
  readonly nodes: ReadonlyMap<NodeRef, Vec3>;
  readonly nodeRecords: ReadonlyMap<string, FrameNode>;
  readonly mirroredMembers: ReadonlySet<string>;
  readonly neighbours: Neighbours;
  readonly bars: ReadonlyMap<TubeRef, LaidBar>;
  readonly feet: ReadonlyMap<FootId, Foot>;
}

/** The setting of end A and of end B: node, direction, fit, and which tubes it meets; a twin's are the mirror images of its member's. */
function endSettings(
  tube: LaidTube,
  { nodes, nodeRecords, mirroredMembers, neighbours, bars, feet }: EndContext,
): readonly [EndSetting, EndSetting] {
  const twin = isPrimed(tube.bar.id);
  /** A tube as the twin sees it: the other of a mirrored pair, or the one that spans the car. */
  const seen = (reference: TubeRef, flip: boolean) =>
    flip && mirroredMembers.has(bareId(reference)) ? primed(reference) : reference;
  /** The tube that the node stands on, if any. The image of a place on a tube of one side only stands on nothing. */
  const hostOfNode = (node: NodeRef): TubeRef | null => {
    const { at } = nodeRecords.get(bareId(node))!;
    const named = hostOf(at);
    if (named === null) return null;
    const host = seen(named, isPrimed(node));
    if (!isPrimed(node) || host !== named) return host;
    const place = at.kind === 'on' ? subtract(nodes.get(node)!, mirrored(at.offset)) : nodes.get(node)!;
    return nearestOnPath(neighbours.byId.get(host)!.path, place).distance <= MEETING_DISTANCE ? host : null;
  };
  const directions = endDirections(tube.centreline.corners);
  const setting = (which: 0 | 1): EndSetting => {
    const cut = tube.cutAt[which];
    if (cut !== null) return cutSetting(cut, which, neighbours);
    const named = tube.member.path.at(which === 0 ? 0 : -1)!;
    const node = twin ? primed(named) : named;
    const spec: EndFit = tube.member.ends[which];
    const position = nodes.get(node)!;
    const direction = directions[which];
    const mate = spec.fit === 'mitre' ? (bars.get(seen(spec.with, twin)) ?? null) : null;
    const { outerDiameter } = tube.section;
    const plane = endPlane(spec, { position, direction, outerDiameter, twin, feet, mate });
    const mitred = plane.fit === 'mitre' ? { cutters: [], butted: [neighbours.byId.get(mate!.id)!] } : null;
    const against = spec.fit === 'cope' ? spec.against.map((reference) => seen(reference, twin)) : [];
    return {
      node,
      position,
      direction,
      spec,
      plane,
      meeting:
        mitred ??
        meetingOf({ position, direction, order: tube.order }, spec.fit, against, hostOfNode(node), neighbours),
    };
  };
  return [setting(0), setting(1)];
}

/** An end of a piece, where the bar is cut: coped to what cuts it, whatever else is near. */
function cutSetting({ by, place }: CutPlace, which: 0 | 1, neighbours: Neighbours): EndSetting {
  return {
    node: null,
    position: place.point,
    direction: scale(place.tangent, which === 0 ? 1 : -1),
    spec: { fit: 'cope', against: [by], allowance: 0 },
    plane: NO_PLANE,
    meeting: { cutters: [neighbours.byId.get(by)!], butted: [] },
  };
}

/** The fault of an end that meets more tubes than one place can hold, every one of them a cut of its own; null where there is none. */
function crowded({ order }: LaidTube, settings: readonly [EndSetting, EndSetting]): Fault | null {
  for (const [which, { meeting }] of settings.entries()) {
    const count = meeting.cutters.length + meeting.butted.length;
    if (count <= MOST_AT_AN_END) continue;
    return fault(
      `members[${order}].ends[${which}]`,
      `meets ${count} tubes that are built before it; more than ${MOST_AT_AN_END} cannot be fitted at one place`,
    );
  }
  return null;
}
