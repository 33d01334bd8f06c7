/**
 * The outside of a coped tube, taken as a filled solid: a bar round the centreline from tip to tip, less what its ends are cut away
 * by. The edge of a cut, its rim, is the curve of trims rolled back onto the tube; on a line that no cutter reaches the wall stands
 * down to the tip. Frame of an end: u into the tube, phi = 0 at the end's reference, right-hand about u.
 *
 * The rim is a chain through the 360 trims, the exact lows and high between them, the exact places where the curve ends beside lines
 * that nothing reaches, and the valleys between two cutters, where the trims on both sides run on straight to. It stands at most some
 * hundredths of a millimetre off the true curve, towards more tube where the curve is a hollow (docs/maths/gaps.md).
 */
import { toDegrees, type Radians } from '../geometry/angle.ts';
import { linePiece, type Path, type Piece } from '../geometry/path.ts';
import { COSINES, GENERATORS, SINES } from '../geometry/sleeve.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { addScaled, cross, dot, type Vec3 } from '../geometry/vector.ts';
import { remembered } from '../remembered.ts';
import { edgeBetween } from '../solve/end-cutter.ts';
import type { SolvedTube, TubeEnd } from '../solve/types.ts';
import { roundChain, type Chain, type ChainTree } from './chain.ts';

/** A tube as seen from outside. */
export interface Outside {
  readonly radius: number;
  /** The centreline from tip to tip; `at` counts from end A's node, below 0 where the tip reaches past it. */
  readonly pieces: readonly Piece[];
  /** Node to node. */
  readonly length: number;
  readonly ends: readonly [OutsideEnd, OutsideEnd];
}

/** One end of it. */
export interface OutsideEnd {
  readonly end: TubeEnd;
  readonly radius: number;
  readonly origin: Vec3;
  /** u, phi = 0 and phi = a quarter turn. */
  readonly axes: readonly [Vec3, Vec3, Vec3];
  /** Least and greatest trim on the wall, mm from the node along u; 0 where no line is reached. */
  readonly tip: number;
  readonly throat: number;
  /** How long the straight is that the end stands on, from the node: beyond, the wall is whole. */
  readonly room: number;
}

/** The edge of an end's cut: degrees about it, ascending, and the trim at each. */
export interface Rim {
  readonly degrees: Float64Array;
  readonly trims: Float64Array;
}

/** The tube's outside; worked out once a tube. */
export const outsideOf = remembered((tube: SolvedTube): Outside => {
  const radius = tube.section.outerDiameter / 2;
  const ends = [endOf(tube, 0, radius), endOf(tube, 1, radius)] as const;
  return { radius, pieces: tipToTip(tube.path, ends[0].tip, ends[1].tip), length: tube.path.length, ends };
});

function endOf(tube: SolvedTube, which: 0 | 1, radius: number): OutsideEnd {
  const end = tube.ends[which];
  const room = tube.bends.length === 0 ? Infinity : Math.max(0, tube.straights.at(which === 0 ? 0 : -1)!);
  return {
    end,
    radius,
    origin: end.position,
    axes: [end.direction, end.reference, cross(end.direction, end.reference)],
    tip: Math.min(end.tip ?? 0, room),
    throat: Math.min(end.throat ?? 0, room),
    room,
  };
}

/** The pieces with their outer ends moved to the tips. A tube that is cut away from end to end keeps its whole centreline. */
function tipToTip({ pieces, length }: Path, tipA: number, tipB: number): readonly Piece[] {
  const moved = [...pieces];
  const first = pieces[0]!;
  const last = pieces[pieces.length - 1]!;
  const only = pieces.length === 1;
  if (only && first.kind === 'line' && first.length - tipA - tipB <= ROUNDING) return pieces;
  const start = addScaled(first.from, first.startTangent, tipA);
  const stop = addScaled(last.to, last.endTangent, -tipB);
  if (only && first.kind === 'line') return [linePiece(start, stop, tipA)];
  if (last.kind === 'line' && last.length - tipB > ROUNDING)
    moved[moved.length - 1] = linePiece(last.from, stop, last.at);
  else if (tipB < 0) moved.push(linePiece(last.to, stop, length));
  if (first.kind === 'line' && first.length - tipA > ROUNDING) moved[0] = linePiece(start, first.to, tipA);
  else if (tipA < 0) moved.unshift(linePiece(start, first.from, tipA));
  return moved;
}

/** Whether two tubes have the same outside and are cut by the same: what was measured of one holds for the other. */
export const sameOutside = (a: SolvedTube, b: SolvedTube): boolean =>
  a === b ||
  (a.path === b.path &&
    a.section === b.section &&
    a.ends.every(({ outer, cuts, butted }, i) => {
      const other = b.ends[i]!;
      return outer === other.outer && cuts === other.cuts && butted === other.butted;
    }));

/** The rim of an end; worked out once an end. */
export const rimOf = remembered((end: OutsideEnd): Rim => rimTrims(end));

/** The rim's places in the car, a closed chain; worked out once an end. */
export const chainOf = remembered((end: OutsideEnd): Chain => ({ places: placesOf(end, rimOf(end)) }));

/** The same with balls round its stretches. */
export const chainTreeOf = remembered((end: OutsideEnd): ChainTree => roundChain(chainOf(end)));

/** mm. Strokes of a chain are no longer than this: between their ends nothing is looked at before the least is closed in on. */
const STROKE = 1;

function placesOf({ origin, axes: [u, c, s], radius }: OutsideEnd, { degrees, trims }: Rim): Float64Array {
  const count = degrees.length;
  const between = (k: number): number => {
    const step = Math.abs(trims[k + 1 < count ? k + 1 : 0]! - trims[k]!);
    return step <= STROKE ? 1 : Math.ceil(step / STROKE);
  };
  let strokes = 0;
  for (let k = 0; k < count; k++) strokes += between(k);
  const places = new Float64Array(3 * strokes);
  let laid = 0;
  for (let k = 0; k < count; k++) {
    const next = k + 1 < count ? k + 1 : 0;
    const parts = between(k);
    const width = (next === 0 ? 360 : degrees[next]!) - degrees[k]!;
    for (let part = 0; part < parts; part++) {
      const each = degrees[k]! + (part / parts) * width;
      const along = trims[k]! + (part / parts) * (trims[next]! - trims[k]!);
      const whole = each | 0;
      const phi = (each * Math.PI) / 180;
      const x = radius * (whole === each ? COSINES[whole]! : Math.cos(phi));
      const y = radius * (whole === each ? SINES[whole]! : Math.sin(phi));
      places[laid] = origin[0] + along * u[0] + x * c[0] + y * s[0];
      places[laid + 1] = origin[1] + along * u[1] + x * c[1] + y * s[1];
      places[laid + 2] = origin[2] + along * u[2] + x * c[2] + y * s[2];
      laid += 3;
    }
  }
  return places;
}

/** Degrees. No two places of a rim stand nearer to one another than this, but for the two ends of a step. */
const APART = 0.001;
/** mm a degree: a turn of slope sharper than this, upwards, is a valley between two cutters. */
const VALLEY = 0.15;

function rimTrims(end: OutsideEnd): Rim {
  const { end: cut, tip, room } = end;
  const kept = (s: number): number => (Number.isNaN(s) ? tip : Math.min(s, room));
  const whole = new Float64Array(GENERATORS);
  for (let k = 0; k < GENERATORS; k++) whole[k] = kept(cut.outer[k]!);
  if (cut.cuts.length === 0) return { degrees: WHOLE_DEGREES, trims: whole };
  const extra: { readonly degrees: number; readonly trim: number }[] = [];
  const add = (degrees: number, trim: number) => void extra.push({ degrees: (degrees + 360) % 360, trim });
  for (const { phi, s } of cut.high === null ? cut.lows : [...cut.lows, cut.high]) add(toDegrees(phi), kept(s));
  for (let k = 0; k < GENERATORS; k++) {
    const isHere = !Number.isNaN(cut.outer[k]!);
    const isThere = !Number.isNaN(cut.outer[k + 1 < GENERATORS ? k + 1 : 0]!);
    if (isHere !== isThere) {
      const [reached, passed] = (isHere ? [k, k + 1] : [k + 1, k]).map((each) => (each * Math.PI) / 180);
      const { phi, s } = edgeBetween(cut.cutter, [end.radius], reached!, passed!);
      const step = [{ s: kept(s) }, { s: tip }];
      for (const each of isHere ? step : step.toReversed()) add(toDegrees(phi), each.s);
    } else if (isHere && isThere) {
      const valley = valleyBetween(whole, k);
      if (valley !== null) add(k + valley.share, valley.trim);
    }
  }
  return merged(whole, extra);
}

const WHOLE_DEGREES = Float64Array.from({ length: GENERATORS }, (_, k) => k);

/** Where the curve, run on straight from both sides, has a low between this degree and the next. */
function valleyBetween(trim: Float64Array, k: number): { share: number; trim: number } | null {
  const here = trim[k]!;
  const there = trim[k + 1 < GENERATORS ? k + 1 : 0]!;
  const down = here - trim[k > 0 ? k - 1 : GENERATORS - 1]!;
  const up = trim[k + 2 < GENERATORS ? k + 2 : k + 2 - GENERATORS]! - there;
  if (up - down < VALLEY) return null;
  const share = (there - here - up) / (down - up);
  if (!(share > APART && share < 1 - APART)) return null;
  return { share, trim: here + share * down };
}

function merged(whole: Float64Array, extra: { readonly degrees: number; readonly trim: number }[]): Rim {
  const degrees = new Float64Array(GENERATORS + extra.length);
  const trims = new Float64Array(GENERATORS + extra.length);
  // Equals stay in the order in which they came.
  extra.sort((a, b) => a.degrees - b.degrees);
  let laid = 0;
  let next = 0;
  for (let k = 0; k <= GENERATORS; k++) {
    for (; next < extra.length && extra[next]!.degrees < k; next++, laid++) {
      degrees[laid] = extra[next]!.degrees;
      trims[laid] = extra[next]!.trim;
    }
    if (k === GENERATORS) break;
    degrees[laid] = k;
    trims[laid++] = whole[k]!;
  }
  return { degrees, trims };
}

/** mm along a line from where the rim is: as near as this the wall stands. */
const AT_RIM = 1e-6;

/** Whether the wall stands at the developed length `at`, in the direction `towards` (of any length) square to the tube there. */
export function wallStands(tube: Pick<Outside, 'ends' | 'length'>, at: number, towards: Vec3): boolean {
  return standsAt(tube.ends[0], at, towards) && standsAt(tube.ends[1], tube.length - at, towards);
}

function standsAt(end: OutsideEnd, s: number, towards: Vec3): boolean {
  if (s >= end.throat || s >= end.room) return true;
  return s >= trimAt(rimOf(end), degreesTowards(end, towards)) - AT_RIM;
}

/** Whether no wall is left within half a length of the developed length `at` and half an angle of the direction `towards`. */
export function wallIsGone(
  tube: Pick<Outside, 'ends' | 'length'>,
  at: number,
  towards: Vec3,
  half: number,
  angle: Radians,
): boolean {
  return (
    goneAt(tube.ends[0], at + half, towards, angle) || goneAt(tube.ends[1], tube.length - at + half, towards, angle)
  );
}

function goneAt(end: OutsideEnd, s: number, towards: Vec3, angle: Radians): boolean {
  if (s >= end.throat || s >= end.room) return false;
  const rim = rimOf(end);
  const middle = degreesTowards(end, towards);
  const reach = toDegrees(angle);
  // Between its places the rim runs straight: it is nowhere lower than at these, or where the stretch begins and ends.
  if (trimAt(rim, middle - reach) <= s || trimAt(rim, middle + reach) <= s) return false;
  const { degrees, trims } = rim;
  const last = lastUpTo(degrees, turned(middle + reach));
  for (let k = lastUpTo(degrees, turned(middle - reach)); k !== last;) {
    k = k + 1 < degrees.length ? k + 1 : 0;
    if (trims[k]! <= s) return false;
  }
  return true;
}

const degreesTowards = ({ axes: [, c, s] }: OutsideEnd, towards: Vec3): number => {
  const phi = toDegrees(Math.atan2(dot(towards, s), dot(towards, c)));
  return phi < 0 ? phi + 360 : phi;
};

/** mm from the node along u at which the wall begins, so many degrees about the end. */
function trimAt({ degrees, trims }: Rim, about: number): number {
  const at = turned(about);
  const low = lastUpTo(degrees, at);
  const after = low + 1 < degrees.length ? low + 1 : 0;
  const width = (after === 0 ? 360 : degrees[after]!) - degrees[low]!;
  const share = width > 0 ? (at - degrees[low]!) / width : 0;
  return trims[low]! + share * (trims[after]! - trims[low]!);
}

const turned = (degrees: number): number => (degrees < 0 ? degrees + 360 : degrees >= 360 ? degrees - 360 : degrees);

/** Which of the ascending numbers is the last that is no more than `most`; the first where none is. */
function lastUpTo(ascending: Float64Array, most: number): number {
  // There is one at every whole degree, and a few between.
  let low = Math.min(Math.floor(most), ascending.length - 1);
  while (low + 1 < ascending.length && ascending[low + 1]! <= most) low++;
  return low;
}
