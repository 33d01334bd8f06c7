/** Setting up by tape in the words of the shop: what a tape is held at, how the first tube stands, where the corners of a bay are. */
import { toDegrees } from '../geometry/angle.ts';
import { subtract } from '../geometry/vector.ts';
import { faceOf, type CornerPlace, type TackPlace } from '../tack/places.ts';
import type { Bay, BayCorner } from '../tack/bays.ts';
import type { Lean } from '../tack/lean.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import { formatAngle } from '../units/angle.ts';
import type { TubeRef } from '../job/reference.ts';
import { landedOn, tubeNearest } from '../solve/bar-tubes.ts';
import { numbered } from './ends.ts';
import { listed } from './lists.ts';

type Tubes = Pick<Frame, 'byId'>;

/** "5 B, on its line", "foot of 1 A, front left corner", "1 half-way along, rear face", "mark on the car for 2 B". */
export function tackPlaceInWords({ byId }: Tubes, place: TackPlace): string {
  const number = byId.get(place.tube)!.number;
  switch (place.kind) {
    case 'edge':
      return `${number} ${place.end}, ${sideInWords(place.side)}`;
    case 'corner':
      return `foot of ${number} ${place.end}, ${cornerInWords(byId.get(place.tube)!, place)}`;
    case 'top':
      return `${number} half-way, ${place.face} face`;
    case 'spot':
      return `mark on the car for ${number} ${place.end}`;
  }
}

export const sideInWords = (side: 'line' | 'opposite'): string =>
  side === 'line' ? 'on its line' : 'opposite its line';

/** "front left", on a wall "upper left": by the two axes of the car that the foot lies along. */
function cornerInWords(tube: SolvedTube, { mark, centre, end }: CornerPlace): string {
  const normal = tube.ends[end === 'A' ? 0 : 1].plateNormal!;
  const off = subtract(mark, centre);
  const way = (axis: 0 | 1 | 2): string =>
    faceOf([axis === 0 ? off[0] : 0, axis === 1 ? off[1] : 0, axis === 2 ? off[2] : 0]);
  const most = ([0, 1, 2] as const).reduce((a, b) => (Math.abs(normal[b]) > Math.abs(normal[a]) ? b : a));
  const axes = ([2, 0, 1] as const).filter((axis) => axis !== most);
  return `${axes.map(way).join(' ')} corner`;
}

/** "Stands plumb.", "Leans 3.2° out of plumb to the rear." */
export function leanInWords({ angle, towards, plane }: Lean): string {
  const what = plane ? '' : ', on the line between its ends';
  if (towards === null) return angle > 1 ? `Lies level${what}.` : `Stands plumb${what}.`;
  return `Leans ${formatAngle(toDegrees(angle), 1)}° out of plumb to the ${towards}${what}.`;
}

/** By what the tube that is set first is set: its feet, as far as it has any. */
export function firstInWords({ ends }: SolvedTube): string {
  const [feet, plates] = (['foot', 'plate'] as const).map((fit) => ends.filter((end) => end.fit === fit).length);
  if (feet === 0 && plates === 0) return 'No end of it stands on the car: set it by the drawing.';
  const on = [
    ...(feet === 0 ? [] : [feet === 1 ? 'its foot' : 'its feet']),
    ...(plates === 0 ? [] : [plates === 1 ? 'its plate' : 'its plates']),
  ];
  return `Set by ${listed(on)}.`;
}

/**
 * How an end is set that no three tapes fix; `before` are the tubes that stand by then, `other` whether three tapes fix its other end.
 */
export function untapedInWords(
  { byId, bars }: Frame,
  { ends }: SolvedTube,
  which: 0 | 1,
  before: ReadonlySet<TubeRef>,
  other: boolean,
): string {
  const { fit, cuts, butted, position } = ends[which];
  const meets = [
    ...cuts.map((cut) => landedOn(byId, cut)),
    ...butted.map((id) => tubeNearest(byId, bars.get(id)!, position)),
  ];
  const own =
    fit === 'foot'
      ? ['by its foot, the middle of which is struck on the car']
      : fit === 'plate'
        ? ['on its plate']
        : meets.some(({ id }) => before.has(id))
          ? ['by its cut on the tube that it meets']
          : [];
  const by = [...own, ...(other ? ['by its other end'] : [])];
  const first = before.size === 0 ? 'as the first tube stands' : 'by the drawing';
  return `no three tapes fix this end. Set it ${by.length === 0 ? first : by.join(', and ')}.`;
}

/** "1 Main hoop, 2 Rear stay (left), 7 Tower bar and 3 Rear stay (right)". */
export const bayInWords = ({ byId }: Tubes, { sides }: Bay): string =>
  listed(sides.map((id) => numbered(byId.get(id)!)));

/** "2 on 1", "bend 2 of 11". */
export function bayCornerInWords({ byId }: Tubes, { on, meets, bend }: BayCorner): string {
  const number = byId.get(on)!.number;
  return meets === null ? `bend ${bend} of ${number}` : `${byId.get(meets)!.number} on ${number}`;
}

/** The side of the tubes that the marks stand on. */
export const baySideInWords = ({ outwards }: Bay): string => faceOf(outwards);
