/**
 * The first touch of a bend's whole sweep: of the tube with the machine, with the room, with itself.
 *
 * Nothing is sampled. At an angle the distance to a solid is known from below; nothing can come nearer by more than its
 * speed, mm a radian; so the machine may be turned by distance / speed, and nothing has been touched on the way. That is done again until
 * the end of the sweep or until CONTACT is left (docs/maths/rehearsal.md). In front a place at rho from the die's axis moves by
 * rho a radian, behind all slides by the centreline radius. What never comes nearer (the front to the floor, to what turns with
 * it and to what is round about the same axis) is asked once. Arcs are chords with their sag taken off, split where
 * that decides. A tube that comes within TOUCH counts as touching; one that stays TOUCH + 0.02 mm off never does.
 *
 * In the tools' grip, and not asked about die, clamp and follower: the straights next to the bend. Nor is the arc that follows such a straight
 * asked about the die, whose groove it starts in: it only leads away from the die's axis.
 */
import type { Radians } from '../geometry/angle.ts';
import { arcPiece, type Path } from '../geometry/path.ts';
import { X_AXIS, Z_AXIS, type Vec3 } from '../geometry/vector.ts';
import type { BendStep } from '../job/types.ts';
import { dieCentre, machineOf, roomOf, sideOf } from './machine.ts';
import { distanceBetween, distanceTo, nearestShare, other, segment } from './nearest.ts';
import { layFront, layRear, type BendableTube } from './pose.ts';
import { halvesOf, stretchesOf, type Stretch } from './stretch.ts';
import type { Hit, Solid } from './types.ts';

/** mm. What comes as near as this counts as touched: a made tube is no truer. */
export const TOUCH = 0.1;
/** mm. A distance left that is as good as none. */
const CONTACT = 0.01;
/** mm. A chord this near to its arc is not split again. */
const FINE = 0.005;

/** What can be touched, with the upright slice of space that it stays in: its heights, and how far from the die's axis. */
interface Obstruction extends Extent {
  readonly solid: Solid;
}

/** Bounds in bender axes: along x and y, of height, and of the distance from the die's axis. */
interface Extent {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  readonly low: number;
  readonly high: number;
  readonly near: number;
  readonly far: number;
}

/** All that is the same for every bend of a tube. */
export interface Surroundings {
  readonly obstructions: readonly Obstruction[];
  readonly radius: number;
  readonly side: 1 | -1;
  /** Where the die's axis is; it is at x = 0. */
  readonly axisY: number;
  readonly plane: number;
  readonly tubeRadius: number;
  /** Places of the tube nearer to one another along it than this cannot touch: no bend is tight enough. mm. */
  readonly looseLength: number;
  /** As near as this along it they are one piece of tube. mm. */
  readonly nextLength: number;
}

export interface Side {
  readonly stretches: readonly (Stretch & Extent)[];
  /** Pieces that lie in the tools' grip: the straight next to the bend. */
  readonly held: number;
}

export function surroundingsOf({ die, section, bends }: BendableTube): Surroundings {
  const { bender } = die;
  const axisY = dieCentre(die, bender)[1];
  // Of all curves with at most this curvature a circle brings two of its places the nearest together (Schur's theorem).
  const least = Math.min(die.centrelineRadius, ...bends.map((bend) => bend.radius));
  const neighbour = 2 * least * Math.asin(Math.min(1, (section.outerDiameter + 2 * TOUCH) / (2 * least)));
  const solids = [...machineOf(die, section), ...roomOf(bender)];
  return {
    obstructions: solids.map((solid) => ({ solid, ...extentOfSolid(solid, axisY) })),
    radius: die.centrelineRadius,
    side: sideOf(bender),
    axisY,
    plane: bender.planeHeight,
    tubeRadius: section.outerDiameter / 2,
    looseLength: 2 * Math.PI * least - neighbour,
    nextLength: neighbour,
  };
}

/** One side of the bend, as layFront and layRear lay it. */
export function sideAlong(path: Path, { axisY }: Surroundings): Side {
  const stretches = stretchesOf(path).map((stretch): Stretch & Extent => {
    const { from, to, sag } = stretch;
    return Object.assign(stretch, extent(from, to, sag, axisY), { near: nearAxis(from, to, axisY) - sag });
  });
  return { stretches, held: path.pieces[0]!.kind === 'line' ? 1 : 0 };
}

/** The first touch of the whole tube at one step, the machine being turned from 0 to `angle`; null where there is none. */
export function firstHit(tube: BendableTube, made: ReadonlySet<number>, step: BendStep, angle: Radians): Hit | null {
  const around = surroundingsOf(tube);
  const front = sideAlong(layFront(tube, made, step), around);
  const rear = sideAlong(layRear(tube, made, step), around);
  return firstOf(front, rear, frontHit(front, angle, around), rearHit(rear, angle, around), angle, around);
}

/** The first touch of all, where those of front and rear with machine and room are known. */
export function firstOf(
  front: Side,
  rear: Side,
  ofFront: Hit | null,
  ofRear: Hit | null,
  angle: Radians,
  around: Surroundings,
): Hit | null {
  const hit = sooner(ofFront, ofRear);
  return sooner(hit, selfHit(front, rear, hit?.angle ?? angle, around));
}

const sooner = (one: Hit | null, two: Hit | null): Hit | null =>
  one === null || (two !== null && two.angle < one.angle) ? two : one;

/** The first touch of what is in front with machine or room, the machine being turned from 0 to `angle`. */
export function frontHit(front: Side, angle: Radians, around: Surroundings): Hit | null {
  const reach = around.tubeRadius + TOUCH;
  let soonest: Hit | null = null;
  for (const each of around.obstructions) {
    const { solid, low, high, near, far } = each;
    const exempt = exemptPieces(solid, front);
    for (const stretch of front.stretches) {
      if (stretch.piece < exempt) continue;
      if (stretch.low - reach > high || stretch.high + reach < low) continue;
      if (stretch.near - reach > far || stretch.far + reach < near) continue;
      const speed = swingSpeed(stretch, each);
      const motion = solid.turning || speed === 0 ? 'still' : 'swings';
      const until: number = soonest?.angle ?? angle;
      const found = firstTouch(stretch, solid, motion, speed, 0, until, around);
      if (found < until || (found === until && soonest === null)) {
        soonest = { angle: found, solid: solid.name, by: 'front', at: touchedAt('swings', found, around) };
      }
    }
  }
  return soonest;
}

/** The same of what is behind. */
export function rearHit(rear: Side, angle: Radians, around: Surroundings): Hit | null {
  const reach = around.tubeRadius + TOUCH;
  const slide = around.radius * angle;
  let soonest: Hit | null = null;
  for (const { solid, x0, x1, y0, y1, low, high, far } of around.obstructions) {
    const exempt = exemptPieces(solid, rear);
    for (const stretch of rear.stretches) {
      if (stretch.piece < exempt) continue;
      if (stretch.low - reach > high || stretch.high + reach < low) continue;
      if (stretch.y0 - reach > y1 || stretch.y1 + reach < y0) continue;
      if (stretch.x0 - reach > x1 || stretch.x1 + slide + reach < x0) continue;
      const passes = solid.turning && solid.shape.kind === 'box';
      const speed = passes
        ? around.radius + far
        : solid.shape.kind === 'plane'
          ? around.radius * Math.abs(solid.shape.normal[0])
          : around.radius;
      const until: number = soonest?.angle ?? angle;
      const found = firstTouch(stretch, solid, passes ? 'passes' : 'slides', speed, 0, until, around);
      if (found < until || (found === until && soonest === null)) {
        soonest = { angle: found, solid: solid.name, by: 'rear', at: touchedAt('slides', found, around) };
      }
    }
  }
  return soonest;
}

/** The first touch of the tube with itself: front with rear, and either with the arc that is being made. */
function selfHit(front: Side, rear: Side, angle: Radians, around: Surroundings): Hit | null {
  const { radius, side, axisY, plane, looseLength, nextLength } = around;
  const reach = 2 * around.tubeRadius + TOUCH;
  const slide = radius * angle;
  const soonest: { hit: Hit | null } = { hit: null };
  const ask = (one: Stretch, two: Stretch, moves: Moves, speed: number, from: number, by: 'front' | 'rear') => {
    const until: number = soonest.hit?.angle ?? angle;
    const found = firstMeeting(one, two, moves, speed, from, until, around);
    if (found < until || (found === until && soonest.hit === null)) {
      soonest.hit = { angle: found, solid: null, by, at: touchedAt(moves[0], found, around) };
    }
  };
  const reached = rear.stretches.map((stretch) =>
    ringOf(stretch.x0, stretch.x1 + slide, stretch.y0, stretch.y1, axisY),
  );
  for (const one of front.stretches) {
    rear.stretches.forEach((two, i) => {
      if (one.piece < front.held && two.piece < rear.held) return;
      if (one.ends + two.ends <= looseLength || one.begins + two.begins < nextLength) return;
      if (one.low - reach > two.high || one.high + reach < two.low) return;
      if (one.near - reach > reached[i]!.far || one.far + reach < reached[i]!.near) return;
      ask(one, two, SWING_PAST, one.far + radius, 0, 'front');
    });
  }
  const arc = arcPiece([0, 0, plane], X_AXIS, [Z_AXIS[0], Z_AXIS[1], side], radius, angle, 0);
  for (const made of stretchesOf({ pieces: [arc], length: arc.length })) {
    // Of the arc, so much is there only from this angle on.
    const from = made.begins / radius;
    for (const one of front.stretches) {
      if (one.piece < front.held + 1 || one.ends + slide - made.begins <= looseLength) continue;
      if (one.low - reach > plane || one.high + reach < plane) continue;
      if (one.near - reach > radius || one.far + reach < radius - made.sag) continue;
      ask(one, made, SWING_IN, one.far, from, 'front');
    }
    for (const one of rear.stretches) {
      if (one.piece < rear.held + 1 || one.ends + made.ends <= looseLength) continue;
      if (one.low - reach > plane || one.high + reach < plane) continue;
      ask(one, made, SLIDE_IN, radius, from, 'rear');
    }
  }
  return soonest.hit;
}

function exemptPieces({ part }: Solid, { held }: Side): number {
  if (part === 'die') return held + 1;
  return part === 'clamp' || part === 'follower' ? held : 0;
}

/** How fast the distance to the solid can change at most, mm a radian, for what goes round with the die. */
function swingSpeed({ far }: Extent, { solid }: Obstruction): number {
  // Die and column stand about the same axis.
  if (solid.turning || solid.part === 'column') return 0;
  return solid.shape.kind === 'plane' ? Math.hypot(solid.shape.normal[0], solid.shape.normal[1]) * far : far;
}

/** How a stretch moves as the machine is turned; 'passes': it slides, seen from the die that turns. */
type Motion = 'still' | 'swings' | 'slides' | 'passes';
type Moves = readonly [Motion, Motion];
const SWING_PAST: Moves = ['swings', 'slides'];
const SWING_IN: Moves = ['swings', 'still'];
const SLIDE_IN: Moves = ['slides', 'still'];

/** The stretch that was last found to touch, and where on it. */
let touching: Stretch | null = null;
let touchingShare = 0;

/** The least angle from `from` to `until` at which the stretch touches the solid, or Infinity. */
function firstTouch(
  stretch: Stretch,
  solid: Solid,
  motion: Motion,
  speed: number,
  from: Radians,
  until: Radians,
  around: Surroundings,
): Radians {
  const taken = stretch.sag + around.tubeRadius + TOUCH;
  for (let angle = from; angle <= until;) {
    put(segment, stretch, motion, angle, around);
    const clear = distanceTo(solid) - taken;
    if (clear > CONTACT) {
      angle += clear / speed;
    } else if (stretch.sag <= FINE) {
      touching = stretch;
      touchingShare = nearestShare;
      return angle;
    } else {
      const [one, two] = halvesOf(stretch);
      const first = firstTouch(one, solid, motion, speed, angle, until, around);
      return Math.min(first, firstTouch(two, solid, motion, speed, angle, Math.min(first, until), around));
    }
  }
  return Infinity;
}

/** The same for two stretches of the tube. */
function firstMeeting(
  one: Stretch,
  two: Stretch,
  moves: Moves,
  speed: number,
  from: Radians,
  until: Radians,
  around: Surroundings,
): Radians {
  const taken = one.sag + two.sag + 2 * around.tubeRadius + TOUCH;
  for (let angle = from; angle <= until;) {
    put(segment, one, moves[0], angle, around);
    put(other, two, moves[1], angle, around);
    const clear = distanceBetween() - taken;
    if (clear > CONTACT) {
      angle += clear / speed;
    } else if (one.sag <= FINE && two.sag <= FINE) {
      touching = one;
      touchingShare = nearestShare;
      return angle;
    } else {
      const pairs =
        one.sag >= two.sag
          ? halvesOf(one).map((part) => [part, two] as const)
          : halvesOf(two).map((part) => [one, part] as const);
      let first = Infinity;
      for (const [a, b] of pairs) {
        first = Math.min(first, firstMeeting(a, b, moves, speed, angle, Math.min(first, until), around));
      }
      return first;
    }
  }
  return Infinity;
}

/** Where the touch last found is on the centreline. */
function touchedAt(motion: Motion, angle: Radians, around: Surroundings): Vec3 {
  put(segment, touching!, motion, angle, around);
  const between = (k: number): number => segment[k]! + touchingShare * (segment[k + 3]! - segment[k]!);
  return [between(0), between(1), between(2)];
}

/** Writes the ends of the stretch as they are at this angle. */
function put(into: Float64Array, { from, to }: Stretch, motion: Motion, angle: Radians, around: Surroundings): void {
  const { axisY, side, radius } = around;
  const slide = motion === 'slides' || motion === 'passes' ? radius * angle : 0;
  into[0] = from[0] + slide;
  into[1] = from[1];
  into[2] = from[2];
  into[3] = to[0] + slide;
  into[4] = to[1];
  into[5] = to[2];
  if (motion === 'still' || motion === 'slides') return;
  const turn = motion === 'swings' ? side * angle : -side * angle;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  for (let k = 0; k < 6; k += 3) {
    const [x, y] = [into[k]!, into[k + 1]! - axisY];
    into[k] = c * x - s * y;
    into[k + 1] = axisY + s * x + c * y;
  }
}

/** Bounds of what lies within `margin` of a straight from one place to another. */
function extent(from: Vec3, to: Vec3, margin: number, axisY: number): Extent {
  const low = (k: 0 | 1 | 2): number => Math.min(from[k], to[k]) - margin;
  const high = (k: 0 | 1 | 2): number => Math.max(from[k], to[k]) + margin;
  const far = Math.max(Math.hypot(from[0], from[1] - axisY), Math.hypot(to[0], to[1] - axisY)) + margin;
  return { x0: low(0), x1: high(0), y0: low(1), y1: high(1), low: low(2), high: high(2), near: 0, far };
}

/** How near to the die's axis, seen from above, a straight comes. */
function nearAxis([x, y]: Vec3, [toX, toY]: Vec3, axisY: number): number {
  const [u, v] = [toX - x, toY - y];
  const square = u * u + v * v;
  const share = square > 0 ? Math.min(Math.max(-(x * u + (y - axisY) * v) / square, 0), 1) : 0;
  return Math.hypot(x + share * u, y - axisY + share * v);
}

/** How near to the die's axis and how far from it a rectangle reaches, seen from above. */
function ringOf(x0: number, x1: number, y0: number, y1: number, axisY: number): { near: number; far: number } {
  const far = Math.hypot(Math.max(Math.abs(x0), Math.abs(x1)), Math.max(Math.abs(y0 - axisY), Math.abs(y1 - axisY)));
  return { near: Math.hypot(Math.max(x0, -x1, 0), Math.max(y0 - axisY, axisY - y1, 0)), far };
}

function extentOfSolid({ shape, turning }: Solid, axisY: number): Extent {
  if (shape.kind === 'plane') {
    const all = { x0: -Infinity, x1: Infinity, y0: -Infinity, y1: Infinity, low: -Infinity, high: Infinity };
    return { ...all, near: 0, far: Infinity };
  }
  const half =
    shape.kind === 'box'
      ? ([0, 1, 2] as const).map((k) => shape.axes.reduce((sum, way, i) => sum + Math.abs(way[k]) * shape.half[i]!, 0))
      : [shape.radius, shape.radius, shape.halfHeight];
  const [x, y, z] = shape.centre;
  const [low, high] = [z - half[2]!, z + half[2]!];
  const ring = ringOf(x - half[0]!, x + half[0]!, y - half[1]!, y + half[1]!, axisY);
  if (turning) return { x0: -ring.far, x1: ring.far, y0: axisY - ring.far, y1: axisY + ring.far, low, high, ...ring };
  return { x0: x - half[0]!, x1: x + half[0]!, y0: y - half[1]!, y1: y + half[1]!, low, high, ...ring };
}
