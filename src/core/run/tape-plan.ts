/**
 * What a fit to a tape's figures starts from: each bend's angle, rotation and middle as planned or read by hand, how sure each is, and the tube that
 * such values make. The same steel told from its other end is another such plan; a tape that runs along both ends reads both alike, and so
 * they have to come out alike: one of the two is reckoned, whichever end the tube is told from.
 */
import { toDegrees, toRadians } from '../geometry/angle.ts';
import type { BentTube } from '../job/kinds/bent.ts';
import { readByHand } from '../job/read-by-hand.ts';
import { beyondNode } from '../solve/amount.ts';
import { asBuilt, laidDown, type BuiltTube, type OnBlank } from '../solve/as-built.ts';
import { rolledCentreline } from '../solve/rolled-centreline.ts';
import type { SolvedTube } from '../solve/types.ts';
import { READING } from '../springback/pull-law.ts';
import type { CheckDimension } from './check-dimensions.ts';
import type { Fitted } from './fitted-bends.ts';
import { sawn, type SawnTube } from './sawn-tube.ts';

/** Standard deviation of a tape's figure, mm, over the outsides of a tube that is held down by hand (common practice). */
export const TAPE = 1;

/**
 * Standard deviations of what was not read: a bend by a bender's scale, its plane by a level on the tube, its middle by a mark under the clamp (common
 * practice). The middle and not the mark: what a bend took more of arc is then as likely before it as behind, whichever end one counts from.
 */
const PLANNED = { angle: 1.5, rotation: 2, middle: 3 } as const;

/** Of what was read by hand: as a pull is, its plane by a level, a straight by the tape (common practice). */
const READ = { angle: toDegrees(READING.deviation), rotation: 0.5, middle: TAPE } as const;

/** Degrees, and mm: finer than this a plan is not told, so that it is the same to the last digit from both ends. */
const FINENESS = 1e-9;

export type Expected = Omit<Fitted, 'told'>;

export interface TapePlan {
  /** Bend by bend from end A: angle, rotation but of the first, middle; the value of that counts from half of the length. */
  readonly parts: readonly Expected[];
  /** Of each bend, mm. */
  readonly radii: readonly number[];
  /** From end A's node to end B's, mm. */
  readonly length: number;
  /** What the tube as it was sawn has beyond each of these, mm. */
  readonly beyond: readonly [number, number];
  readonly outerDiameter: number;
}

/** As planned, or as read by hand; mm and degrees. `blank`: how the tube lies on the one that was cut. */
export function tapePlan(
  { die, section, ends, ...tube }: SolvedTube,
  { order, bends }: Pick<BentTube, 'order' | 'bends'>,
  blank: OnBlank,
): TapePlan {
  const read = bends.flatMap((bend) => readByHand(bend) ?? []);
  const built = asBuilt(tube, laidDown(die), { order, bends: read }, blank);
  let behind = 0;
  const parts = built.bends.flatMap(({ angle, rotation, straight, radius }, i) => {
    const bend = i + 1;
    const reading = read.find((each) => each.bend === bend);
    const [start, end] = [behind + straight, behind + straight + radius * angle];
    behind = end;
    const fromB = order.some((step) => step.bend === bend && step.front === 'B');
    const part = (what: Fitted['what'], value: number, isRead: boolean): Expected => ({
      what,
      bend,
      toMark: what === 'middle' ? ((fromB ? radius : -radius) * Math.PI) / 360 : 0,
      value: finely(what === 'middle' ? value - blank.length / 2 : value),
      expected: value,
      isRead,
      deviation: beforehand({ what, isRead }),
    });
    return [
      part('angle', toDegrees(angle), reading !== undefined),
      ...(i === 0 ? [] : [part('rotation', toDegrees(rotation), reading?.rotation !== undefined)]),
      part('middle', (start + end) / 2, reading?.straight !== undefined),
    ];
  });
  return {
    parts,
    radii: built.bends.map(({ radius }) => finely(radius)),
    length: finely(blank.length),
    beyond: [finely(beyondNode(ends[0])), finely(beyondNode(ends[1]))],
    outerDiameter: section.outerDiameter,
  };
}

const finely = (value: number): number => Math.round(value / FINENESS) * FINENESS;

/** A part's deviation before there is any figure: degrees, or mm. */
export const beforehand = ({ what, isRead }: Pick<Fitted, 'what' | 'isRead'>): number =>
  (isRead ? READ : PLANNED)[what];

/** The tube with these values of its parts: degrees, and mm from half of the length. */
export function builtWith({ parts, radii, length }: TapePlan, values: readonly number[]): BuiltTube {
  const of = (what: Fitted['what'], bend: number): number | undefined =>
    values[parts.findIndex((part) => part.what === what && part.bend === bend)];
  let behind = 0;
  const bends = radii.map((radius, i) => {
    const angle = toRadians(of('angle', i + 1)!);
    const half = (radius * angle) / 2;
    const middle = length / 2 + of('middle', i + 1)!;
    const straight = middle - half - behind;
    behind = middle + half;
    return { straight, rotation: toRadians(of('rotation', i + 1) ?? 0), angle, radius };
  });
  return { bends, tail: length - behind };
}

/** The same as a body; where it lies makes no difference. */
export function sawnWith(plan: TapePlan, values: readonly number[]): SawnTube {
  const start = { position: [0, 0, 0], direction: [1, 0, 0], normal: [0, 0, 1] } as const;
  const { path } = rolledCentreline(start, builtWith(plan, values));
  return { pieces: sawn(path.pieces, plan.beyond), outerDiameter: plan.outerDiameter };
}

/** A plan told from its other end. */
export interface Turned {
  readonly plan: TapePlan;
  /** Of each of its parts the place among those that it was told by. */
  readonly places: readonly number[];
}

/** Twice is the same plan. A middle lies on the other side of half; a rotation keeps its sign, since both ends see it right-hand. */
export function fromOtherEnd({ parts, radii, length, beyond, outerDiameter }: TapePlan): Turned {
  const count = radii.length;
  const places: number[] = [];
  const turned: Expected[] = [];
  for (let bend = 1; bend <= count; bend++) {
    for (const what of ['angle', 'rotation', 'middle'] as const) {
      const before = what === 'rotation' ? count + 2 - bend : count + 1 - bend;
      const place = parts.findIndex((part) => part.what === what && part.bend === before);
      if (place === -1) continue;
      const part = parts[place]!;
      places.push(place);
      turned.push({ ...part, bend, value: what === 'middle' ? -part.value : part.value });
    }
  }
  const plan = {
    parts: turned,
    radii: radii.toReversed(),
    length,
    beyond: [beyond[1], beyond[0]] as const,
    outerDiameter,
  };
  return { plan, places };
}

/** The dimension that a tape calls so from the other end. */
export const dimensionFromOtherEnd = (id: CheckDimension['id']): CheckDimension['id'] =>
  id === 'diagonal-a' ? 'diagonal-b' : id === 'diagonal-b' ? 'diagonal-a' : id;

/** Below 0 where the first comes before the other, 0 where both tell one tube that reads the same from both ends; of plans with as many bends. */
export function comparePlans(a: TapePlan, b: TapePlan): number {
  const [one, other] = [figuresOf(a), figuresOf(b)];
  const first = one.findIndex((value, i) => value !== other[i]);
  return first === -1 ? 0 : one[first]! - other[first]!;
}

const figuresOf = ({ parts, radii, beyond }: TapePlan): readonly number[] => [
  ...parts.flatMap(({ value, deviation }) => [value, deviation]),
  ...radii,
  ...beyond,
];
