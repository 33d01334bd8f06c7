/**
 * Random joints: a straight branch coped to one run or several, as a job for the program and, worked out from the same
 * draws by the oracles' own geometry, as an end with its cutters.
 */
import type { Member } from '../../src/core/job/kinds/member.ts';
import type { FrameNode } from '../../src/core/job/kinds/node.ts';
import type { Section } from '../../src/core/job/kinds/section.ts';
import type { Job } from '../../src/core/job/types.ts';
import { oneOfEach } from '../draws.ts';
import {
  acuteSide,
  cutterThrough,
  developed,
  distanceToCentreline,
  placeAlong,
  type Cutter,
} from './oracles/centreline.ts';
import type { End } from './oracles/march.ts';
import { drawFrom, type Draw } from './oracles/seeded.ts';
import { along, anySquare, around, difference, inner, square, sum, times, unit, type Triple } from './oracles/space.ts';
import { copedTo, dieOf, fixed, jobOf, member, SQUARE, tubing } from './jobs.ts';

export interface Joint {
  readonly seed: number;
  readonly job: Job;
  /** An end of the tube "branch": A where the seed is even, B where it is odd. */
  readonly end: Omit<End, 'reference'>;
  readonly which: 0 | 1;
  readonly bore: number;
  /** phi = 0: the acute side of the first cut; null where the branch passes a bend off its axis, and the program's is taken. */
  readonly reference: Triple | null;
}

/** What makes one joint another case than the next, in words: how many tubes cut it, where on the first, and how thick it is beside them. */
export function kindOf({ end: { node, radius, cutters } }: Joint): string {
  const first = cutters[0]!;
  const near = first.parts.filter((part) => distanceToCentreline({ parts: [part], radius: 0 }, node) < radius);
  return [
    ['one tube', 'two tubes'][cutters.length - 1] ?? 'more',
    [...new Set(near.map(({ kind }) => kind))].join(' and '),
    distanceToCentreline(first, node) < 1e-6 ? 'on the axis' : 'past the axis',
    cutters.some((cutter) => cutter.radius === radius) ? 'equal' : radius > first.radius ? 'thicker' : 'thinner',
  ].join(', ');
}

/** The same, where several tubes cut it by their number and the place alone: such joints are the slow ones. */
export function roughKindOf(joint: Joint): string {
  const kind = kindOf(joint);
  return joint.end.cutters.length === 1 ? kind : kind.split(', ').slice(0, 2).join(', ');
}

/** `count` seeds from `from` on; in `npm test` the first of each kind of joint alone. */
export const seedsOf = (
  from: number,
  count: number,
  make: (seed: number) => Joint,
  kind: (joint: Joint) => string = kindOf,
): number[] =>
  oneOfEach(
    Array.from({ length: count }, (_, i) => from + i),
    (seed) => kind(make(seed)),
  );

interface Run {
  readonly corners: readonly Triple[];
  readonly bendRadius: number;
  readonly radius: number;
}

/** How long the branch is, its other end square, mm. */
export const BRANCH = 900;

/** Runs without bends: included angles of 15 to 90 degrees, branches thinner and thicker, past the axis, one to four cutters. */
export function straightJoint(seed: number): Joint {
  const draw = drawFrom(seed);
  const node = drawPoint(draw, 1500);
  const direction = drawDirection(draw);
  const radius = draw.between(12, 32);
  const cutters = draw.oneOf([1, 1, 2, 3, 4]);
  const passes = draw.chance(0.6);
  const runs = Array.from({ length: cutters }, (): Run => {
    const lean = around(direction, anySquare(direction), draw.between(0, 360));
    const included = (draw.between(15, 90) * Math.PI) / 180;
    const sense = draw.oneOf([-1, 1]);
    const axis = times(sense, sum(times(Math.cos(included), direction), times(Math.sin(included), lean)));
    const runRadius = draw.chance(0.25) ? radius : draw.between(12, 32);
    const offset = passes ? draw.between(-1.1, 1.1) * runRadius : 0;
    const through = along(node, around(direction, lean, 90), -offset);
    return { corners: [along(through, axis, -400), along(through, axis, 400)], bendRadius: 0, radius: runRadius };
  });
  return jointOf(seed, {
    node: fixed('foot', node),
    at: node,
    direction,
    radius,
    runs,
    tangent: unit(difference(runs[0]!.corners[1]!, runs[0]!.corners[0]!)),
    draw,
  });
}

/** The node anywhere on a bend or beside its tangents, the branch from any side, at times past the axis or to a second run. */
export function bentJoint(seed: number): Joint {
  const draw = drawFrom(seed);
  const run = drawBentRun(draw);
  const first = developed(run.corners.slice(0, 2), run.bendRadius);
  const whole = developed(run.corners, run.bendRadius);
  // Two in five stand across a tangent, where the straight ends and the bend begins or the other way round.
  const distance = draw.chance(0.4)
    ? draw.oneOf(tangentsOf(run)) + draw.between(-25, 25)
    : draw.between(Math.max(60, first - 420), whole - 60);
  const place = placeAlong(run.corners, run.bendRadius, distance);
  const lean = around(place.direction, anySquare(place.direction), draw.between(0, 360));
  const included = (draw.between(20, 90) * Math.PI) / 180;
  const direction = sum(
    times(Math.cos(included) * draw.oneOf([-1, 1]), place.direction),
    times(Math.sin(included), lean),
  );
  const onAxis = draw.chance(0.5);
  const offset: Triple = onAxis ? [0, 0, 0] : times(draw.between(0, 0.8) * run.radius, drawDirection(draw));
  const at = sum(place.at, offset);
  const node: FrameNode = { id: 'foot', name: '', at: { kind: 'on', member: 'run0', from: 'start', distance, offset } };
  const runs = [run];
  const radius = draw.chance(0.25) ? run.radius : draw.between(0.6, 1.15) * run.radius;
  if (draw.chance(0.3)) {
    const axis = drawDirection(draw);
    const lean2 = Math.abs(inner(axis, direction)) > 0.9 ? unit(square(axis, direction)) : axis;
    runs.push({
      corners: [along(at, lean2, -300), along(at, lean2, 300)],
      bendRadius: 0,
      radius: draw.between(12, 25),
    });
  }
  return jointOf(seed, { node, at, direction, radius, runs, tangent: onAxis ? place.direction : null, draw });
}

/**
 * Bends of 3 to 170 degrees and branches that lie along them: in their hollow, through both legs, past them or short of them. Lines here
 * have two and three stretches within a run, and many miss it at the joint and strike it farther on.
 */
export function hollowJoint(seed: number): Joint {
  const draw = drawFrom(seed);
  const tubes = draw.oneOf([1, 1, 1, 2, 3]);
  const run = drawHollowRun(draw, drawPoint(draw, 800));
  const distance = draw.between(60, developed(run.corners, run.bendRadius) - 60);
  const place = placeAlong(run.corners, run.bendRadius, distance);
  const lean = around(place.direction, anySquare(place.direction), draw.between(0, 360));
  const included = (draw.oneOf([draw.between(2, 30), draw.between(2, 90)]) * Math.PI) / 180;
  const direction = sum(
    times(Math.cos(included) * draw.oneOf([-1, 1]), place.direction),
    times(Math.sin(included), lean),
  );
  const offset = times(draw.oneOf([0, draw.between(0, 1.2), draw.between(0, 4)]) * run.radius, drawDirection(draw));
  const at = sum(place.at, offset);
  const node: FrameNode = { id: 'foot', name: '', at: { kind: 'on', member: 'run0', from: 'start', distance, offset } };
  const runs = [run];
  while (runs.length < tubes) {
    const other = drawHollowRun(draw, [0, 0, 0]);
    const near = placeAlong(
      other.corners,
      other.bendRadius,
      draw.between(80, developed(other.corners, other.bendRadius)),
    );
    const shift = sum(difference(at, near.at), times(draw.between(0, 1) * other.radius, drawDirection(draw)));
    runs.push({ ...other, corners: other.corners.map((corner) => sum(corner, shift)) });
  }
  const radius = draw.chance(0.25) ? run.radius : draw.between(0.4, 1.3) * run.radius;
  return jointOf(seed, { node, at, direction, radius, runs, tangent: null, draw });
}

function drawHollowRun(draw: Draw, from: Triple): Run {
  const radius = draw.between(12, 30);
  const bendRadius = radius * draw.between(3, 12);
  return bentThrough(draw, from, { radius, bendRadius }, draw.oneOf([1, 1, 2]), () =>
    draw.between(3, draw.oneOf([30, 170])),
  );
}

/** One to three bends of 20 to 120 degrees, planes turned at random, straights of 5 to 250 mm between the tangents. */
function drawBentRun(draw: Draw): Run {
  const radius = draw.between(15, 26);
  const bendRadius = radius * draw.between(4, 8);
  const bends = draw.oneOf([1, 1, 2, 3]);
  return bentThrough(draw, drawPoint(draw, 1000), { radius, bendRadius }, bends, () => draw.between(20, 120));
}

/** Through so many bends, each in a plane of its own. */
function bentThrough(draw: Draw, from: Triple, size: Omit<Run, 'corners'>, bends: number, turnOf: () => number): Run {
  const { bendRadius } = size;
  const corners: Triple[] = [from];
  let travel = drawDirection(draw);
  let across = anySquare(travel);
  let setBack = 0;
  for (let i = 0; i < bends; i++) {
    const turn = turnOf();
    const nextSetBack = bendRadius * Math.tan((turn * Math.PI) / 360);
    corners.push(along(corners.at(-1)!, travel, setBack + nextSetBack + (i === 0 ? 300 : draw.between(5, 250))));
    across = around(travel, across, draw.between(0, 360));
    const [before, side] = [travel, across];
    const t = (turn * Math.PI) / 180;
    travel = unit(sum(times(Math.cos(t), before), times(Math.sin(t), side)));
    across = unit(square(sum(times(-Math.sin(t), before), times(Math.cos(t), side)), travel));
    setBack = nextSetBack;
  }
  corners.push(along(corners.at(-1)!, travel, setBack + 300));
  return { ...size, corners };
}

/** Developed lengths at which a bend begins or ends. */
function tangentsOf({ corners, bendRadius }: Run): number[] {
  const tangents: number[] = [];
  let laid = 0;
  for (const part of cutterThrough(corners, bendRadius, 1).parts.slice(0, -1)) {
    laid += part.kind === 'bow' ? part.radius * part.angle : part.length;
    tangents.push(laid);
  }
  return tangents;
}

interface Parts {
  readonly node: FrameNode;
  readonly at: Triple;
  readonly direction: Triple;
  readonly radius: number;
  readonly runs: readonly Run[];
  /** Of the first run, where the branch meets it. */
  readonly tangent: Triple | null;
  readonly draw: Draw;
}

function jointOf(seed: number, { node, at, direction, radius, runs, tangent, draw }: Parts): Joint {
  const nodes: FrameNode[] = [];
  const members: Member[] = [];
  const sections: Section[] = [];
  runs.forEach((run, i) => {
    const ids = run.corners.map((_, k) => `r${i}c${k}`);
    nodes.push(...run.corners.map((corner, k) => fixed(ids[k]!, corner)));
    sections.push(tubing(`s${i}`, 2 * run.radius, 2));
    members.push(member(`run${i}`, ids, `s${i}`, run.corners.length > 2 ? { die: `d${i}` } : {}));
  });
  const dies = runs.flatMap((run, i) =>
    run.corners.length > 2 ? [dieOf(`d${i}`, 2 * run.radius, run.bendRadius)] : [],
  );
  const wall = draw.between(1.2, 3.2);
  const far = fixed('far', along(at, direction, BRANCH));
  const which = seed % 2 === 0 ? 0 : 1;
  const fit = copedTo(...runs.map((_, i) => `run${i}`));
  const ends: Member['ends'] = which === 0 ? [fit, SQUARE] : [SQUARE, fit];
  const path = which === 0 ? ['foot', 'far'] : ['far', 'foot'];
  const job = jobOf({
    sections: [...sections, tubing('branch', 2 * radius, wall)],
    dies,
    nodes: [...nodes, node, far],
    members: [...members, member('branch', path, 'branch', { ends })],
  });
  const cutters: Cutter[] = runs.map((run) => cutterThrough(run.corners, run.bendRadius, run.radius));
  const reference = tangent && acuteSide(direction, tangent);
  return { seed, job, which, end: { node: at, direction, radius, cutters }, bore: radius - wall, reference };
}

const drawPoint = (draw: Draw, reach: number): Triple => [
  draw.between(-reach, reach),
  draw.between(-reach, reach),
  draw.between(-reach, reach),
];

function drawDirection(draw: Draw): Triple {
  const height = draw.between(-1, 1);
  const bearing = draw.between(0, 2 * Math.PI);
  const flat = Math.sqrt(1 - height * height);
  return [flat * Math.cos(bearing), flat * Math.sin(bearing), height];
}
