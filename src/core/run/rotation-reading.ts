/**
 * How the rotation before a bend is set on the machine: what is turned, which way as seen from where, and what a digital level, a
 * degree wheel and the line scribed along the tube then show (docs/maths/marks.md).
 *
 * The bend plane is level and stands still; what turns is the tube, whole, about the straight of it that lies in the feed. The zero is
 * where the bend that the rotation counts from lies level, with its leg (what of the tube is beyond it, seen from the die) out to
 * the side that the machine bends to: as it was made, if it was made last with the same end in front. All is seen from behind: from
 * the side of the end that is not in front, looking along the feed at the die. For a plane that has to come out turned right-hand
 * about the direction away from the end in front the tube itself is turned the other way about it, which is clockwise so seen.
 *
 * A bar clamped square across the straight in the feed turns with the tube, and a level on it reads the turn: 0 to 90, and down
 * again past plumb. A level laid along the leg reads less, since the leg does not stand square to the axis it is turned about:
 * asin(sin t sin turn), t the leg's bend angle.
 */
import { toDegrees, toRadians, wrapHalfTurn, type Degrees, type Radians } from '../geometry/angle.ts';
import { FIRST_BENDER } from '../job/kinds/bender.ts';
import type { Bender } from '../job/kinds/bender.ts';
import type { BendStep } from '../job/kinds/bent.ts';
import { beyondNode } from '../solve/amount.ts';
import { rotationBefore, rotationBetween } from '../solve/bend-order.ts';
import type { SolvedTube } from '../solve/types.ts';
import { onStep } from '../units/angle.ts';

export interface RotationReading {
  readonly by: Bender['rotationBy'];
  /** The bend that lies level at zero, 1 = first from end A, and the side that its leg points to. */
  readonly zeroOn: number;
  readonly legTo: Bender['turns'];
  /** No bender is set up for this die: that it bends to that side is assumed. */
  readonly assumed: boolean;
  /** The zero is how the tube lies in the machine: that bend was made last, with the same end in front. */
  readonly asItLies: boolean;
  /** Rounded to what the level or the wheel shows, 0 to 180; `off` is the exact turn less that. */
  readonly turn: Degrees;
  readonly off: Degrees;
  /** Null at 0 and at half a turn. */
  readonly sense: 'clockwise' | 'anticlockwise' | null;
  /** The end that is not in front. */
  readonly seenFrom: 'A' | 'B';
  /** Where on the tube the level's bar or the wheel sits; null where the machine leaves no straight in the feed long enough. */
  readonly sits: Seat | null;
  /** What is read there: of a wheel the turn; of a level 0 to 90. */
  readonly reads: Degrees;
  /** The level's bar then leans past plumb. */
  readonly pastPlumb: boolean;
  /** What a level laid along the leg reads, 0 to 90; null where the leg is too short for one. */
  readonly alongLeg: Degrees | null;
  /** Where a line then stands that was scribed on top when the first bend was made: clockwise from the top, (-180, 180], exact. */
  readonly line: Degrees;
  /** The same round the tube's surface, mm, no sign. */
  readonly lineRound: number;
}

/** Of the straight that lies in the feed: behind the die or in front of the clamp, as far as the bend `before`, or as the tube's end. */
export interface Seat {
  readonly where: 'behind' | 'in-front';
  readonly before: number | null;
}

/** mm of straight that a bar with its clamp, or a wheel, takes; and that a level laid along a leg wants. Common practice. */
const BAR = 40;
const LEVEL = 100;

/** Before the step at `index` of an order of bending; null on the first, which may lie any way. */
export function rotationReading(tube: SolvedTube, steps: readonly BendStep[], index: number): RotationReading | null {
  const step = steps[index]!;
  const turned = rotationBefore(tube.bends, steps, index);
  if (turned === null) return null;
  const { from, rotation } = turned;
  const before = steps[index - 1]!;
  const bender = tube.die?.bender ?? FIRST_BENDER;
  const made = new Set(steps.slice(0, index).map(({ bend }) => bend));
  const byLevel = bender.rotationBy === 'level';
  const exact = Math.abs(toDegrees(rotation));
  const turn = Math.min(180, onStep(exact, byLevel ? bender.levelStep : bender.wheelStep));
  const line = toDegrees(scribedLine(tube, steps[0]!, step));
  return {
    by: bender.rotationBy,
    zeroOn: from,
    legTo: bender.turns,
    assumed: tube.die?.bender === undefined,
    asItLies: before.bend === from && before.front === step.front,
    turn,
    off: exact - turn,
    sense: turn === 0 || turn === 180 ? null : rotation > 0 ? 'clockwise' : 'anticlockwise',
    seenFrom: step.front === 'A' ? 'B' : 'A',
    sits: seatOn(tube, made, step),
    reads: byLevel && turn > 90 ? 180 - turn : turn,
    pastPlumb: byLevel && turn > 90,
    alongLeg:
      legLength(tube, made, from, step.bend) < LEVEL ? null : onStep(leanOfLeg(tube, from, turn), bender.levelStep),
    line,
    lineRound: (Math.abs(line) * Math.PI * tube.section.outerDiameter) / 360,
  };
}

/** Of the leg itself against the floor: its direction is (cos t, sin t cos turn, sin t sin turn). */
function leanOfLeg({ bends }: SolvedTube, of: number, turn: Degrees): Degrees {
  const { angle } = bends[of - 1]!;
  return toDegrees(Math.asin(Math.min(1, Math.sin(angle) * Math.sin(toRadians(turn)))));
}

/** On top at the first bend made; underneath once the tube is turned end for end, with that bend level and its leg on the same side. */
function scribedLine({ bends }: SolvedTube, first: BendStep, { bend, front }: BendStep): Radians {
  const turned = rotationBetween(bends, first.bend, bend) * (front === 'A' ? 1 : -1);
  return wrapHalfTurn(turned + (front === first.front ? 0 : Math.PI));
}

/** Behind the die where there is room, since the tube is held there to be turned; else in front of the clamp. */
function seatOn(tube: SolvedTube, made: ReadonlySet<number>, { bend, front }: BendStep): Seat | null {
  const { leastGrip, leastStraight } = tube.die!;
  const back = front === 'A' ? 1 : -1;
  const behind = straightFrom(tube, made, bend, back);
  if (tube.bends[bend - 1]!.arc + behind.length - leastGrip >= BAR) return { where: 'behind', before: behind.before };
  const ahead = straightFrom(tube, made, bend, back === 1 ? -1 : 1);
  return ahead.length - leastStraight >= BAR ? { where: 'in-front', before: ahead.before } : null;
}

/** mm of straight beyond the bend that lies level at zero, seen from the bend to be made. */
const legLength = (tube: SolvedTube, made: ReadonlySet<number>, of: number, bend: number): number =>
  straightFrom(tube, made, of, of < bend ? -1 : 1).length;

/**
 * From a bend's tangent towards end B (1) or end A (-1), how far the tube is straight, mm: a bend not yet made is as much straight
 * as its arc takes. `before`: the bend at which that ends; null at the tube's sawn end, without its grip.
 */
function straightFrom({ bends, straights, ends }: SolvedTube, made: ReadonlySet<number>, bend: number, way: 1 | -1) {
  let length = 0;
  for (let at = bend; ; at += way) {
    length += straights[way === 1 ? at : at - 1]!;
    const next = bends[at - 1 + way];
    if (next === undefined) return { length: length + beyondNode(ends[way === 1 ? 1 : 0]), before: null };
    if (made.has(at + way)) return { length, before: at + way };
    length += next.arc;
  }
}
