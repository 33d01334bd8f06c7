/**
 * A tube bent on paper from its list of tape marks, run by run as a person does it: both runs begin at the first bend's start, the
 * second with the tube flipped. What comes out is where each end is as seen from the other, which needs no common axes.
 */
import type { TapeSetting, TapeList, TapeStep } from '../../../src/core/marks/tape.ts';
import { rollOut, type RollStart } from '../../../src/core/solve/roll-out.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';

type Place = readonly [number, number, number];
const less = (a: Place, b: Place): Place => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const flip = ([x, y, z]: Place): Place => [-x, -y, -z];
const inner = (a: Place, b: Place): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const outer = (a: Place, b: Place): Place => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** An end's node, the direction into the tube, and the normal of the nearest bend for travel from A to B. */
export interface EndFrame {
  readonly position: Place;
  readonly direction: Place;
  readonly normal: Place;
}

/** The ends of the tube that was drawn, in car axes. */
export function endFrames({ corners, bends, ends }: SolvedTube): { A: EndFrame; B: EndFrame } {
  return {
    A: { position: corners[0]!, direction: ends[0].direction, normal: bends[0]!.normal },
    B: { position: corners.at(-1)!, direction: ends[1].direction, normal: bends.at(-1)!.normal },
  };
}

/** Where `other` is in the axes of `held`. */
export function across(held: EndFrame, other: EndFrame): Place {
  const to = less(other.position, held.position);
  return [inner(to, held.direction), inner(to, held.normal), inner(to, outer(held.normal, held.direction))];
}

export const gapBetween = (a: Place, b: Place): number => Math.hypot(...less(a, b));

/**
 * `allowances` of square ends; `put` says where on the tape each mark is put: exactly, from mark to mark, or on its division, pulled by the scale.
 */
export function bentFrom(
  tube: SolvedTube,
  { steps, grip }: TapeList,
  { from, mark }: TapeSetting,
  allowances: readonly [number, number],
  put: 'exact' | 'at',
): { A: EndFrame; B: EndFrame } {
  const made = steps.map((step) => ({ ...bendOf(tube, step, mark, put), towards: step.towards }));
  const first = made[0]!;
  const second = first.towards === 'A' ? 'B' : 'A';
  const half = tube.developedLength / 2;
  const [beyondA, beyondB] = [allowances[0] + grip[0], allowances[1] + grip[1]];
  // Tape readings of the two nodes, each along the run towards it.
  const nodes = {
    A: { A: -beyondA, B: beyondA + tube.developedLength },
    B: { A: beyondB + tube.developedLength, B: -beyondB },
    middle: { A: half, B: half },
  }[from];

  const run = (start: RollStart, at: number, towards: 'A' | 'B'): RollStart => {
    let here = at;
    const bends = made
      .filter((bend) => bend.towards === towards)
      .map((bend) => {
        const straight = bend.start - here;
        here = bend.start + bend.angle * bend.radius;
        return { ...bend, straight };
      });
    return rollOut(start, bends, nodes[towards] - here).at(-1)!;
  };
  const ahead = run({ position: [0, 0, 0], direction: [1, 0, 0], normal: [0, 0, 1] }, first.start, first.towards);
  const behind = run({ position: [0, 0, 0], direction: [-1, 0, 0], normal: [0, 0, -1] }, -first.start, second);
  const frameOf = (end: RollStart, towards: 'A' | 'B'): EndFrame => ({
    position: end.position,
    direction: flip(end.direction),
    normal: towards === 'B' ? end.normal : flip(end.normal),
  });
  const [near, far] = [frameOf(behind, second), frameOf(ahead, first.towards)];
  return first.towards === 'B' ? { A: near, B: far } : { A: far, B: near };
}

function bendOf(
  { bends, die }: SolvedTube,
  { bend, angle, rotation, marks }: TapeStep,
  mark: TapeSetting['mark'],
  put: 'exact' | 'at',
) {
  const { radius } = bends[bend - 1]!;
  const [at, other] = marks.map((each) => each[put]);
  const start = { start: at!, tangents: at!, clamp: at! + die!.clampOffset, middle: at! - (angle * radius) / 2 }[mark];
  return { start, rotation, radius, angle: other === undefined || put === 'at' ? angle : (other - at!) / radius };
}
