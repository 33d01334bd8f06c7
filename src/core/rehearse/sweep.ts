/**
 * The first touch of a bend's whole sweep: of the tube with the machine, with the room, with itself.
 *
 * In front a place at rho from the die's axis moves by rho a radian; behind, all slides by the centreline radius. What
 * never comes nearer (the front to the floor, to what turns with it and to what is round about the same axis) is asked
 * once. A tube that comes within TOUCH counts as touching; one that stays TOUCH + 0.03 mm off never does.
 *
 * The straights next to the bend are not asked about clamp and follower, in whose grip they lie.
 */
import type { Radians } from '../geometry/angle.ts';
import { arcPiece } from '../geometry/path.ts';
import { X_AXIS, Z_AXIS } from '../geometry/vector.ts';
import type { BendStep } from '../job/kinds/bent.ts';
import { firstMeeting, firstTouch, touchedAt, type Moves } from './advance.ts';
import { type BendableTube } from './bendable.ts';
import { layFront, layRear } from './pose.ts';
import { stretchesOf, type Stretch } from './stretch.ts';
import {
  ringOf,
  sideAlong,
  surroundingsOf,
  TOUCH,
  type Extent,
  type Obstruction,
  type Side,
  type Surroundings,
} from './surroundings.ts';
import type { Hit, Solid } from './types.ts';

const SWING_PAST: Moves = ['swings', 'slides'];
const SWING_IN: Moves = ['swings', 'still'];
const SLIDE_IN: Moves = ['slides', 'still'];

/**
 * The first touch of the whole tube at one step, the machine being turned from 0 to `angle`; null where there is none.
 */
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
      const found = firstTouch(stretch, each, motion, speed, 0, until, around);
      if (found < until || (found === until && soonest === null)) {
        soonest = { angle: found, solid: solid.id, by: 'front', at: touchedAt('swings', found, around) };
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
  for (const each of around.obstructions) {
    const { solid, x0, x1, y0, y1, low, high, far } = each;
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
      const found = firstTouch(stretch, each, passes ? 'passes' : 'slides', speed, 0, until, around);
      if (found < until || (found === until && soonest === null)) {
        soonest = { angle: found, solid: solid.id, by: 'rear', at: touchedAt('slides', found, around) };
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

function exemptPieces({ id: { part } }: Solid, { held }: Side): number {
  return part === 'clamp' || part === 'follower' ? held : 0;
}

/** How fast the distance to the solid can change at most, mm a radian, for what goes round with the die. */
function swingSpeed({ far }: Extent, { solid }: Obstruction): number {
  // Die and column stand about the same axis.
  if (solid.turning || solid.id.part === 'column') return 0;
  return solid.shape.kind === 'plane' ? Math.hypot(solid.shape.normal[0], solid.shape.normal[1]) * far : far;
}
