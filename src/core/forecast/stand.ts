/**
 * A cage as it stands once it is built: the car is as it is, every tube has the shape that it was cut and bent to by the drawing, and is
 * held as well as can be by its nodes and by what it is welded to (docs/maths/forecast.md). Nodes are placed by the derivation's own
 * placeNode, with points where they are and tubes as they stand.
 */
import { nearestOnPath, placeAt } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { add, addScaled, cross, distance, dot, mirrored, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import type { Point } from '../job/kinds/point.ts';
import { hostOf } from '../job/places.ts';
import { bareId, isPrimed, primed, type NodeRef, type PointId, type TubeRef } from '../job/reference.ts';
import { thickestThrough } from '../job/thickest.ts';
import { remembered } from '../remembered.ts';
import { placeNode } from '../solve/place.ts';
import type { Solved } from '../solve/solved.ts';
import type { Bar, Frame, SolvedTube, TubeEnd } from '../solve/types.ts';
import { bestMotion, type Pair } from './placed.ts';
import { asBent, moved, reflected, steelAt, type Motion, type Shape } from './shape.ts';
import type { Errors } from './sources.ts';
import type { Source } from './types.ts';
import { createWeb, type Web } from './web.ts';

/** How an end stands: unit vectors as in TubeEnd. `position` is the place that its trims count from, wherever the saw went. */
export interface Pose {
  readonly position: Vec3;
  readonly direction: Vec3;
  readonly reference: Vec3;
  /** mm that it was sawn short. */
  readonly short: number;
}

type Both<T> = readonly [T, T];

export interface Stand {
  node(reference: NodeRef): Vec3;
  bar(reference: TubeRef): Shape;
  ends(tube: TubeRef): Both<Pose>;
  readonly web: Web;
}

/** A cage like this one but for errors of these. */
export interface Otherwise {
  readonly stand: Stand;
  readonly sources: readonly Source[];
}

/** What the source moves first, as it is called in the web. */
const movedBy = (source: Source): string =>
  source.kind === 'point'
    ? `point ${source.point}`
    : source.kind === 'bend'
      ? `bent ${source.bar}`
      : `cuts ${source.tube}`;

const SOUND: Both<number> = [0, 0];

/** The cage that comes of the errors. A place that cannot be reached any more stays where it is drawn. */
export function stand(frame: Frame, errors: Errors, before?: Otherwise): Stand {
  const web = createWeb(before && { web: before.stand.web, differing: before.sources.map(movedBy) });
  const { nodes: nodeOf, points: pointOf, orders } = recordsOf(frame);
  /** Bars that are being held: one that is asked for meanwhile by what it is held by counts as drawn. */
  const underWay = new Set<TubeRef>();

  const pointThere = (id: PointId): Point =>
    web.ask(`point ${id}`, () => {
      const [thought, off] = [pointOf.get(id)!, errors.points.get(id)];
      return off === undefined ? thought : { ...thought, position: add(thought.position, off) };
    });
  const node = (reference: NodeRef): Vec3 =>
    web.ask(`node ${reference}`, () => {
      const record = nodeOf.get(bareId(reference))!;
      return isPrimed(reference) ? imageOf(record) : placed(record, here, frame.nodes.get(reference)!);
    });
  const bar = (reference: TubeRef): Shape =>
    underWay.has(reference) ? frame.bars.get(reference)! : web.ask(`bar ${reference}`, () => heldBar(reference));
  const bent = (reference: TubeRef): Shape =>
    web.ask(`bent ${reference}`, () => asBent(frame.bars.get(reference)!, errors.bends.get(reference)));
  const cutsOf = (tube: TubeRef): Both<number> => web.ask(`cuts ${tube}`, () => errors.cuts.get(tube) ?? SOUND);
  const ends = (id: TubeRef): Both<Pose> =>
    web.ask(`ends ${id}`, () => {
      const tube = frame.byId.get(id)!;
      const whole = frame.bars.get(tube.bar)!;
      return posesOf(tube, whole, bent(tube.bar), motionOf(tube), cutsOf(id));
    });

  const here: Solved = { point: pointThere, node, tube: bar, thickest: (id) => thickestThrough(frame.job, id) };
  /** The car as a mirror shows it: there an image stands as its node does here. */
  const behindMirror: Solved = {
    ...here,
    node: (reference) => mirrored(node(primed(reference))),
    tube: (reference) => reflected(bar(frame.bars.has(primed(reference)) ? primed(reference) : reference)),
  };

  function imageOf(record: FrameNode): Vec3 {
    const drawn = frame.nodes.get(primed(record.id))!;
    const host = hostOf(record.at);
    if (host === null || frame.bars.has(primed(host))) return mirrored(placed(record, behindMirror, mirrored(drawn)));
    // On a bar that spans the car: where it is marked on its steel, on the other side.
    return markedOn(host, nearestOnPath(frame.bars.get(host)!.path, drawn).at, drawn);
  }

  /** Where a place that is drawn on, or beside, a bar's steel at so many mm of its length comes to lie. */
  function markedOn(host: TubeRef, at: number, drawn: Vec3): Vec3 {
    const beside = subtract(drawn, placeAt(frame.bars.get(host)!.path, at).point);
    return add(placeAt(bar(host).path, at).point, beside);
  }

  function heldBar(reference: TubeRef): Shape {
    underWay.add(reference);
    const whole = frame.bars.get(reference)!;
    const shape = moved(bent(reference), motionOf(frame.byId.get(reference) ?? whole));
    underWay.delete(reference);
    return shape;
  }

  /** How a tube, or a bar that is made in pieces, is brought from where it was bent to where it is held. */
  function motionOf(tube: SolvedTube | Bar): Motion {
    const { member, route, bends, path: drawnPath } = 'bar' in tube ? frame.bars.get(tube.bar)! : tube;
    const name = 'bar' in tube ? tube.bar : tube.id;
    return web.ask(`motion ${tube.id}`, () => {
      const shape = bent(name);
      const sawn = frame.byId.has(tube.id) ? cutsOf(tube.id) : SOUND;
      const [from, to] = [endAt(tube, 0), endAt(tube, 1)];
      const corners = bends.flatMap(({ start, end, corner }, i): readonly Pair[] => {
        if (start < from - ROUNDING || end > to + ROUNDING) return [];
        const named = member.path[nearestTo(corner, route)]!;
        return [[shape.bends[i]!.corner, add(corner, wayOf(isPrimed(name) ? primed(named) : named))]];
      });
      const pair = (which: 0 | 1): Pair => {
        const at = which === 0 ? from : to;
        const { point, tangent } = placeAt(shape.path, at);
        // Of bends that overlap no place of the path is the end's: it is as far from the one that is found as it is drawn.
        const is = add(point, subtract(tube.ends[which].position, placeAt(drawnPath, at).point));
        return [addScaled(is, tangent, which === 0 ? sawn[0] : -sawn[1]), goal(tube, which)];
      };
      return bestMotion(pair(0), pair(1), corners);
    });
  }

  /** How far a node is from where it is drawn. A tube that stands as it was built goes with its nodes, from where it stands. */
  const wayOf = (reference: NodeRef): Vec3 => subtract(node(reference), frame.nodes.get(reference)!);

  /** Where an end is held: at what it is welded to, where that stands by then, where it was marked on its steel; else at its node. */
  function goal(tube: SolvedTube | Bar, which: 0 | 1): Vec3 {
    const { node: named, position, cuts, butted } = tube.ends[which];
    const isMarked = named !== null && hostOf(nodeOf.get(bareId(named))!.at) !== null;
    const cut = isMarked ? undefined : cuts[0];
    const mate = isMarked ? undefined : (cut?.against ?? butted[0]);
    const standsBefore =
      mate !== undefined && orders.get(frame.bars.get(mate)!.member.id)! < orders.get(tube.member.id)!;
    if (mate === undefined || (named !== null && !standsBefore)) return add(position, wayOf(named!));
    const at = cut?.landingAt ?? nearestOnPath(frame.bars.get(mate)!.path, position).at;
    return markedOn(mate, at, position);
  }

  return { node, bar, ends, web };
}

/** The place, or where it is drawn if it cannot be reached. */
function placed(record: FrameNode, by: Solved, drawn: Vec3): Vec3 {
  const placing = placeNode(record, by);
  return 'position' in placing ? placing.position : drawn;
}

/** Of these places the number of the one nearest to the corner: itself, but where the tube stands as it was built. */
const nearestTo = (corner: Vec3, places: readonly Vec3[]): number =>
  places.reduce((best, place, i) => (distance(place, corner) < distance(places[best]!, corner) ? i : best), 0);

const recordsOf = remembered(({ job }: Frame) => ({
  nodes: new Map(job.nodes.map((record) => [record.id, record])),
  points: new Map(job.points.map((record) => [record.id, record])),
  orders: new Map(job.members.map(({ id }, i) => [id, i])),
}));

/** Along its bar, mm. */
const endAt = (tube: SolvedTube | Bar, which: 0 | 1): number =>
  ('piece' in tube ? (tube.piece?.from ?? 0) : 0) + (which === 0 ? 0 : tube.developedLength);

/** Both ends of a tube, carried along with the steel that they are cut in. */
function posesOf(tube: SolvedTube, bar: Bar, shape: Shape, motion: Motion, short: Both<number>): Both<Pose> {
  const pose = (which: 0 | 1): Pose => {
    const { reference, direction, position }: TubeEnd = tube.ends[which];
    const at = endAt(tube, which);
    const [was, is] = [steelAt(bar, at, reference), steelAt(shape, at, reference)];
    const carried = (v: Vec3): Vec3 => {
      const along = addScaled(scale(is.tangent, dot(v, was.tangent)), is.normal, dot(v, was.normal));
      return motion.turn(addScaled(along, cross(is.tangent, is.normal), dot(v, cross(was.tangent, was.normal))));
    };
    return {
      position: add(motion.place(is.point), carried(subtract(position, was.point))),
      direction: carried(direction),
      reference: carried(reference),
      short: short[which],
    };
  };
  return [pose(0), pose(1)];
}
