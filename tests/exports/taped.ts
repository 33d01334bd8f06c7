/**
 * What a tape would read on a bent tube, from the corners, bends and ends of the fabrication file alone: the tube as many
 * places, each with a ring of points of its surface. Nothing here is solved; all is looked for among the points.
 */
import type { FabricationTube } from '../../src/exports/tables/fabrication.ts';

type Triple = readonly [number, number, number];

const add = (a: Triple, b: Triple, by = 1): Triple => [a[0] + by * b[0], a[1] + by * b[1], a[2] + by * b[2]];
const inner = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const outer = (a: Triple, b: Triple): Triple => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Triple): Triple => add([0, 0, 0], a, 1 / Math.sqrt(inner(a, a)));
const apart = (a: Triple, b: Triple): number => Math.sqrt(inner(add(b, a, -1), add(b, a, -1)));

interface Station {
  readonly at: Triple;
  readonly along: Triple;
}

/** Steps on each bend, and points on each ring: what lies between two of them is less than 0.001 mm higher than they are. */
const STEPS = 600;
const RING = 720;

/** Every place where the tube can reach farthest: ends of straights, and bends step by step. */
function stations({ corners, bends, ends }: FabricationTube) {
  const ways = corners.slice(1).map((corner, i) => unit(add(corner, corners[i]!, -1)));
  const sawn = (which: 0 | 1): Triple => {
    const { direction, tip, allowance } = ends[which];
    return add(corners.at(-which)!, direction, tip! - allowance);
  };
  const endA: Station = { at: sawn(0), along: ways[0]! };
  const endB: Station = { at: sawn(1), along: ways.at(-1)! };
  const arcs = bends.map(({ angle, radius }, i): Station[] => {
    const [u, v] = [ways[i]!, ways[i + 1]!];
    const turn = (angle * Math.PI) / 180;
    const start = add(corners[i + 1]!, u, -radius * Math.tan(turn / 2));
    const inwards = unit(add(v, u, -inner(u, v)));
    return Array.from({ length: STEPS + 1 }, (_, k) => {
      const [c, s] = [Math.cos((turn * k) / STEPS), Math.sin((turn * k) / STEPS)];
      return {
        at: add(add(start, u, radius * s), inwards, radius * (1 - c)),
        along: add(add([0, 0, 0], u, c), inwards, s),
      };
    });
  });
  return { endA, endB, arcs, all: [endA, ...arcs.flat(), endB] };
}

/** From the lowest to the highest point of the rings, along w. */
function extent(rings: readonly Station[], outerDiameter: number, w: Triple): number {
  let [low, high] = [Infinity, -Infinity];
  for (const { at, along } of rings) {
    const e1 = unit(outer(along, Math.abs(along[0]) < 0.7 ? [1, 0, 0] : [0, 1, 0]));
    const e2 = outer(along, e1);
    const [h, x, y] = [inner(at, w), inner(e1, w), inner(e2, w)];
    for (let k = 0; k < RING; k++) {
      const round = (2 * Math.PI * k) / RING;
      const level = h + (outerDiameter / 2) * (Math.cos(round) * x + Math.sin(round) * y);
      low = Math.min(low, level);
      high = Math.max(high, level);
    }
  }
  return high - low;
}

/** By their names on the sheet, in its order, mm; for a tube with a bend. */
export function taped(tube: FabricationTube, outerDiameter: number): ReadonlyMap<string, number> {
  const { endA, endB, arcs, all } = stations(tube);
  const count = arcs.length;
  const [first, last] = [arcs[0]![0]!, arcs.at(-1)!.at(-1)!];
  const over = (rings: readonly Station[], w: Triple) => extent(rings, outerDiameter, w);
  const between = (a: Station, b: Station) => over([a, b], unit(add(b.at, a.at, -1)));
  // The plane of the first bend, on which the tube is laid.
  const up = unit(outer(first.along, arcs[0]!.at(-1)!.along));
  const chord = ['End to end, centre to centre', apart(endA.at, endB.at)] as const;
  if (count === 1) {
    return new Map([
      ['Overall, along the leg of end A', over(all, first.along)],
      ['Overall, square to that leg', over(all, outer(up, first.along))],
      chord,
    ]);
  }
  const ends = add(endB.at, endA.at, -1);
  const across = unit(add(ends, up, -inner(ends, up)));
  // On a bench that the first bend lies flat on, heights of centres against that of the bend's.
  const levels = all.map(({ at }) => inner(add(at, first.at, -1), up));
  const heights = levels.map((level) => Math.abs(level));
  const farthest = Math.max(...heights);
  const endStands = farthest - heights.at(-1)! < 0.05;
  // Whoever goes round the bend from end A, with this normal up, turns left.
  const level = endStands ? levels.at(-1)! : levels[heights.indexOf(farthest)]!;
  const flat = `Flat, bend 1 to the ${level > 0 ? 'left' : 'right'} from A`;
  const laid = farthest > 0.5;
  const standing = !laid
    ? 'Flat on bend 1: stands off the bench by'
    : `${flat}: ${endStands ? 'height of end B' : 'greatest height'}, centre to centre`;
  // Both legs seen from the bends; within 60 degrees of each other they are measured across.
  const alike = -inner(endA.along, endB.along) >= 0.5;
  return new Map([
    // Of a tube that lies flat the tape goes straight across; else between squares on the bench, where all is plumbed down.
    laid
      ? ['Flat on bend 1, plumbed down: outside width along ends', over(all, across)]
      : ['Overall width, along both ends', over(all, unit(ends))],
    laid
      ? ['Flat on bend 1, plumbed down: outside, square to that', over(all, outer(up, across))]
      : ['Overall height, square to that', over(all, outer(up, unit(ends)))],
    ...(alike
      ? ([
          ['Leg to leg at the ends, outside', between(endA, endB)],
          [`Leg to leg, bend 1’s A side to bend ${count}’s B side, outside`, between(first, last)],
        ] as const)
      : []),
    chord,
    [`End A to bend ${count}’s B side, centre to centre`, apart(endA.at, last.at)],
    ['End B to bend 1’s A side, centre to centre', apart(endB.at, first.at)],
    [standing, farthest],
  ]);
}
