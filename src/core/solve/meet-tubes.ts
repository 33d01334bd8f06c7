/**
 * Who meets whom: of every tube laid out, what each of its ends is set to before anything is cut. That is where it stands, which way
 * it points, how it is to be fitted, and which tubes it meets. Here the primes are worked out: what a twin stands on and is cut by.
 * Who meets whom is decided in the frame as it is drawn; where an end stands and what cuts it there is as the tubes are built.
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
import { endDirections, type Centreline } from './centreline.ts';
import { endPlane, endThere, NO_PLANE, type EndPlane, type Mate } from './end-plane.ts';
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
  | {
      readonly same: null;
      readonly settings: readonly [EndSetting, EndSetting];
      /** Of one that stands as built: as the drawing wants it. */
      readonly asDrawn: readonly [EndSetting, EndSetting] | null;
    };

export interface Meetings {
  readonly neighbours: Neighbours;
  /** Of every tube, in the order in which they are laid out. */
  readonly met: readonly Met[];
}

/** What every tube meets; or the fault of an end that meets more tubes than one place can hold. n log n. */
export function meetTubes(job: Job, drawn: Layout, layout: Layout, previous: Frame | undefined): Outcome<Meetings> {
  const nodeRecords = new Map(job.nodes.map((node) => [node.id, node]));
  const untouched = previous === undefined ? [] : untouchedTubes(drawn, layout, job, nodeRecords, previous);
  const drawnNeighbours = neighboursIn(drawn);
  const neighbours = layout === drawn ? drawnNeighbours : neighboursIn(layout);
  const mirroredMembers = new Set(job.members.filter((member) => member.mirror).map((member) => member.id));
  const context: EndContext = {
    nodes: drawn.nodes,
    nodeRecords,
    mirroredMembers,
    drawn: drawnNeighbours,
    neighbours,
    drawnBars: new Map(drawn.bars.map((bar) => [bar.id, bar])),
    bars: new Map(layout.bars.map((bar) => [bar.id, bar])),
    feet: new Map(job.feet.map((foot) => [foot.id, foot])),
  };
  const met: Met[] = [];
  for (const [index, tube] of layout.tubes.entries()) {
    const same = untouched[index] ?? null;
    const each: Met = same === null ? { same, ...settingsOf(tube, drawn.tubes[index]!, context) } : { same };
    const trouble = each.same === null ? crowded(tube, each.settings) : null;
    if (trouble !== null) return { ok: false, faults: [trouble] };
    met.push(each);
  }
  return { ok: true, value: { neighbours, met } };
}

const neighboursIn = ({ bars }: Layout): Neighbours =>
  indexNeighbours(
    bars.map(({ id, order, member, centreline, section }) => ({
      id,
      order,
      mirrored: member.mirror,
      path: centreline.path,
      section,
    })),
  );

interface EndContext {
  /** As drawn. */
  readonly nodes: ReadonlyMap<NodeRef, Vec3>;
  readonly drawn: Neighbours;
  readonly drawnBars: ReadonlyMap<TubeRef, LaidBar>;
  readonly nodeRecords: ReadonlyMap<string, FrameNode>;
  readonly mirroredMembers: ReadonlySet<string>;
  readonly neighbours: Neighbours;
  readonly bars: ReadonlyMap<TubeRef, LaidBar>;
  readonly feet: ReadonlyMap<FootId, Foot>;
}

/** Of the tube as it stands, and as it is wanted where that is another. `drawn` is the same tube in the frame as drawn. */
function settingsOf(tube: LaidTube, drawn: LaidTube, context: EndContext) {
  return {
    settings: endSettings(tube, tube.centreline, drawn, context),
    asDrawn: tube.asDrawn === null ? null : endSettings(tube, tube.asDrawn, drawn, context),
  };
}

/** The setting of end A and of end B: node, direction, fit, and which tubes it meets; a twin's are the mirror images of its member's. */
function endSettings(
  tube: LaidTube,
  centreline: Centreline,
  drawn: LaidTube,
  { nodes, nodeRecords, mirroredMembers, drawn: drawnNeighbours, neighbours, drawnBars, bars, feet }: EndContext,
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
    return nearestOnPath(drawnNeighbours.byId.get(host)!.path, place).distance <= MEETING_DISTANCE ? host : null;
  };
  const directions = endDirections(centreline.corners);
  const drawnDirections = centreline === drawn.centreline ? directions : endDirections(drawn.centreline.corners);
  const standing = ({ cutters, butted }: Meeting): Meeting =>
    neighbours === drawnNeighbours
      ? { cutters, butted }
      : {
          cutters: cutters.map(({ id }) => neighbours.byId.get(id)!),
          butted: butted.map(({ id }) => neighbours.byId.get(id)!),
        };
  const setting = (which: 0 | 1): EndSetting => {
    const cut = tube.cutAt[which];
    const position = centreline.corners.at(which === 0 ? 0 : -1)!;
    const direction = directions[which];
    if (cut !== null) {
      const standsElsewhere = tube.asDrawn !== null && centreline !== tube.asDrawn;
      return { ...cutSetting(cut, which, neighbours), ...(standsElsewhere && { position, direction }) };
    }
    const named = tube.member.path.at(which === 0 ? 0 : -1)!;
    const node = twin ? primed(named) : named;
    const spec: EndFit = tube.member.ends[which];
    const drawnAt = { position: nodes.get(node)!, direction: drawnDirections[which] };
    const mateId = spec.fit === 'mitre' ? seen(spec.with, twin) : null;
    const mate = mateId === null ? null : mateAt(drawnBars.get(mateId), bars.get(mateId), drawnAt.position);
    const { outerDiameter } = tube.section;
    const plane = endPlane(spec, { direction, outerDiameter, twin, feet, mate });
    const mitred = plane.fit === 'mitre' ? { cutters: [], butted: [neighbours.byId.get(mateId!)!] } : null;
    const against = spec.fit === 'cope' ? spec.against.map((reference) => seen(reference, twin)) : [];
    return {
      node,
      position,
      direction,
      spec,
      plane,
      meeting:
        mitred ??
        standing(meetingOf({ ...drawnAt, order: tube.order }, spec.fit, against, hostOfNode(node), drawnNeighbours)),
    };
  };
  return [setting(0), setting(1)];
}

/** The bar that a mitre names, where it has an end at that place of the frame as drawn: its direction there as it stands. */
function mateAt(drawn: LaidBar | undefined, bar: LaidBar | undefined, place: Vec3): Mate | null {
  const which = drawn === undefined ? null : endThere(drawn, place);
  return which === null ? null : { direction: endDirections(bar!.centreline.corners)[which], section: bar!.section };
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
