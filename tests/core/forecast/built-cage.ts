/**
 * A cage built with given errors, by the words of docs/maths/forecast.md and nothing of core/forecast: steel rolled out step by step, the
 * car laid out anew with its points where they are, every tube held by a search, its edges measured at every few degrees.
 */
import {
  arcPiece,
  distanceToPath,
  linePiece,
  nearestOnPath,
  placeAt,
  type Path,
  type Piece,
} from '../../../src/core/geometry/path.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { bareId, isPrimed, primed } from '../../../src/core/job/reference.ts';
import { layOut, type Layout } from '../../../src/core/solve/lay-out.ts';
import { sequenceOf } from '../../../src/core/solve/sequence.ts';
import type { Bar, Frame, SolvedTube } from '../../../src/core/solve/types.ts';

type Vec = readonly [number, number, number];

/** Errors by name: `point ID x`, `bend BAR 2 angle`, `cut TUBE A`; mm and radians. */
export type Wrong = (name: string) => number;

const plus = (a: Vec, b: Vec, k = 1): Vec => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
const minus = (a: Vec, b: Vec): Vec => plus(a, b, -1);
const inner = (a: Vec, b: Vec): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const outer = (a: Vec, b: Vec): Vec => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Vec): Vec => {
  const size = Math.hypot(...a);
  return [a[0] / size, a[1] / size, a[2] / size];
};
const image = (a: Vec): Vec => [a[0], -a[1], a[2]];

/** v turned by the angle about the unit vector k. */
function turned(v: Vec, k: Vec, angle: number): Vec {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return plus(plus([v[0] * c, v[1] * c, v[2] * c], outer(k, v), s), k, inner(k, v) * (1 - c));
}

/** How the steel lies: three unit vectors square to each other, and where. */
interface Lie {
  readonly at: Vec;
  readonly axes: readonly [Vec, Vec, Vec];
}

const ridden = ({ axes }: Lie, v: Vec): Vec => plus(plus(plus([0, 0, 0], axes[0], v[0]), axes[1], v[1]), axes[2], v[2]);
const seenFrom = ({ axes }: Lie, v: Vec): Vec => [inner(v, axes[0]), inner(v, axes[1]), inner(v, axes[2])];

/** The bar as it is bent, end A where it is drawn: its path, its sharp corners, and how the steel lies at so many mm. */
interface Bent {
  readonly path: Path;
  readonly corners: readonly Vec[];
  readonly tangents: readonly number[];
  readonly lie: (at: number) => Lie;
}

function bent(bar: Bar, wrong: Wrong): Bent {
  const forwards = unit(minus(bar.corners[1]!, bar.corners[0]!));
  const normal = bar.bends[0]?.normal ?? bar.ends[0].reference;
  const starts: number[] = [];
  const stops: { readonly from: number; readonly lie: Lie; readonly radius: number }[] = [];
  const pieces: Piece[] = [];
  const corners: Vec[] = [];
  let lie: Lie = { at: bar.corners[0]!, axes: [forwards, normal, outer(forwards, normal)] };
  let here = 0;
  const straight = (to: number): void => {
    stops.push({ from: here, lie, radius: Infinity });
    const end = plus(lie.at, lie.axes[0], to - here);
    if (to - here > 1e-7) pieces.push(linePiece(lie.at, end, here));
    lie = { ...lie, at: end };
    here = to;
  };
  bar.bends.forEach(({ start, angle, rotation, radius }, i) => {
    const off = (slip: string) => wrong(`bend ${bar.id} ${i + 1} ${slip}`);
    straight(start + off('mark'));
    if (i > 0) lie = rolledBy(lie, rotation + off('rotation'));
    const turn = angle + off('angle');
    starts.push(here);
    stops.push({ from: here, lie, radius });
    corners.push(plus(lie.at, lie.axes[0], radius * Math.tan(turn / 2)));
    pieces.push(arcPiece(lie.at, lie.axes[0], lie.axes[1], radius, turn, here));
    lie = roundBend(lie, radius, turn);
    here += radius * turn;
  });
  straight(bar.developedLength);
  return {
    path: { pieces, length: bar.developedLength },
    corners,
    tangents: starts,
    lie: (at) => {
      const stop = stops.findLast(({ from }) => from < at - 1e-7) ?? stops[0]!;
      // Before the first bend the steel lies in its plane.
      if (stop.radius === Infinity) return { ...stop.lie, at: plus(stop.lie.at, stop.lie.axes[0], at - stop.from) };
      return roundBend(stop.lie, stop.radius, (at - stop.from) / stop.radius);
    },
  };
}

const rolledBy = ({ at, axes }: Lie, angle: number): Lie => {
  const normal = turned(axes[1], axes[0], angle);
  return { at, axes: [axes[0], normal, outer(axes[0], normal)] };
};

function roundBend({ at, axes }: Lie, radius: number, angle: number): Lie {
  const centre = plus(at, outer(axes[1], axes[0]), radius);
  const [forwards, third] = [turned(axes[0], axes[1], angle), turned(axes[2], axes[1], angle)];
  return { at: plus(centre, outer(axes[1], forwards), -radius), axes: [forwards, axes[1], third] };
}

type Carry = (v: Vec) => Vec;

/** How a rigid tube is held: the turn and the motion of places. */
interface Held {
  readonly turn: Carry;
  readonly place: Carry;
}

function held(ends: readonly (readonly [Vec, Vec])[], corners: readonly (readonly [Vec, Vec])[]): Held {
  const [[isA, toA], [isB, toB]] = ends as [readonly [Vec, Vec], readonly [Vec, Vec]];
  const [was, is] = [unit(minus(isB, isA)), unit(minus(toB, toA))];
  const square = outer(was, is);
  const sine = Math.hypot(...square);
  const tilt: Carry = (v) => (sine < 1e-14 ? v : turned(v, unit(square), Math.atan2(sine, inner(was, is))));
  const [from, to] = [plus(isA, minus(isB, isA), 0.5), plus(toA, minus(toB, toA), 0.5)];
  const off = (angle: number): number =>
    corners.reduce((sum, [corner, aim]) => {
      const miss = minus(plus(to, turned(tilt(minus(corner, from)), is, angle)), aim);
      return sum + inner(miss, miss);
    }, 0);
  const twist = corners.length === 0 ? 0 : least(off, -0.3, 0.3);
  const turn: Carry = (v) => turned(tilt(v), is, twist);
  return { turn, place: (v) => plus(to, turn(minus(v, from))) };
}

/** Where a function with one low in the stretch has it: by thirds, and from the parabola through what is left. */
function least(f: (x: number) => number, low: number, high: number): number {
  for (let i = 0; i < 24; i++) {
    const third = (high - low) / 3;
    if (f(low + third) < f(high - third)) high -= third;
    else low += third;
  }
  const [middle, step] = [(low + high) / 2, 1e-3];
  const [a, b, c] = [f(middle - step), f(middle), f(middle + step)];
  return middle + (step * (a - c)) / (2 * (a - 2 * b + c));
}

/** Of each joint, by tube and end, the gap in mm; lines so many degrees apart. */
export function buildCage(frame: Frame, wrong: Wrong, step: number): ReadonlyMap<string, number> {
  const { job } = frame;
  const car = asItIs(job, wrong);
  const nodes = new Map<string, Vec>();
  const bars = new Map<string, { readonly steel: Bent; readonly by: Held }>();
  const order = new Map(job.members.map(({ id }, i) => [id, i]));
  const cut = (tube: string): readonly [number, number] => [wrong(`cut ${tube} A`), wrong(`cut ${tube} B`)];

  const barOf = (id: string) => {
    if (!bars.has(id)) {
      const bar = frame.bars.get(id)!;
      const steel = bent(bar, wrong);
      bars.set(id, { steel, by: holding(bar, steel, frame.byId.has(id) ? cut(id) : [0, 0]) });
    }
    return bars.get(id)!;
  };
  /** Where a place drawn on or beside the steel of a bar, at so many mm, comes to lie. */
  const marked = (id: string, at: number, drawn: Vec): Vec => {
    const { steel, by } = barOf(id);
    const beside = minus(drawn, placeAt(frame.bars.get(id)!.path, at).point);
    return plus(by.place(steel.lie(Math.min(Math.max(at, 0), steel.path.length)).at), beside);
  };
  const hostOf = (reference: string): string | null => {
    const { at } = job.nodes.find(({ id }) => id === bareId(reference))!;
    if (at.kind === 'crossing') throw new Error('not built here');
    if (at.kind !== 'on') return null;
    return isPrimed(reference) && frame.bars.has(primed(at.member)) ? primed(at.member) : at.member;
  };
  const nodeAt = (reference: string): Vec => {
    if (!nodes.has(reference)) nodes.set(reference, placeOf(reference));
    return nodes.get(reference)!;
  };
  function placeOf(reference: string): Vec {
    const { at } = job.nodes.find(({ id }) => id === bareId(reference))!;
    const host = hostOf(reference);
    if (at.kind !== 'on' || host === null) return car.nodes.get(reference)!;
    const drawn = frame.nodes.get(reference)!;
    const bar = frame.bars.get(host)!;
    if (isPrimed(reference) && !frame.bars.has(primed(at.member)))
      return marked(host, nearestOnPath(bar.path, drawn).at, drawn);
    const { steel, by } = barOf(host);
    if (at.until !== undefined) {
      // On the straight or arc where it is drawn: one low of the square of what is missing.
      const { axis, value } = at.until;
      const k = { x: 0, y: 1, z: 2 }[axis] as 0 | 1 | 2;
      const near = nearestOnPath(bar.path, drawn).at;
      const along = least((s) => (by.place(steel.lie(s).at)[k] - value!) ** 2, near - 60, near + 60);
      return by.place(steel.lie(along).at);
    }
    const bend = at.bend === undefined ? null : at.bend - 1;
    const arc = (i: number) => bar.bends[i]!.radius * (bar.bends[i]!.angle + wrong(`bend ${host} ${i + 1} angle`));
    const from =
      bend === null
        ? at.from === 'start'
          ? at.distance
          : bar.developedLength - at.distance
        : steel.tangents[bend]! + { start: 0, middle: arc(bend) / 2, end: arc(bend) }[at.where!] + at.distance;
    return plus(by.place(steel.lie(from).at), isPrimed(reference) ? image(at.offset) : at.offset);
  }
  /** Where an end is wanted: on the steel that it is welded to where that is there before it, else at its node. */
  function wanted(tube: SolvedTube | Bar, which: 0 | 1): Vec {
    const { node, cuts, butted, position } = tube.ends[which];
    const mate = cuts[0]?.against ?? butted[0];
    const earlier = mate !== undefined && order.get(frame.bars.get(mate)!.member.id)! < order.get(tube.member.id)!;
    if (node !== null && (hostOf(node) !== null || !earlier)) return nodeAt(node);
    return marked(mate!, cuts[0]?.landingAt ?? nearestOnPath(frame.bars.get(mate!)!.path, position).at, position);
  }
  function holding(tube: SolvedTube | Bar, steel: Bent, sawn: readonly [number, number]): Held {
    const piece = 'piece' in tube ? tube.piece : null;
    const whole = 'bar' in tube ? frame.bars.get(tube.bar)! : tube;
    const [from, to] = [piece?.from ?? 0, (piece?.from ?? 0) + tube.developedLength];
    const ends = ([0, 1] as const).map((which) => {
      const lie = steel.lie(which === 0 ? from : to);
      return [plus(lie.at, lie.axes[0], which === 0 ? sawn[0] : -sawn[1]), wanted(tube, which)] as const;
    });
    const corners = whole.bends.flatMap(({ start, end, corner }, i) => {
      if (start < from - 1e-6 || end > to + 1e-6) return [];
      const k = whole.route.findIndex((place) => Math.hypot(...minus(place, corner)) < 1e-9);
      const name = whole.member.path[k]!;
      return [[steel.corners[i]!, nodeAt(isPrimed(whole.id) ? primed(name) : name)] as const];
    });
    return held(ends, corners);
  }

  const sound: Wrong = () => 0;
  const tubes = new Map(
    frame.tubes.map((tube) => {
      const steel = bent(frame.bars.get(tube.bar)!, wrong);
      const drawn = bent(frame.bars.get(tube.bar)!, sound);
      const by = tube.piece === null ? barOf(tube.id).by : holding(tube, steel, cut(tube.id));
      const poses = ([0, 1] as const).map((which) => {
        const at = (tube.piece?.from ?? 0) + (which === 0 ? 0 : tube.developedLength);
        const [was, is] = [drawn.lie(at), steel.lie(at)];
        const carry: Carry = (v) => by.turn(ridden(is, seenFrom(was, v)));
        return { at: plus(by.place(is.at), carry(minus(tube.ends[which].position, was.at))), carry };
      });
      return [tube.id, { tube, poses }] as const;
    }),
  );
  const paths = new Map([...bars].map(([id, { steel, by }]) => [id, movedPath(steel.path, by)]));
  const gaps = new Map<string, number>();
  for (const { tube, poses } of tubes.values()) {
    tube.ends.forEach((end, which) => {
      const { at, carry } = poses[which]!;
      const [u, r] = [carry(end.direction), carry(end.reference)];
      const short = wrong(`cut ${tube.id} ${which === 0 ? 'A' : 'B'}`);
      const radius = tube.section.outerDiameter / 2;
      const edge = (degree: number, more: number, [o, d, side]: readonly [Vec, Vec, Vec], sawn: number): Vec => {
        const phi = (degree * Math.PI) / 180;
        const round = plus(plus(o, side, radius * Math.cos(phi)), outer(d, side), radius * Math.sin(phi));
        return plus(round, d, end.outer[degree]! + sawn - more);
      };
      const runs = end.cuts.filter(({ reaches }) => reaches);
      const normal = end.plateNormal ?? end.direction;
      const n = unit(inner(normal, end.direction) < 0 ? minus([0, 0, 0], normal) : normal);
      const open = (degree: number, more: number): number => {
        const place = edge(degree, more, [at, u, r], short);
        if (runs.length > 0) {
          return Math.min(
            ...runs.map((run) => distanceToPath(paths.get(run.against)!, place, true) - run.sawDiameter / 2),
          );
        }
        const then = edge(degree, 0, [end.position, end.direction, end.reference], 0);
        return inner(minus(place, nodeAt(end.node!)), n) - inner(minus(then, end.position), n);
      };
      if (runs.length === 0 && end.fit !== 'plate' && end.fit !== 'foot') return;
      let gap = 0;
      for (let degree = 0; degree < 360; degree += step) {
        if (Number.isNaN(end.outer[degree]!)) continue;
        const own = open(degree, 0);
        gap = Math.max(gap, end.allowance > 0 && own > 0 ? Math.min(own, open(degree, end.allowance)) : own);
      }
      gaps.set(`${tube.id} ${which === 0 ? 'A' : 'B'}`, gap);
    });
  }
  return gaps;
}

function movedPath({ pieces, length }: Path, { place, turn }: Held): Path {
  return {
    length,
    pieces: pieces.map((piece) =>
      piece.kind === 'line'
        ? linePiece(place(piece.from), place(piece.to), piece.at)
        : arcPiece(
            place(piece.from),
            turn(piece.startTangent),
            turn(piece.normal),
            piece.radius,
            piece.angle,
            piece.at,
          ),
    ),
  };
}

/** Laid out with the points where they really are. */
function asItIs(job: Job, wrong: Wrong): Layout {
  const off = (id: string): Vec => [wrong(`point ${id} x`), wrong(`point ${id} y`), wrong(`point ${id} z`)];
  const points = job.points.map((point) => ({ ...point, position: plus(point.position, off(point.id)) }));
  const sequence = sequenceOf(job);
  if (!sequence.ok) throw new Error('no sequence');
  const layout = layOut({ ...job, points }, sequence.value, undefined);
  if (!layout.ok) throw new Error(layout.faults[0]!.message);
  return layout.value;
}
