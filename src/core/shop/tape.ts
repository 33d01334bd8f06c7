/**
 * The marks of a tube as a tape shows them, and what their rounding costs.
 *
 * Every mark counts from one zero, along the feed, and is rounded once; none is added to another. Fed from end A the zero is
 * the blank's end A; fed from end B the blank's end B, and the bends come in the opposite order; from the middle outwards the zero
 * is the middle of the centreline: the bends towards end B come first, with the one in the middle if there is one, then the tube is
 * flipped end for end and those towards end A follow. Words are as the tube is fed: the start of a bend is the tangent
 * nearer the zero, whichever end that is. A rotation is right-hand about the feed as it then runs. The one between two
 * bends reads the same in both feeds, since the order of the planes and the axis both turn round (docs/maths/marks.md).
 */
import { toRadians, wrapHalfTurn, type Radians } from '../geometry/angle.ts';
import { distance, normalize, scale, subtract } from '../geometry/vector.ts';
import { rollOut } from '../solve/roll-out.ts';
import type { Bend, SolvedTube } from '../solve/types.ts';

export interface TapeSetting {
  readonly from: 'A' | 'B' | 'middle';
  readonly style: 'start' | 'clamp' | 'middle' | 'tangents';
  /** The tape's division that marks are rounded to, mm. */
  readonly step: number;
}

export interface TapeMark {
  /** As fed: start is the tangent nearer the zero, end the other, clamp the start less the die's clamp offset. */
  readonly kind: 'start' | 'clamp' | 'middle' | 'end';
  /** mm from the zero along the feed. Negative: on the other side of the zero. */
  readonly exact: number;
  /** The nearest division of the tape to it, mm. */
  readonly at: number;
  /** Where the bend lies: beyond the mark as seen from the zero, on the near side of it, or half on either side. */
  readonly bendLies: 'beyond' | 'before' | 'either-side';
  /** False where the mark would be off the blank: a clamp that sits beyond its end. */
  readonly onBlank: boolean;
}

/** One bend, in the order of bending. */
export interface TapeStep {
  /** 1 = first from end A. */
  readonly bend: number;
  /** The end that the feed runs to; from one step to the next the tube is flipped where it changes. */
  readonly towards: 'A' | 'B';
  /** Net. */
  readonly angle: Radians;
  /** From the plane of `rotationFrom`, right-hand about the feed, (-pi, pi]; 0 on the first bend made. */
  readonly rotation: Radians;
  /** The bend made before that lies next to this one, 1 = first from end A; null on the first bend made. */
  readonly rotationFrom: number | null;
  /** Two for 'tangents', else one. */
  readonly marks: readonly TapeMark[];
  /** By how much the bend turns too far if it is bent from mark to mark; 0 where one mark only is made. */
  readonly angleOff: Radians;
}

export interface TapeSheet {
  readonly steps: readonly TapeStep[];
  /** Of the tape's zero from the blank's end A, mm. */
  readonly zero: number;
  /** Left beyond the last bend for the clamp to hold, mm at end A and at end B; scrap, cut off after bending. */
  readonly grip: readonly [number, number];
  /** To cut, mm: the tube's blank and the grip. */
  readonly blank: number;
  readonly rounding: Rounding;
}

/** What a tube bent exactly to the rounded marks is off by. */
export interface Rounding {
  /** mm: of end A's node with end B held when fed from end B; else of end B's node with end A held. */
  readonly endMoves: number;
  /** The greatest `angleOff` in size. */
  readonly angleOff: Radians;
  /** Over 0.5 mm or 0.25 degrees: the person is told. */
  readonly told: boolean;
}

const TOLD_LENGTH = 0.5;
const TOLD_ANGLE: Radians = toRadians(0.25);

/** What lengths and angles of the model are promised to: mm, and 0.0001 degrees. */
const SAME_LENGTH = 0.001;
const SAME_ANGLE: Radians = toRadians(0.0001);

/** Null from the middle of a tube that is not a symmetric hoop. */
export function tapeSheet(tube: SolvedTube, setting: TapeSetting): TapeSheet | null {
  if (setting.from === 'middle' && !isSymmetricHoop(tube)) return null;
  const beyond = tube.ends.map((end) => end.allowance - (end.tip ?? 0)) as [number, number];
  const grip = gripLeft(tube, setting.from, beyond);
  const blank = tube.blankLength + grip[0] + grip[1];
  const middle = tube.developedLength / 2;
  const fromNodeA = { A: -beyond[0], B: tube.developedLength + beyond[1], middle }[setting.from];
  const zero = { A: 0, B: blank, middle: grip[0] + beyond[0] + middle }[setting.from];

  const steps = feedOrder(tube.bends.length, setting.from).map(({ index, towards, after }): TapeStep => {
    const bend = tube.bends[index]!;
    const forward = towards === 'B';
    const start = forward ? bend.start - fromNodeA : fromNodeA - bend.end;
    const marks = marksOf(bend, start, tube.die!.clampOffset, setting.style).map(({ kind, exact }): TapeMark => {
      const onBlank = forward ? zero + exact : zero - exact;
      return {
        kind,
        exact,
        at: Math.round(exact / setting.step) * setting.step,
        bendLies: kind === 'middle' ? 'either-side' : kind === 'end' ? 'before' : 'beyond',
        onBlank: onBlank >= 0 && onBlank <= blank,
      };
    });
    const between = marks.length === 2 ? marks[1]!.at - marks[0]!.at : bend.arc;
    return {
      bend: index + 1,
      towards,
      angle: bend.angle,
      rotation: after === null ? 0 : tube.bends[Math.max(index, after)]!.rotation,
      rotationFrom: after === null ? null : after + 1,
      marks,
      angleOff: (between - bend.arc) / bend.radius,
    };
  });
  return { steps, zero, grip, blank, rounding: roundingOf(tube, steps, setting.from) };
}

/**
 * Mirror image of itself, end for end: straights, angles and radii read the same from both ends to 0.001 mm and 0.0001
 * degrees, rotations read opposite (an S is no hoop: two bends in the middle lie in one plane on the same side). Judged by the
 * tube's own numbers, wherever it stands in the car; the cuts at its ends do not count.
 */
export function isSymmetricHoop({ straights, bends }: SolvedTube): boolean {
  const same = (values: readonly number[], within: number): boolean =>
    values.every((value, i) => Math.abs(value - values.at(-1 - i)!) <= within);
  const [radii, angles] = [bends.map((bend) => bend.radius), bends.map((bend) => bend.angle)];
  const rotations = bends.slice(1).map((bend) => bend.rotation);
  return (
    same(straights, SAME_LENGTH) &&
    same(radii, SAME_LENGTH) &&
    same(angles, SAME_ANGLE) &&
    rotations.every((rotation, i) => {
      const inTheMiddle = 2 * i + 1 === rotations.length;
      const off = inTheMiddle ? rotation : wrapHalfTurn(rotation + rotations.at(-1 - i)!);
      return Math.abs(off) <= SAME_ANGLE;
    })
  );
}

/** Bends by index, the way each is fed, and the neighbour made before it that its rotation is read from. */
function feedOrder(
  count: number,
  from: TapeSetting['from'],
): readonly { index: number; towards: 'A' | 'B'; after: number | null }[] {
  const indices = Array.from({ length: count }, (_, index) => index);
  const first = { A: 0, B: count, middle: Math.floor(count / 2) }[from];
  const towardsB = indices.slice(first);
  const towardsA = indices.slice(0, first).toReversed();
  return [
    ...towardsB.map((index) => ({ index, towards: 'B' as const, after: index === first ? null : index - 1 })),
    ...towardsA.map((index) => ({ index, towards: 'A' as const, after: index === count - 1 ? null : index + 1 })),
  ];
}

function marksOf(
  { arc }: Bend,
  start: number,
  clampOffset: number,
  style: TapeSetting['style'],
): readonly { kind: TapeMark['kind']; exact: number }[] {
  switch (style) {
    case 'start':
      return [{ kind: 'start', exact: start }];
    case 'clamp':
      return [{ kind: 'clamp', exact: start - clampOffset }];
    case 'middle':
      return [{ kind: 'middle', exact: start + arc / 2 }];
    case 'tangents':
      return [
        { kind: 'start', exact: start },
        { kind: 'end', exact: start + arc },
      ];
  }
}

/** What the straight beyond the last bend, with what the blank has beyond the node, falls short of the die's least grip. */
function gripLeft(
  { die, bends, straights }: SolvedTube,
  from: TapeSetting['from'],
  beyond: readonly [number, number],
): readonly [number, number] {
  if (die === null || bends.length === 0) return [0, 0];
  const short = (straight: number): number => Math.max(0, die.leastGrip - straight);
  return [from === 'A' ? 0 : short(straights[0]! + beyond[0]), from === 'B' ? 0 : short(straights.at(-1)! + beyond[1])];
}

/** Rolls the tube out from its rounded marks, from the end that is held. Only the first mark of a bend says where it starts. */
function roundingOf(tube: SolvedTube, steps: readonly TapeStep[], from: TapeSetting['from']): Rounding {
  const angleOff = Math.max(0, ...steps.map((step) => Math.abs(step.angleOff)));
  if (steps.length === 0) return { endMoves: 0, angleOff, told: false };

  const { bends, developedLength } = tube;
  const corners = from === 'B' ? tube.corners.toReversed() : tube.corners;
  const laid = steps.map((step) => {
    const { start, end, radius } = bends[step.bend - 1]!;
    const moved = step.marks[0]!.at - step.marks[0]!.exact;
    const arc = radius * (step.angle + step.angleOff);
    // Along the developed length from end A, but from end B where that is held.
    const nearer =
      from === 'B' ? developedLength - end + moved : step.towards === 'B' ? start + moved : end - moved - arc;
    const rotation = from === 'B' ? step.rotation : bends[step.bend - 1]!.rotation;
    return { bend: step.bend, nearer, farther: nearer + arc, rotation, angle: step.angle + step.angleOff, radius };
  });
  const inOrder = from === 'middle' ? laid.toSorted((one, other) => one.bend - other.bend) : laid;
  const rolled = inOrder.map((bend, i) => ({ ...bend, straight: bend.nearer - (inOrder[i - 1]?.farther ?? 0) }));
  const start = {
    position: corners[0]!,
    direction: normalize(subtract(corners[1]!, corners[0]!)),
    normal: from === 'B' ? scale(bends.at(-1)!.normal, -1) : bends[0]!.normal,
  };
  const places = rollOut(start, rolled, developedLength - rolled.at(-1)!.farther);
  const endMoves = distance(places.at(-1)!.position, corners.at(-1)!);
  return { endMoves, angleOff, told: endMoves > TOLD_LENGTH || angleOff > TOLD_ANGLE };
}
