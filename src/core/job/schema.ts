/**
 * The shape of a job file, version 1, and the defaults of what may be left out. Keys it does not know are kept, so
 * that a file from a later build of the same version comes back whole. What no shape can tell (that references
 * resolve, that a wall is thinner than its tube) is in validate.ts.
 *
 * docs/job.schema.json is made from this schema.
 */
import * as v from 'valibot';
import { FARTHEST } from '../geometry/tolerance.ts';
import { FIRST_BENDER } from './defaults.ts';
import {
  GREATEST_ANGLE,
  GREATEST_FRACTION,
  GREATEST_STEP,
  GREATEST_TUBE,
  LEAST_ANGLE,
  LEAST_SIZE,
  LEAST_STEP,
  LONGEST_ID,
  MOST_BENDS,
} from './limits.ts';
import type { EndFit } from './kinds/end.ts';
import type { Job } from './types.ts';

const number = (least: number, greatest: number, below: string, beyond: string) =>
  v.pipe(v.number(), v.minValue(least, numberMessage(below)), v.maxValue(greatest, numberMessage(beyond)));

/** Infinity counts as beyond; NaN is no number to begin with. */
const numberMessage = (outside: string) => (issue: { input: number }) =>
  Number.isFinite(issue.input) ? outside : 'not a finite number';

const coordinate = number(-FARTHEST, FARTHEST, 'beyond 100 m', 'beyond 100 m');
const length = number(0, FARTHEST, 'below zero', 'beyond 100 m');
const size = number(LEAST_SIZE, FARTHEST, `below ${LEAST_SIZE} mm`, 'beyond 100 m');
const across = number(LEAST_SIZE, GREATEST_TUBE, `below ${LEAST_SIZE} mm`, `beyond ${GREATEST_TUBE} mm`);
const turn = number(-360, 360, 'more than a full turn', 'more than a full turn');
const angle = (least: number, greatest: number) =>
  number(least, greatest, `below ${least} degrees`, `beyond ${greatest} degrees`);
const vector = v.strictTuple([coordinate, coordinate, coordinate]);

/** No control character, none of Unicode's own line breaks, no half of a character, and no prime at the end. */
const ID = /^[^\p{Cc}\p{Zl}\p{Zp}\p{Cs}]*[^\p{Cc}\p{Zl}\p{Zp}\p{Cs}']$/u;

const id = v.pipe(
  v.string(),
  v.minLength(1, 'empty'),
  v.maxLength(LONGEST_ID, `longer than ${LONGEST_ID} characters`),
  v.regex(ID, ({ input }) =>
    input.endsWith("'")
      ? "ends in a prime ('), which stands for the mirror image"
      : 'holds a control character or a line break',
  ),
);
/** The name is filled in from the id where a file leaves it out. */
const named = { id, name: v.optional(v.string()) };

const point = v.looseObject({ ...named, position: vector });

const section = v.looseObject({
  ...named,
  outerDiameter: across,
  wall: across,
  material: v.optional(v.string(), ''),
  stick: v.exactOptional(size),
});

const fineness = angle(LEAST_STEP, GREATEST_STEP);

const obstacle = v.variant('kind', [
  v.looseObject({
    name: v.string(),
    kind: v.literal('box'),
    centre: vector,
    size: v.strictTuple([size, size, size]),
    rotation: v.optional(v.strictTuple([turn, turn, turn]), [0, 0, 0]),
  }),
  v.looseObject({ name: v.string(), kind: v.literal('plane'), point: vector, normal: vector }),
]);

const bender = v.looseObject({
  turns: v.optional(v.picklist(['left', 'right']), FIRST_BENDER.turns),
  bendLies: v.optional(v.picklist(['beyond', 'before']), FIRST_BENDER.bendLies),
  planeHeight: v.optional(length, FIRST_BENDER.planeHeight),
  rotationBy: v.optional(v.picklist(['level', 'wheel']), FIRST_BENDER.rotationBy),
  levelStep: v.optional(fineness, FIRST_BENDER.levelStep),
  wheelStep: v.optional(fineness, FIRST_BENDER.wheelStep),
  pullStep: v.optional(fineness, FIRST_BENDER.pullStep),
  room: v.optional(v.array(obstacle), []),
});

const die = v.looseObject({
  ...named,
  outerDiameter: across,
  centrelineRadius: size,
  clampOffset: v.optional(coordinate, 0),
  leastStraight: v.optional(length, 0),
  leastGrip: v.optional(length, 0),
  greatestAngle: v.optional(angle(LEAST_ANGLE, 180), 180),
  radius: v.optional(v.picklist(['nominal', 'from-pulls']), 'nominal'),
  bender: v.exactOptional(bender),
});

const bendAngle = angle(LEAST_ANGLE, GREATEST_ANGLE);

const bendNumber = v.pipe(
  number(1, MOST_BENDS, 'bends count from 1', `beyond ${MOST_BENDS}`),
  v.integer('not a whole number'),
);

const pull = v.looseObject({
  die: v.string(),
  section: v.string(),
  batch: v.exactOptional(v.string()),
  pulled: bendAngle,
  net: bendAngle,
  on: v.optional(v.string(), ''),
  tube: v.exactOptional(v.string()),
  bend: v.exactOptional(bendNumber),
});

const bentTube = v.looseObject({
  tube: v.string(),
  order: v.array(v.looseObject({ bend: bendNumber, front: v.picklist(['A', 'B']) })),
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
        kept: v.exactOptional(v.boolean()),
      }),
    ),
    [],
  ),
  checks: v.optional(v.array(v.looseObject({ check: v.string(), measured: coordinate })), []),
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
});

const offset = v.optional(vector, [0, 0, 0]);

const BEYOND_FRACTION = `beyond ${GREATEST_FRACTION}`;

const place = v.variant('kind', [
  v.looseObject({ kind: v.literal('fixed'), position: vector }),
  v.looseObject({ kind: v.literal('point'), point: v.string(), offset }),
  // Told apart by `from`: beside it no bend is named, without it one is.
  v.variant('from', [
    v.looseObject({
      kind: v.literal('on'),
      member: v.string(),
      from: v.picklist(['start', 'end']),
      bend: v.exactOptional(v.never('not beside "from"')),
      where: v.exactOptional(v.never('not beside "from"')),
      distance: coordinate,
      offset,
    }),
    v.looseObject(
      {
        kind: v.literal('on'),
        member: v.string(),
        bend: bendNumber,
        where: v.picklist(['start', 'middle', 'end']),
        from: v.exactOptional(v.never()),
        distance: v.optional(coordinate, 0),
        offset,
      },
      (issue) => (issue.expected === '"bend"' ? 'missing, and there is no "from" either' : ''),
    ),
  ]),
  v.looseObject({
    kind: v.literal('between'),
    nodes: v.strictTuple([v.string(), v.string()]),
    fraction: number(-GREATEST_FRACTION, GREATEST_FRACTION, BEYOND_FRACTION, BEYOND_FRACTION),
  }),
  v.looseObject({
    kind: v.literal('ray'),
    from: v.string(),
    direction: vector,
    until: v.looseObject({ axis: v.picklist(['x', 'y', 'z']), value: coordinate }),
  }),
]);

const node = v.looseObject({ ...named, at: place });

const allowance = v.optional(coordinate, 0);
const end = v.variant('fit', [
  v.looseObject({ fit: v.picklist(['auto', 'square']), allowance }),
  v.looseObject({
    fit: v.literal('cope'),
    against: v.pipe(v.array(v.string()), v.minLength(1, 'names no member')),
    allowance,
  }),
  v.looseObject({ fit: v.literal('plate'), normal: vector, allowance }),
]);
const AUTO: EndFit = { fit: 'auto', allowance: 0 };

const member = v.looseObject({
  ...named,
  role: v.optional(v.string(), ''),
  path: v.pipe(v.array(v.string()), v.minLength(2, 'fewer than two nodes')),
  section: v.string(),
  die: v.exactOptional(v.string()),
  batch: v.exactOptional(v.string()),
  mirror: v.optional(v.boolean(), false),
  ends: v.optional(v.strictTuple([end, end]), () => [{ ...AUTO }, { ...AUTO }]),
});

const envelope = v.looseObject({
  ...named,
  kind: v.literal('box'),
  centre: vector,
  size: v.strictTuple([size, size, size]),
  rotation: v.optional(v.strictTuple([turn, turn, turn]), [0, 0, 0]),
  gap: v.optional(length, 0),
});

const bodyLine = v.looseObject({
  ...named,
  points: v.pipe(v.array(v.string()), v.minLength(2, 'fewer than two points')),
});

export const jobSchema = v.looseObject({
  format: v.literal('cagewright/job'),
  version: v.literal(1),
  name: v.optional(v.string(), 'Untitled job'),
  lengthUnit: v.optional(v.picklist(['in', 'mm']), 'mm'),
  points: v.optional(v.array(point), []),
  bodyLines: v.optional(v.array(bodyLine), []),
  sections: v.optional(v.array(section), []),
  dies: v.optional(v.array(die), []),
  nodes: v.optional(v.array(node), []),
  members: v.optional(v.array(member), []),
  envelopes: v.optional(v.array(envelope), []),
  pulls: v.optional(v.array(pull), []),
  bent: v.optional(v.array(bentTube), []),
});

type Shaped = v.InferOutput<typeof jobSchema>;

/** Names filled in from ids: the one default that another field gives. */
export function withNames(job: Shaped): Job {
  const fill = <R extends { id: string; name?: string | undefined }>(records: readonly R[]) =>
    records.map((record) => ({ ...record, name: record.name ?? record.id }));
  return {
    ...job,
    points: fill(job.points),
    bodyLines: fill(job.bodyLines),
    sections: fill(job.sections),
    dies: fill(job.dies),
    nodes: fill(job.nodes),
    members: fill(job.members),
    envelopes: fill(job.envelopes),
  };
}
