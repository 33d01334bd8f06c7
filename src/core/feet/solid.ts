/**
 * A foot as solids, one for each of its pieces: a cross-section, pushed straight along the foot's other axis. Places are mm on the foot: the
 * section's are out along its axis and up from the car. Holes are left out of the section: whoever cuts or draws them has them from the foot.
 */
import { toRadians } from '../geometry/angle.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { kinkAxis, kinkSetBack, type Kink } from '../job/kinds/kink.ts';
import { heightOf, type Foot } from '../job/kinds/foot.ts';
import { wallOf, type Blank } from './blanks.ts';

export interface Prism {
  readonly part: Blank['part'];
  /** The way its section runs: 0 along the foot, 1 across it. */
  readonly axis: 0 | 1;
  /** Lower and upper face, opposite to one another, from the section's one end to its other. */
  readonly section: readonly Station[];
  /** From where to where it is pushed along the other axis. */
  readonly from: number;
  readonly to: number;
}

export interface Station {
  readonly low: readonly [out: number, up: number];
  readonly high: readonly [out: number, up: number];
}

/** Radians from one station to the next round a bend: 5 degrees, seen by nobody at the size of a plate. */
const STEP = (5 * Math.PI) / 180;

/** The pieces of a foot; a bend as flats of 5 degrees or less. */
export function prismsOf(foot: Foot): readonly Prism[] {
  const [a, c] = [foot.size[0] / 2, foot.size[1] / 2];
  if (foot.kind === 'plate') {
    if (foot.kink !== undefined && foot.kink.angle !== 0) return [bentPlate(foot, foot.kink)];
    return [slab('plate', [-a, a], [0, foot.thickness], [-c, c])];
  }
  const wall = wallOf(foot);
  const top = slab('top', [-a, a], [foot.height, heightOf(foot)], [-c, c]);
  const up = [0, foot.height] as const;
  const alongRuns = foot.size[0] >= foot.size[1];
  const sides = [-1, 1] as const;
  // The long walls run over the whole side, the short ones between them.
  const [outA, outC] = alongRuns ? [a, c - wall] : [a - wall, c];
  const left = sides.map((side) =>
    slab(alongRuns ? 'long-wall' : 'short-wall', [-outA, outA], up, atEdge(side, c, wall)),
  );
  const ends = sides.map((side) =>
    slab(alongRuns ? 'short-wall' : 'long-wall', atEdge(side, a, wall), up, [-outC, outC]),
  );
  return [top, ...left, ...ends];
}

type Span = readonly [number, number];

const atEdge = (side: -1 | 1, edge: number, wall: number): Span =>
  side < 0 ? [-edge, wall - edge] : [edge - wall, edge];

const slab = (part: Blank['part'], along: Span, up: Span, across: Span): Prism => ({
  part,
  axis: 0,
  section: along.map((out) => ({ low: [out, up[0]], high: [out, up[1]] })),
  from: across[0],
  to: across[1],
});

/** The first flat, the bend as rings about its centre, and the second flat. */
function bentPlate(foot: Foot, kink: Kink): Prism {
  const axis = kinkAxis(kink);
  const { thickness } = foot;
  const half = foot.size[axis] / 2;
  const setBack = kinkSetBack(foot, kink);
  const begins = Math.abs(kink.at) - setBack;
  const turn = toRadians(Math.abs(kink.angle));
  const falls = kink.angle >= 0;
  // The centre lies below a bend that falls, above one that rises.
  const centre = falls ? -kink.radius : thickness + kink.radius;
  const station = (angle: number, on: number): Station => {
    const [s, k] = [Math.sin(angle), Math.cos(angle)];
    const face = (radius: number): readonly [number, number] => [
      begins + radius * s + on * k,
      falls ? centre + radius * k - on * s : centre - radius * k + on * s,
    ];
    const [inner, outer] = [face(kink.radius), face(kink.radius + thickness)];
    return falls ? { low: inner, high: outer } : { low: outer, high: inner };
  };
  const steps = Math.max(1, Math.ceil(turn / STEP));
  const stations: Station[] = [
    { low: [-half, 0], high: [-half, thickness] },
    ...Array.from({ length: steps + 1 }, (_, i) => station((turn * i) / steps, 0)),
    station(turn, half - Math.abs(kink.at) - setBack),
  ];
  const other = foot.size[axis === 0 ? 1 : 0] / 2;
  const outwards = ([out, up]: readonly [number, number]): readonly [number, number] => [Math.sign(kink.at) * out, up];
  const section =
    kink.at > 0
      ? stations
      : stations.map(({ low, high }) => ({ low: outwards(low), high: outwards(high) })).toReversed();
  return { part: 'plate', axis, section, from: -other, to: other };
}

/** A place of a prism's section, so far along the other axis, as [along, across, up] of the foot. */
export const inPrism = ({ axis }: Prism, [out, up]: readonly [number, number], aside: number): Vec3 =>
  axis === 0 ? [out, aside, up] : [aside, out, up];
