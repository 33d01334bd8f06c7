/** The bend run of a tube: what is done on it, and what was measured. */
import * as v from 'valibot';
import type { Degrees } from '../../geometry/angle.ts';
import { fault, quoted, type Fault } from '../fault.ts';
import type { PointRef, TubeRef } from '../reference.ts';
import type { Die } from './die.ts';
import { across, bendAngle, bendNumber, coordinate, length, size, turn } from './fields.ts';
import { bendsTwice, tubeTwice } from './faults.ts';
import type { Kind, Reference } from './kind.ts';
import type { Section } from './section.ts';

/** One bend at the machine: which, 1 = first from end A, and the end of the tube that is in front and swings. */
export interface BendStep {
  readonly bend: number;
  readonly front: 'A' | 'B';
}

/** A tube as it is made: what is done, and what was measured on it. */
export interface BentTube {
  readonly tube: TubeRef;
  /** Every bend once, in the order of bending. */
  readonly order: readonly BendStep[];
  /** Steps of the run that are ticked off and leave no reading: 'cut', 'mark', 'clamp 2', 'pull 2' ... by bend. */
  readonly done: readonly string[];
  /** In the order in which they were made. */
  readonly bends: readonly BentBend[];
  /** Check dimensions by name, mm as the tape read them. */
  readonly checks: readonly { readonly check: string; readonly measured: number }[];
  /** The tube as it was drawn when the run began: a change of the drawing since then is shown. */
  readonly drawn?: DrawnTube;
  /** It takes the drawn tube's place in the frame as it came out, and what is not cut yet follows it. */
  readonly stands?: boolean;
  /** Where it stands in the car, by the tape; counts while it stands as it came out. No place stands here twice. */
  readonly seat?: readonly Seat[];
}

/** A place on the centreline, which ends at the nodes; the middle is half way along it. */
export const SEAT_PLACES = ['A', 'middle', 'B'] as const;
export type SeatPlace = (typeof SEAT_PLACES)[number];

/** Where a place of a tube was measured in the car: at a point, or by as many coordinates as were measured, mm. */
export interface Seat {
  readonly at: SeatPlace;
  readonly point?: PointRef;
  readonly x?: number;
  readonly y?: number;
  readonly z?: number;
}

/** What a tube is bent by, whatever radius it is laid out with. */
export interface DrawnTube {
  /** From end A's node to the first corner, from corner to corner, from the last to end B's node; mm. */
  readonly legs: readonly number[];
  /** One a bend, from end A. */
  readonly angles: readonly Degrees[];
  /** One a bend, as Bend.rotation; 0 on the first. */
  readonly rotations: readonly Degrees[];
  /** Where each bend started, by the radius of that day: mm from end A's node. The marks were drawn by it. */
  readonly starts?: readonly number[];
  /** What it was to be bent on, and of what. */
  readonly die?: Pick<Die, 'id' | 'name' | 'centrelineRadius' | 'clampOffset'>;
  readonly section?: Pick<Section, 'id' | 'name' | 'outerDiameter' | 'wall'>;
}

/** A bend as it came out; what was not measured is absent, and counts as planned. */
export interface BentBend {
  readonly bend: number;
  /** How far the machine was pulled, the last time. */
  readonly pulled: Degrees;
  /** Measured after release. */
  readonly net: Degrees;
  /** From the plane of the bend before it on the tube, as Bend.rotation. */
  readonly rotation?: Degrees;
  /** The straight before it, tangent to tangent, from end A; mm. */
  readonly straight?: number;
  /**
   * Where it was begun, by the mark that its step showed: its tangent nearer the end in front, mm along the tube as it was
   * cut from end A's node. Marks that move later do not move it.
   */
  readonly start?: number;
  /** Outer diameters measured over the bend, the least and the greatest, mm: how far it is from round. */
  readonly across?: readonly [least: number, greatest: number];
  /** Left as it is, though it is not what was asked for. */
  readonly kept?: boolean;
  /**
   * `net`, `rotation` and `start` were reckoned from what a tape read on the whole tube; what that does not tell is as planned. `pulled` then
   * says nothing unless the bend was `read`: it opens no radius, and is not in the log of pulls.
   */
  readonly fitted?: boolean;
  /** What was read by hand before it was fitted. */
  readonly read?: Pick<BentBend, 'net' | 'rotation' | 'straight' | 'start'>;
}

export const bendingOrder = v.array(v.looseObject({ bend: bendNumber, front: v.picklist(['A', 'B']) }));

export const bentKind: Kind<BentTube> = {
  inWords: 'its bend run',
  shape: v.looseObject({
    tube: v.string(),
    order: bendingOrder,
    done: v.optional(v.array(v.string()), []),
    bends: v.optional(
      v.array(
        v.looseObject({
          bend: bendNumber,
          pulled: bendAngle,
          net: bendAngle,
          rotation: v.exactOptional(turn),
          straight: v.exactOptional(coordinate),
          start: v.exactOptional(coordinate),
          across: v.exactOptional(v.strictTuple([across, across])),
          kept: v.exactOptional(v.boolean()),
          fitted: v.exactOptional(v.boolean()),
          read: v.exactOptional(
            v.looseObject({
              net: bendAngle,
              rotation: v.exactOptional(turn),
              straight: v.exactOptional(coordinate),
              start: v.exactOptional(coordinate),
            }),
          ),
        }),
      ),
      [],
    ),
    checks: v.optional(v.array(v.looseObject({ check: v.string(), measured: coordinate })), []),
    stands: v.exactOptional(v.boolean()),
    seat: v.exactOptional(
      v.array(
        v.looseObject({
          at: v.picklist(SEAT_PLACES),
          point: v.exactOptional(v.string()),
          x: v.exactOptional(coordinate),
          y: v.exactOptional(coordinate),
          z: v.exactOptional(coordinate),
        }),
      ),
    ),
    drawn: v.exactOptional(
      v.looseObject({
        legs: v.array(length),
        angles: v.array(turn),
        rotations: v.array(turn),
        starts: v.exactOptional(v.array(coordinate)),
        die: v.exactOptional(
          v.looseObject({ id: v.string(), name: v.string(), centrelineRadius: size, clampOffset: coordinate }),
        ),
        section: v.exactOptional(
          v.looseObject({ id: v.string(), name: v.string(), outerDiameter: across, wall: across }),
        ),
      }),
    ),
  }),
  keys: [
    'tube stands seat order done bends checks drawn',
    'at point x y z',
    'bend front',
    'bend rotation pulled net straight start across kept fitted read',
    'rotation net straight start',
    'check measured',
    'section die angles legs rotations starts',
  ],
  /** Its tube is bent once, no bend stands twice in the order or among those made, and no place is measured twice. */
  beyondShape({ tube, seat = [], order, bends }, at, index, runs) {
    const remedy = ', yet its twin has a bend run: take that out first, in the Shop';
    return [
      { place: `${at}.tube`, list: 'members', to: tube, made: true, remedy },
      ...tubeTwice(runs, index, 'bent'),
      ...seat.flatMap((each, i) => seatTrouble(each, seat.slice(0, i), `${at}.seat[${i}]`)),
      ...bendsTwice(order, `${at}.order`),
      ...bendsTwice(bends, `${at}.bends`),
      ...bends.flatMap(({ across: measured }, i) =>
        measured !== undefined && measured[0] > measured[1]
          ? [fault(`${at}.bends[${i}].across`, 'the least comes first, then the greatest')]
          : [],
      ),
    ];
  },
};

function seatTrouble(
  { at, point, x, y, z }: Seat,
  before: readonly Seat[],
  place: string,
): readonly (Reference | Fault)[] {
  const twice = before.some((other) => other.at === at);
  const both = point !== undefined && [x, y, z].some((coordinate) => coordinate !== undefined);
  return [
    ...(twice ? [fault(`${place}.at`, `${quoted(at)} is there already`)] : []),
    ...(both ? [fault(`${place}.point`, 'not beside a coordinate')] : []),
    ...(point === undefined ? [] : [{ place: `${place}.point`, list: 'points', to: point } as const]),
  ];
}
