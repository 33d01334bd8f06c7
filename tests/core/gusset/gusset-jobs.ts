/** Jobs with one gusset for tests: a run along x with a branch that leaves it in the middle, and a tube with one bend; plain data. */
import { gussetsOf, isMade, type MadeGusset, type NoGusset, type SetGusset } from '../../../src/core/gusset/gussets.ts';
import type { Vec3 } from '../../../src/core/geometry/vector.ts';
import type { Derived } from '../../../src/core/derive.ts';
import { derived } from '../frame.ts';

/** 1 3/4 in tube. */
export const R = 22.225;

export interface Asked {
  readonly gusset?: object;
  /** Where the branch ends; it begins at the origin, where the run along x has its middle. */
  readonly to?: Vec3;
  /** Where it begins instead. */
  readonly from?: Vec3;
  /** Of the branch; the run has 44.45. */
  readonly diameter?: number;
  readonly legs?: readonly [number, number];
  readonly runHalf?: number;
  /** Others beside the usual ones. */
  readonly nodes?: Record<string, unknown>;
  readonly members?: readonly object[];
}

/** Leg 1 along the run towards +x, leg 2 along the branch. */
export function jointJob({
  gusset = {},
  to = [0, 0, 600],
  from = [0, 0, 0],
  diameter = 2 * R,
  legs = [100, 100],
  runHalf = 500,
  nodes = {},
  members = [],
}: Asked = {}): Derived {
  return derived({
    sections: [
      { id: 'main', outerDiameter: 2 * R, wall: 3.048 },
      { id: 'thin', outerDiameter: diameter, wall: 2 },
    ],
    nodes: { a: [-runHalf, 0, 0], b: [runHalf, 0, 0], joint: from, end: to, ...nodes },
    members: [
      { id: 'run', path: ['a', 'b'], ends: [{ fit: 'square' }, { fit: 'square' }] },
      {
        id: 'branch',
        path: ['joint', 'end'],
        section: 'thin',
        ends: [{ fit: 'cope', against: ['run'] }, { fit: 'square' }],
      },
      ...members,
    ],
    gussets: [
      {
        id: 'g',
        kind: 'flat',
        node: 'joint',
        between: [
          { member: 'run', towards: 'B', leg: legs[0] },
          { member: 'branch', towards: 'B', leg: legs[1] },
        ],
        thickness: 3.2,
        ...gusset,
      },
    ],
  });
}

/** One tube from [500, 0, 0] to the corner at the origin and on to `to`, on CLR 152.4; the gusset across its bend. */
export function bendJob({
  gusset = {},
  to = [0, 0, 500],
  legs = [200, 200],
  nodes = {},
  members = [],
}: Asked = {}): Derived {
  return derived({
    nodes: { a: [500, 0, 0], corner: [0, 0, 0], b: to, ...nodes },
    members: [{ id: 'tube', path: ['a', 'corner', 'b'], ends: [{ fit: 'square' }, { fit: 'square' }] }, ...members],
    gussets: [
      {
        id: 'g',
        kind: 'flat',
        node: 'corner',
        between: [
          { member: 'tube', towards: 'A', leg: legs[0] },
          { member: 'tube', towards: 'B', leg: legs[1] },
        ],
        thickness: 3.2,
        ...gusset,
      },
    ],
  });
}

export function setOf(frame: Derived, id = 'g'): SetGusset {
  const found = gussetsOf(frame).find((each) => each.id === id);
  if (found === undefined) throw new Error(`no gusset ${id}`);
  return found;
}

export function madeOf(frame: Derived, id = 'g'): MadeGusset {
  const { made } = setOf(frame, id);
  if (!isMade(made)) throw new Error(JSON.stringify(made));
  return made;
}

export function whyNot(frame: Derived, id = 'g'): NoGusset {
  const { made } = setOf(frame, id);
  if (isMade(made)) throw new Error(`${id} is made`);
  return made;
}
