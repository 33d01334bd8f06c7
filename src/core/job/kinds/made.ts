/** How far a tube is made, and the tube as it was cut: from then on it is held so, however the frame moves. */
import * as v from 'valibot';
import { angleBetween } from '../../geometry/angle.ts';
import { DOUBLES_BACK, ROUNDING, STRAIGHT_THROUGH } from '../../geometry/tolerance.ts';
import { distance, subtract, type Vec3 } from '../../geometry/vector.ts';
import { fault, type Fault } from '../fault.ts';
import { MOST_AT_AN_END, MOST_BENDS } from '../limits.ts';
import type { TubeRef } from '../reference.ts';
import { across, coordinate, length, size, vector } from './fields.ts';
import { arrowFaults, tubeTwice } from './faults.ts';
import type { Kind } from './kind.ts';

/** In the order of the work. A tube that is not listed is drawn. */
export const STAGES = ['cut', 'bent', 'notched', 'tacked', 'welded'] as const;
export type MadeStage = (typeof STAGES)[number];

export interface MadeTube {
  readonly tube: TubeRef;
  readonly stage: MadeStage;
  readonly held: HeldTube;
}

/** A line with its corners rounded: car axes at the time, mm. */
export interface HeldLine {
  /** End A, the sharp corners of its bends, end B. */
  readonly corners: readonly Vec3[];
  /** Centreline radius of each bend. */
  readonly radii: readonly number[];
}

/** The tube as it was cut, and the shapes that its ends were cut by. Where it lay then is not where it lies now. */
export interface HeldTube extends HeldLine {
  readonly outerDiameter: number;
  readonly wall: number;
  readonly ends: readonly [HeldEnd, HeldEnd];
}

export interface HeldEnd {
  readonly fit: 'cope' | 'plate' | 'foot' | 'mitre' | 'square';
  readonly allowance: number;
  /** The run tubes that it was coped to. */
  readonly cutters: readonly HeldCutter[];
  /** Of the plane that it was cut to; absent without one. */
  readonly normal?: Vec3;
  /** From the end's place to that plane, mm along the tube into it. */
  readonly rise?: number;
}

export interface HeldCutter extends HeldLine {
  readonly against: TubeRef;
  readonly outerDiameter: number;
  /** It had a twin, or was one: of a square cut it says which side was taken. */
  readonly mirrored: boolean;
}

const line = {
  corners: v.pipe(
    v.array(vector),
    v.minLength(2, 'a tube has two ends'),
    v.maxLength(MOST_BENDS + 2, `more than ${MOST_BENDS} bends`),
  ),
  radii: v.array(size),
};

const heldEnd = v.looseObject({
  fit: v.picklist(['cope', 'plate', 'foot', 'mitre', 'square']),
  allowance: v.optional(length, 0),
  cutters: v.optional(
    v.pipe(
      v.array(
        v.looseObject({
          ...line,
          against: v.string(),
          outerDiameter: across,
          mirrored: v.optional(v.boolean(), false),
        }),
      ),
      v.maxLength(MOST_AT_AN_END, `more than ${MOST_AT_AN_END} tubes`),
    ),
    [],
  ),
  normal: v.exactOptional(vector),
  rise: v.exactOptional(coordinate),
});

export const madeKind: Kind<MadeTube> = {
  inWords: 'how far it is made',
  shape: v.looseObject({
    tube: v.string(),
    stage: v.picklist(STAGES),
    held: v.looseObject({ ...line, outerDiameter: across, wall: across, ends: v.strictTuple([heldEnd, heldEnd]) }),
  }),
  keys: [
    'tube stage held',
    'corners radii outerDiameter wall ends',
    'fit normal rise allowance cutters',
    'against mirrored corners radii outerDiameter',
  ],
  /** Its tube is made once, and each bend of what is held has a radius and is one. */
  beyondShape({ tube, held }, at, index, records) {
    const lines = [
      { line: held, place: `${at}.held` },
      ...held.ends.flatMap(({ cutters }, which) =>
        cutters.map((cutter, i) => ({ line: cutter, place: `${at}.held.ends[${which}].cutters[${i}]` })),
      ),
    ];
    return [
      {
        place: `${at}.tube`,
        list: 'members',
        to: tube,
        made: true,
        remedy: ', yet its twin is marked as made: set that back first, in the Shop',
      },
      ...tubeTwice(records, index, 'made'),
      ...lines.flatMap(({ line: { corners, radii }, place }) => [
        ...(radii.length === corners.length - 2
          ? []
          : [fault(`${place}.radii`, `has ${radii.length} for ${corners.length - 2} bends`)]),
        ...cornerFaults(corners, place),
      ]),
      ...held.ends.flatMap(({ normal }, which) =>
        normal === undefined ? [] : arrowFaults(normal, `${at}.held.ends[${which}].normal`),
      ),
    ];
  },
};

/** Two corners in one place have no line between them; one that does not turn is no bend, and one that doubles back has no tangents. */
const cornerFaults = (corners: readonly Vec3[], place: string): readonly Fault[] =>
  corners.flatMap((corner, i) => {
    const [before, after] = [corners[i - 1], corners[i + 1]];
    if (after === undefined) return [];
    const at = `${place}.corners[${i}]`;
    if (distance(corner, after) <= ROUNDING) return [fault(at, 'stands at the same place as the next')];
    const turn = before === undefined ? null : angleBetween(subtract(corner, before), subtract(after, corner));
    return turn !== null && !(turn > STRAIGHT_THROUGH && turn <= DOUBLES_BACK) ? [fault(at, 'is no bend')] : [];
  });
