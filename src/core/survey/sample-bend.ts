/**
 * A piece of bent scrap held into the corner of roof and pillar, in the plane that the hoop will stand in (common practice): from what a rule reads between
 * its legs and the car come the lines of roof and pillar, the bend that runs along both, where that bend has to begin, and what air it leaves.
 *
 * Flat, in the scrap's own axes: its roof leg's centreline lies along x up to the bend, which begins at 0 and turns down, away from y; the pillar leg
 * goes on from its end. Gaps are read square to a leg, from the tube's outside to roof or pillar, at a distance along the leg from where the bend
 * begins or ends. Lengths mm, angles radians. A leg with one gap is taken to lie along its side of the car.
 */
import type { Radians } from '../geometry/angle.ts';

export type Leg = 'roof' | 'pillar';

export interface GapRead {
  readonly leg: Leg;
  /** mm along the leg, from the end of the bend that it begins at. */
  readonly along: number;
  /** mm, from the tube's outside; 0 where it touches. */
  readonly gap: number;
}

export interface SampleBend {
  /** Centreline radius of the scrap's bend, and of the one to be made: the die's. */
  readonly radius: number;
  readonly outerDiameter: number;
  /** How far the scrap turns. */
  readonly angle: Radians;
  readonly gaps: readonly GapRead[];
  /** mm from the outside of the bend's middle to whatever is nearest there, the rail; null where nobody read it. */
  readonly rail: number | null;
  /** mm of air that is wanted between the tube and roof and pillar. */
  readonly air: number;
}

export type Flat = readonly [number, number];

export interface FittedBend {
  /** The bend whose legs run along roof and pillar. */
  readonly angle: Radians;
  /** One standard deviation of it, with gaps read to `READ` mm; null where a leg was read once. */
  readonly deviation: Radians | null;
  /** How far roof and pillar each turn away from the scrap's leg, towards a greater bend. */
  readonly off: Readonly<Record<Leg, Radians>>;
  /** mm along roof, and along pillar, from the corner where both would meet to where the bend begins and ends. */
  readonly fromCorner: number;
  /** mm left between the bend and the rail; below 0 where it would not fit. Null where nobody read the rail. */
  readonly railAir: number | null;
  /** In the scrap's axes: where roof and pillar meet, the corner of the bend's centreline, its middle point of turning. */
  readonly corner: Flat;
  readonly centrelineCorner: Flat;
  readonly centre: Flat;
  /** Unit vectors along roof towards the corner, and along pillar from it. */
  readonly roof: Flat;
  readonly pillar: Flat;
  /** Where the rail is. */
  readonly railAt: Flat | null;
}

/** Why nothing comes of it. */
export type NoBend = 'no-gap' | 'same-place' | 'no-corner';

/** mm. What a rule reads a gap to, one standard deviation (common practice). */
export const READ = 0.7;

/** mm. Gaps nearer along a leg than this say nothing of its angle. */
const APART = 20;

/** Radians. A bend of less, or one that nearly doubles back, is no corner of roof and pillar. */
const LEAST_TURN = 0.02;

/** What the gaps come to, or why nothing comes of them. mm and radians, the scrap's own axes. */
export function fitSampleBend(sample: SampleBend): FittedBend | NoBend {
  const { radius, outerDiameter, angle, air } = sample;
  const sides = { roof: sideOf(sample, 'roof'), pillar: sideOf(sample, 'pillar') };
  if (typeof sides.roof === 'string') return sides.roof;
  if (typeof sides.pillar === 'string') return sides.pillar;
  const { roof, pillar } = sides as Readonly<Record<Leg, Side>>;
  const turn = angle + roof.off + pillar.off;
  if (!(turn > LEAST_TURN) || !(turn < Math.PI - LEAST_TURN)) return 'no-corner';
  const corner = meet(roof, pillar);
  const stand = air + outerDiameter / 2;
  const half = Math.tan(turn / 2);
  // Square to either line inwards by as much: back along the roof, and in.
  const inwards: Flat = [roof.way[1], -roof.way[0]];
  const back = (by: number, from: Flat): Flat => plus(from, roof.way, -by);
  const centrelineCorner = plus(back(stand * half, corner), inwards, stand);
  const centre = plus(back(radius * half, centrelineCorner), inwards, radius);
  const middle: Flat = [Math.sin(angle / 2), Math.cos(angle / 2)];
  const railAt = sample.rail === null ? null : plus([0, -radius], middle, radius + outerDiameter / 2 + sample.rail);
  return {
    angle: turn,
    deviation: roof.spread === null || pillar.spread === null ? null : Math.hypot(roof.spread, pillar.spread),
    off: { roof: roof.off, pillar: pillar.off },
    fromCorner: (radius + stand) * half,
    railAir:
      railAt === null ? null : Math.hypot(railAt[0] - centre[0], railAt[1] - centre[1]) - radius - outerDiameter / 2,
    corner,
    centrelineCorner,
    centre,
    roof: roof.way,
    pillar: pillar.way,
    railAt,
  };
}

interface Side {
  /** A place on it, and the way along it: towards the corner on the roof, from it on the pillar. */
  readonly at: Flat;
  readonly way: Flat;
  readonly off: Radians;
  readonly spread: Radians | null;
}

/** The straight line through the gaps of one leg, by least squares where there are more than two. */
function sideOf({ radius, outerDiameter, angle, gaps }: SampleBend, leg: Leg): Side | NoBend {
  const own = gaps.filter((each) => each.leg === leg);
  if (own.length === 0) return 'no-gap';
  const along = own.reduce((sum, each) => sum + each.along, 0) / own.length;
  const gap = own.reduce((sum, each) => sum + each.gap, 0) / own.length;
  const spread = own.reduce((sum, each) => sum + (each.along - along) ** 2, 0);
  if (own.length > 1 && Math.max(...own.map((each) => Math.abs(each.along - along))) < APART / 2) return 'same-place';
  const slope =
    own.length === 1 ? 0 : own.reduce((sum, each) => sum + (each.along - along) * (each.gap - gap), 0) / spread;
  const [way, out, from]: readonly [Flat, Flat, Flat] =
    leg === 'roof'
      ? [
          [-1, 0],
          [0, 1],
          [0, 0],
        ]
      : [
          [Math.cos(angle), -Math.sin(angle)],
          [Math.sin(angle), Math.cos(angle)],
          [radius * Math.sin(angle), -radius * (1 - Math.cos(angle))],
        ];
  // Away from the bend along the leg, the gap grows by `slope` a mm: there the car falls away from it.
  const size = Math.hypot(1, slope);
  const away: Flat = [(way[0] + slope * out[0]) / size, (way[1] + slope * out[1]) / size];
  return {
    at: plus(plus(from, way, along), out, outerDiameter / 2 + gap),
    way: leg === 'roof' ? [-away[0], -away[1]] : away,
    off: -Math.atan(slope),
    spread: own.length === 1 ? null : READ / Math.sqrt(spread),
  };
}

const plus = (a: Flat, way: Flat, by: number): Flat => [a[0] + by * way[0], a[1] + by * way[1]];

/** Where two lines meet that do not run alike. */
function meet(a: Side, b: Side): Flat {
  const across = a.way[0] * b.way[1] - a.way[1] * b.way[0];
  const [dx, dy] = [b.at[0] - a.at[0], b.at[1] - a.at[1]];
  return plus(a.at, a.way, (dx * b.way[1] - dy * b.way[0]) / across);
}
