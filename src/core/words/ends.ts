/** What is done to a tube's end, in the words of the shop. */
import { toDegrees, type Radians } from '../geometry/angle.ts';
import { MEETING_DISTANCE } from '../geometry/tolerance.ts';
import { cross, distance, dot } from '../geometry/vector.ts';
import type { Bar, Frame, SolvedTube, TubeEnd, Unmitred } from '../solve/types.ts';
import { formatAngle } from '../units/angle.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { landedOn, tubeNearest } from '../solve/bar-tubes.ts';
import { listed } from './lists.ts';

/** "4 Main diagonal": as tubes are chalked in the shop. */
export const numbered = ({ number, name }: SolvedTube): string => `${number} ${name}`;

/** "coped to Main hoop and Rear stay (left)", "cut square", "cut to a plate"; tubes as they are called in a list. */
export function endInWords({ byId, bars }: Frame, end: TubeEnd, called = ({ name }: SolvedTube) => name): string {
  const inLine = end.butted.map((id) => {
    const bar = bars.get(id)!;
    return `${called(tubeNearest(byId, bar, end.position))}${turnOfButted(end, bar)}`;
  });
  const butted = inLine.length === 0 ? '' : `butted to ${listed(inLine)}`;
  if (end.fit === 'mitre') return `mitred with ${listed(inLine)}`;
  const cut =
    end.fit === 'cope'
      ? `coped to ${listed(end.cuts.map((one) => called(landedOn(byId, one))))}`
      : end.fit === 'plate'
        ? 'cut to its plate'
        : end.fit === 'foot'
          ? `cut to its foot, ${end.foot!.name}`
          : 'cut square';
  return butted === '' ? cut : end.fit === 'cope' ? `${cut}, ${butted}` : `${butted}, ${cut}`;
}

/**
 * ", whose 0° line comes 21.4° anticlockwise of this one's": how a bent bar that ends in line with this end is turned to it; empty where it has no bend, or does not
 * end here, or the lines meet.
 */
function turnOfButted({ position, direction, reference }: TubeEnd, bar: Bar): string {
  const other =
    bar.bends.length === 0 ? undefined : bar.ends.find((each) => distance(each.position, position) <= MEETING_DISTANCE);
  if (other === undefined) return '';
  const turn = Math.atan2(dot(cross(reference, other.reference), direction), dot(reference, other.reference));
  return Math.abs(toDegrees(turn)) < LINES_MEET ? '' : `, whose 0° line comes ${turnInWords(turn)} of this one’s`;
}

/** Degrees; what a wrap shows as none. */
const LINES_MEET = 0.05;

/** Of a tube whose ends are not cut by the drawing; null of others. */
export const cutOnCarInWords = ({ member }: SolvedTube): string | null =>
  member.cutOnCar === true
    ? 'Cut its ends on the car, to what stands there. What is said of them here is as drawn: leave both long.'
    : null;

/** Why an end is not mitred with the tube called so, and what would do it. */
export const whyUnmitred = (why: Unmitred, mate: string): string =>
  ({
    'no-end-there': `${mate} has no end at this node. Let both tubes end there`,
    unlike: `${mate} is of another outer diameter. Make both of one size`,
    folded: `${mate} runs the same way from here, so there is no plane between them. Move one of the two`,
  })[why];

/** A turn about the tube's axis as one sees it looking into the end: right-hand about the end's direction is clockwise. */
export function turnInWords(turn: Radians): string {
  const shown = formatAngle(Math.abs(toDegrees(turn)), 1);
  if (Number(shown) === 0) return '0°';
  if (Number(shown) === 180) return '180°';
  return `${shown}° ${turn > 0 ? 'clockwise' : 'anticlockwise'}`;
}

/**
 * "Tip 7/16 in, throat 1 3/32 in short of node.": where an end's wall begins and where its cut is deepest, along its axis from the node. Null where
 * nothing cuts it.
 */
export function placesInWords({ tip, throat }: TubeEnd, unit: LengthUnit): string | null {
  if (tip === null || throat === null) return null;
  const length = (s: number): string => `${formatLength(Math.abs(s), unit).text} ${unit}`;
  const [first, second] = [tip, throat].map((s) =>
    Math.abs(s) < UNSEEN ? 'at node' : s > 0 ? 'short of node' : 'beyond node',
  ) as [string, string];
  const of = (s: number, side: string): string => (side === 'at node' ? '' : ` ${length(s)}`);
  return first === second
    ? `Tip${of(tip, first)}, throat${of(throat, first)} ${first}.`
    : `Tip${of(tip, first)} ${first}, throat${of(throat, second)} ${second}.`;
}

/** mm. A length that shows as nothing. */
export const UNSEEN = 0.005;

/** The line from which every turn of an end is counted, phi = 0: one scribed along a straight tube, or the inside of the nearest bend. */
export const lineName = ({ bends }: SolvedTube): 'inside line' | 'scribed line' =>
  bends.length === 0 ? 'scribed line' : 'inside line';

/** The same with which one it is: "same scribed line", "inside line, on the inside of bend 1". */
export function referenceInWords(tube: SolvedTube, which: 0 | 1): string {
  if (tube.bends.length > 0) return `inside line, on the ${insideInWords(tube, which)}`;
  return which === 0 ? 'scribed line' : 'same scribed line';
}

/** "inside of the bend", "inside of bend 4": of the bend nearest an end of a bent tube. */
export function insideInWords(tube: SolvedTube, which: 0 | 1): string {
  return tube.bends.length === 1 ? 'inside of the bend' : `inside of bend ${which === 0 ? 1 : tube.bends.length}`;
}

/** The cut of an end that its line goes by, as the end's cuts are numbered: it need not be the one made first. */
const firstCutOf = ({ cuts }: TubeEnd): string => (cuts.length > 1 ? 'cut 1' : 'the cut');

/** How a straight tube's line is found and scribed, once for both ends; null where a bend gives it. */
export function scribeInWords(tube: SolvedTube): string | null {
  if (tube.bends.length > 0) return null;
  const [endA, endB] = tube.ends;
  if (endA.cuts.length > 0) return `scribe it at end A, on the deep-bite side of ${firstCutOf(endA)}`;
  if (endB.cuts.length > 0) return `scribe it at end B, on the deep-bite side of ${firstCutOf(endB)}`;
  return 'scribe it on the side nearest straight up in the car';
}
