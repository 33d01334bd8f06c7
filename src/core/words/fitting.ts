/** The fitting of the cage in the words of the shop: how far it is lowered to weld under the roof, what gives that, what is in the way. */
import type { Door } from '../fitting/door.ts';
import type { Joint } from '../fitting/joints.ts';
import type { InTheWay } from '../fitting/in-the-way.ts';
import type { Lowering } from '../fitting/lowering.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { shownName } from '../job/shown.ts';
import { nodeName, pointName, tubeName } from '../solve/names.ts';
import type { Frame } from '../solve/types.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { stepAbove, stepBelow } from '../units/step.ts';
import { listed } from './lists.ts';
import { trimName } from './trim.ts';

/** How a length is shown that must not be shown smaller than it is, and one that must not be shown larger. */
export interface ShownLengths {
  readonly atLeast: (mm: number) => string;
  readonly atMost: (mm: number) => string;
}

/** To the step that lengths are shown in. */
export function shownLengths(unit: LengthUnit): ShownLengths {
  const text = (mm: number): string => `${formatLength(mm, unit).text} ${unit}`;
  return { atLeast: (mm) => text(stepAbove(mm, unit)), atMost: (mm) => text(stepBelow(mm, unit)) };
}

/** "Header at the front leg"; where a bar in pieces is cut, whose end it is and what runs through. */
export const jointName = (frame: Frame, { node, tube, to }: Joint): string =>
  node === null
    ? `${tubeName(frame, frame.byId.get(tube)!.bar)} at ${listed(to.map((bar) => tubeName(frame, bar)))}`
    : nodeName(frame.job, node);

/** The one figure; and what joint decides it, where something has to be lowered. */
export function lowerInWords(
  { lowered: { by, decides }, joints, room }: Lowering,
  frame: Frame,
  show: ShownLengths,
): readonly [string, string | null] {
  if (joints.length === 0) return ['No joint is welded under the roof.', null];
  const known = joints.filter(({ roof }) => roof !== null).length;
  if (known === 0)
    return ['Nothing was measured over these joints: how far the cage is to be lowered cannot be said.', null];
  const all = known === joints.length ? 'every joint under the roof' : 'every joint with a measured roof';
  if (decides === null) return [`Nothing has to be lowered: ${show.atMost(room)} is free above ${all}.`, null];
  const { joint, roof } = decides;
  return [
    `Lower the cage by ${show.atLeast(by)} to weld ${all}.`,
    `The joint that decides is ${jointName(frame, joint)}: ${trimName(frame.job, roof.trim)} ${
      roof.at[2] < joint.axis - ROUNDING
        ? 'lies beside it, and comes over it on the way down'
        : roof.air < -ROUNDING
          ? `lies ${show.atLeast(-roof.air)} under its top`
          : `lies ${show.atMost(roof.air)} over its top`
    }.`,
  ];
}

/** Whether the boxes of the feet give it, and what to do where they do not; null where nothing has to be lowered. */
export function boxesInWords(
  { lowered: { by }, boxes, ends }: Lowering,
  { atLeast, atMost }: ShownLengths,
): string | null {
  if (by === 0) return null;
  if (boxes === null) {
    return ends.length === 0
      ? 'No end stands on the car yet: what gives that much cannot be said.'
      : `No foot is a box: the ends that stand on the floor need holes in it, ${atLeast(by)} deep.`;
  }
  const first = ends.some(({ isBox, left }) => isBox && left > 0) ? ', once the ends on them are trimmed' : '';
  return boxes >= by - ROUNDING
    ? `The boxes of its feet give ${atMost(boxes)}${first}: weld those joints before the boxes are in, then lift the cage onto them.`
    : `The boxes of its feet give ${atMost(boxes)}${first}: ${atLeast(by - boxes)} too little. Take boxes that much higher, or make holes that deep under them.`;
}

/** Each end that does not go down so far: "Rear stay (left), end B: 1 in". */
export const stoppedInWords = (
  { lowered: { by }, ends }: Lowering,
  frame: Frame,
  { atLeast }: ShownLengths,
): readonly string[] =>
  ends
    .filter(({ gives }) => by > gives + ROUNDING)
    .map(({ tube, end, gives }) => `${tubeName(frame, tube)}, end ${end}: ${atLeast(by - gives)}`);

/** "Sill bar (left) runs 1/2 in into Sill top, left". */
export const inTheWayInWords = ({ tube, of, deep }: InTheWay, frame: Frame, { atLeast }: ShownLengths): string =>
  `${tubeName(frame, tube)} runs ${atLeast(deep)} into ${
    of.kind === 'envelope'
      ? shownName(frame.job.envelopes.find(({ id }) => id === of.id)!.name)
      : trimName(frame.job, of)
  }`;

/** How wide the door is, and how that is known; or what to measure. */
export function doorInWords(door: Door | null, { job }: Frame, { atMost }: ShownLengths): string {
  if (door === null)
    return 'Not measured. Measure the sill at the A-pillar and at the B-pillar, the roof rail at the B-pillar and the windscreen’s corners, and name the points so; or type the longest straight way across the opening.';
  if (door.between === null) return `The longest straight way across the door is ${atMost(door.way)}, as typed.`;
  const [from, to] = door.between.map((id) => pointName(job, id));
  return `The longest straight way across the door, as its points were measured, is ${atMost(door.way)}: from ${from} to ${to}.`;
}
