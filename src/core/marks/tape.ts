/**
 * The marks of a tube as a tape shows them, and what their rounding costs.
 *
 * Every mark counts from one zero and is rounded once; none is added to another. The zero is the blank's end A, its end B, or the
 * middle of the centreline. Each bend is made with one end of the tube in front: the bend starts at the tangent nearer that end, and
 * the clamp holds the tube from there towards it. A bender whose bends lie beyond their marks takes the end that is measured
 * from in front; one whose bends lie before them leaves it behind. Unless an order is given the bends nearest the end in
 * front come first; from the middle outwards the tube is flipped end for end between the halves. A rotation is right-hand about
 * the direction from the end in front to the other. The one between two neighbours reads the same fed from either end, since the
 * order of the planes and the axis both turn round (docs/maths/marks.md).
 */
import { toRadians, type Radians } from '../geometry/angle.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { distance, normalize, scale, subtract } from '../geometry/vector.ts';
import type { BendStep } from '../job/kinds/bent.ts';
import type { Marking } from '../job/kinds/marking.ts';
import { beyondNode, blankToCut } from '../solve/amount.ts';
import { isOrderOf, rotationBefore } from '../solve/bend-order.ts';
import { plainFeed } from '../solve/feed.ts';
import { isSymmetricHoop } from '../solve/symmetric.ts';
import { rollOut } from '../solve/roll-out.ts';
import type { Bend, SolvedTube } from '../solve/types.ts';

export interface TapeSetting {
  readonly from: Marking['from'];
  readonly mark: Marking['mark'];
  /** The tape's division that marks are rounded to, mm. */
  readonly step: number;
  /** Every bend once, in the order of bending; absent: the order that follows from the zero and the bender. */
  readonly order?: readonly BendStep[];
}

export interface TapeMark {
  /** Start is the tangent nearer the end in front, end the other, clamp the die's clamp offset from the start towards that end. */
  readonly kind: 'start' | 'clamp' | 'middle' | 'end';
  /** mm from the zero towards the step's `towards`. Negative: on the other side of the zero. */
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
  /** The end in front, which swings; from one step to the next the tube is flipped where it changes. */
  readonly front: 'A' | 'B';
  /** The end that the tape runs to from the zero. */
  readonly towards: 'A' | 'B';
  /** Net. */
  readonly angle: Radians;
  /** From the plane of `rotationFrom`, right-hand about the direction from the end in front, (-pi, pi]; 0 on the first bend made. */
  readonly rotation: Radians;
  /** The nearest along the tube of the bends made before, 1 = first from end A; null on the first bend made. */
  readonly rotationFrom: number | null;
  /** Two for 'tangents', else one. */
  readonly marks: readonly TapeMark[];
  /** By how much the bend turns too far if it is bent from mark to mark; 0 where one mark only is made. */
  readonly angleOff: Radians;
}

export interface TapeList {
  readonly steps: readonly TapeStep[];
  /** Of the tape's zero from the blank's end A, mm. */
  readonly zero: number;
  /** Left behind the outermost bend for the machine to hold, mm at end A and at end B; scrap, cut off after bending. */
  readonly grip: readonly [number, number];
  /** To cut, mm: the tube's blank and the grip. */
  readonly blank: number;
  readonly rounding: Rounding;
}

/** What the rounding of the marks costs. */
export interface Rounding {
  /**
   * mm: of end A's node with end B held when fed from end B; else of end B's node with end A held. Each bend begins by its first mark
   * and turns to its own angle, as it is pulled by the machine's scale.
   */
  readonly endMoves: number;
  /** The greatest `angleOff` in size: what a bend made from mark to mark, and not by the scale, turns wrong. */
  readonly angleOff: Radians;
  /** Over 0.5 mm or 0.25 degrees: worth saying. */
  readonly isNotable: boolean;
}

/** Where the grip is sawn off after bending. */
export interface SawMark {
  readonly end: 'A' | 'B';
  /** mm from the blank's end A. */
  readonly onBlank: number;
  /** mm from the tape's zero, towards that end where it counts from the middle. */
  readonly exact: number;
}

/** One for each end that has grip. */
export const sawMarks = ({ grip, blank, zero }: TapeList): readonly SawMark[] =>
  grip.flatMap((length, i) => {
    if (length === 0) return [];
    const onBlank = i === 0 ? length : blank - length;
    return [{ end: i === 0 ? 'A' : 'B', onBlank, exact: Math.abs(onBlank - zero) }];
  });

/** What the far end or a bend may be off by before it is worth saying: mm, radians. */
export const NOTABLE_LENGTH = 0.5;
export const NOTABLE_ANGLE: Radians = toRadians(0.25);

/** Null from the middle of a tube that is not a symmetric hoop, and where the setting's order does not hold every bend once. */
export function tapeList(tube: SolvedTube, setting: TapeSetting): TapeList | null {
  if (setting.from === 'middle' && !isSymmetricHoop(tube)) return null;
  const order = setting.order ?? plainFeed(tube, setting.from);
  if (!isOrderOf(order, tube.bends.length)) return null;
  const { bends, developedLength, die } = tube;
  const { blank, grip } = blankToCut(tube, order);
  const sawnA = -beyondNode(tube.ends[0]) - grip[0];
  // Both along the developed length from end A's node.
  const zero = { A: sawnA, B: sawnA + blank, middle: developedLength / 2 }[setting.from];

  const steps = order.map(({ bend: number, front }, i): TapeStep => {
    const bend = bends[number - 1]!;
    const towards = { A: 'B', B: 'A', middle: number <= Math.floor(bends.length / 2) ? 'A' : 'B' } as const;
    const tape = towards[setting.from] === 'B' ? 1 : -1;
    const rearward = front === 'A' ? 1 : -1;
    const starts = front === 'A' ? bend.start : bend.end;
    const marks = marksAfterStart(bend, die!.clampOffset, setting.mark).map(({ kind, after }): TapeMark => {
      const along = starts + rearward * after;
      const exact = tape * (along - zero);
      return {
        kind,
        exact,
        at: Math.round(exact / setting.step) * setting.step,
        bendLies: kind === 'middle' ? 'either-side' : (kind === 'end') === (tape === rearward) ? 'before' : 'beyond',
        onBlank: along >= sawnA - ROUNDING && along <= sawnA + blank + ROUNDING,
      };
    });
    const between = marks.length === 2 ? Math.abs(marks[1]!.at - marks[0]!.at) : bend.arc;
    const turned = rotationBefore(bends, order, i);
    return {
      bend: number,
      front,
      towards: towards[setting.from],
      angle: bend.angle,
      rotation: turned?.rotation ?? 0,
      rotationFrom: turned?.from ?? null,
      marks,
      angleOff: (between - bend.arc) / bend.radius,
    };
  });
  return { steps, zero: zero - sawnA, grip, blank, rounding: roundingOf(tube, steps, setting.from) };
}

/** How far each mark is from the bend's start, away from the end in front. */
function marksAfterStart(
  { arc }: Bend,
  clampOffset: number,
  mark: Marking['mark'],
): readonly { kind: TapeMark['kind']; after: number }[] {
  switch (mark) {
    case 'start':
      return [{ kind: 'start', after: 0 }];
    case 'clamp':
      return [{ kind: 'clamp', after: -clampOffset }];
    case 'middle':
      return [{ kind: 'middle', after: arc / 2 }];
    case 'tangents':
      return [
        { kind: 'start', after: 0 },
        { kind: 'end', after: arc },
      ];
  }
}

/** Rolls the tube out from its rounded marks, from the end that is held. Only the first mark of a bend says where it starts. */
function roundingOf(tube: SolvedTube, steps: readonly TapeStep[], from: TapeSetting['from']): Rounding {
  const angleOff = Math.max(0, ...steps.map((step) => Math.abs(step.angleOff)));
  if (steps.length === 0) return { endMoves: 0, angleOff, isNotable: false };

  const { bends, developedLength } = tube;
  const laid = steps
    .map((step) => {
      const { start, end, radius, rotation } = bends[step.bend - 1]!;
      const moved = (step.marks[0]!.at - step.marks[0]!.exact) * (step.towards === 'B' ? 1 : -1);
      return { bend: step.bend, near: start + moved, far: end + moved, rotation, angle: step.angle, radius };
    })
    .toSorted((one, other) => one.bend - other.bend);
  const fromB = from === 'B';
  const corners = fromB ? tube.corners.toReversed() : tube.corners;
  // From end B every rotation stands between the same two bends, and belongs to the one nearer end A.
  const along = fromB
    ? laid
        .map((bend, i) => ({
          ...bend,
          near: developedLength - bend.far,
          far: developedLength - bend.near,
          rotation: laid[i + 1]?.rotation ?? 0,
        }))
        .toReversed()
    : laid;
  const rolled = along.map((bend, i) => ({ ...bend, straight: bend.near - (along[i - 1]?.far ?? 0) }));
  const start = {
    position: corners[0]!,
    direction: normalize(subtract(corners[1]!, corners[0]!)),
    normal: fromB ? scale(bends.at(-1)!.normal, -1) : bends[0]!.normal,
  };
  const places = rollOut(start, rolled, developedLength - along.at(-1)!.far);
  const endMoves = distance(places.at(-1)!.position, corners.at(-1)!);
  return { endMoves, angleOff, isNotable: endMoves > NOTABLE_LENGTH || angleOff > NOTABLE_ANGLE };
}
