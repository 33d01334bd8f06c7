/**
 * The places at which two pieces of centreline come nearest to one another: every least one, since the nearest of all may lie where a
 * tube's wall is cut away.
 *
 * Two straights have one, in closed form. Along an arc, taken in stretches of some degrees, the slope of the distance to the other piece is
 * followed to where it changes from falling to rising; the place of the other piece is always its nearest, in closed form.
 */
import { foot, setFoot } from '../geometry/foot.ts';
import { nearestOnPiece, placeOnPiece, type ArcPiece, type LinePiece, type Piece } from '../geometry/path.ts';
import { addScaled, distance, dot, interpolate, subtract } from '../geometry/vector.ts';

/** A place on each of two pieces, mm along it from its start, and how far apart they are. */
export interface NearPlaces {
  readonly distance: number;
  readonly alongA: number;
  readonly alongB: number;
}

/** Calls `visit` with every least place of two pieces that is nearer than `below` mm, those at their ends among them. */
export function nearPlaces(a: Piece, b: Piece, below: number, visit: (near: NearPlaces) => void): void {
  if (a.kind === 'line' && b.kind === 'line') {
    const near = nearOfLines(a, b);
    if (near.distance < below) visit(near);
  } else if (a.kind === 'arc') nearOfArc(a, b, below, visit);
  else if (b.kind === 'arc')
    nearOfArc(b, a, below, ({ distance: apart, alongA, alongB }) =>
      visit({ distance: apart, alongA: alongB, alongB: alongA }),
    );
}

/** Of the square of the sine between them: lines that run side by side as near as makes no difference. */
const PARALLEL = 1e-12;

/** Of lines side by side the middle of what they share. */
function nearOfLines(a: LinePiece, b: LinePiece): NearPlaces {
  const apart = subtract(a.from, b.from);
  const uv = dot(a.startTangent, b.startTangent);
  const u = dot(a.startTangent, apart);
  const v = dot(b.startTangent, apart);
  const square = 1 - uv * uv;
  let s: number;
  if (square > PARALLEL) s = between((uv * v - u) / square, a.length);
  else {
    const [start, stop] = [between(-u, a.length), between(-u + uv * b.length, a.length)];
    s = (start + stop) / 2;
  }
  const t = between(uv * s + v, b.length);
  s = between(uv * t - u, a.length);
  return {
    distance: distance(addScaled(a.from, a.startTangent, s), addScaled(b.from, b.startTangent, t)),
    alongA: s,
    alongB: t,
  };
}

const between = (value: number, most: number): number => Math.min(Math.max(value, 0), most);

/** Radians: an arc is looked along in stretches no longer than this. */
const STRETCH = Math.PI / 12;

function nearOfArc(arc: ArcPiece, other: Piece, below: number, visit: (near: NearPlaces) => void): void {
  // An arc of less than half a turn lies in the ball on its chord.
  const ball = distance(arc.from, arc.to) / 2;
  setFoot(other, interpolate(arc.from, arc.to, 0.5));
  if (foot.apart - ball >= below) return;
  const count = Math.max(1, Math.ceil(arc.angle / STRETCH));
  const length = arc.length / count;
  let from = slopeAt(arc, other, 0);
  if (from.slope >= 0) give(arc, other, 0, below, visit);
  for (let i = 1; i <= count; i++) {
    const to = slopeAt(arc, other, i * length);
    // Nowhere between them is it less than half the stretch allows.
    const least = Math.min(from.distance, to.distance) - length / 2;
    if (least < below && from.slope < 0 && to.slope >= 0)
      give(arc, other, risingAt(arc, other, from, to), below, visit);
    from = to;
  }
  if (from.slope < 0) give(arc, other, arc.length, below, visit);
}

function give(arc: ArcPiece, other: Piece, along: number, below: number, visit: (near: NearPlaces) => void): void {
  const nearest = nearestOnPiece(other, placeOnPiece(arc, along).point);
  if (nearest.distance < below) visit({ distance: nearest.distance, alongA: along, alongB: nearest.at - other.at });
}

/** mm: where the slope changes its sign is closed in on to this. */
const CLOSE = 1e-9;

/** By secants; where one side stays put, its slope is halved (the Illinois rule), so that both close in. */
function risingAt(arc: ArcPiece, other: Piece, from: Slope, to: Slope): number {
  let [low, atLow, high, atHigh] = [from.along, from.slope, to.along, to.slope];
  let stayed = 0;
  while (high - low > CLOSE) {
    const secant = low - (atLow * (high - low)) / (atHigh - atLow);
    const along = secant > low && secant < high ? secant : (low + high) / 2;
    const { slope } = slopeAt(arc, other, along);
    if (Math.abs(slope) < CLOSE) return along;
    if (slope < 0) {
      [low, atLow] = [along, slope];
      if (stayed < 0) atHigh /= 2;
      stayed = -1;
    } else {
      [high, atHigh] = [along, slope];
      if (stayed > 0) atLow /= 2;
      stayed = 1;
    }
  }
  return (low + high) / 2;
}

interface Slope {
  readonly slope: number;
  readonly distance: number;
  readonly along: number;
}

/** A place of the arc: scratch. */
const place: [number, number, number] = [0, 0, 0];

/** Of the distance to the other piece along the arc, times that distance: its sign counts. */
function slopeAt({ centre, from, startTangent: t, radius }: ArcPiece, other: Piece, along: number): Slope {
  const turned = along / radius;
  const [c, s] = [Math.cos(turned), Math.sin(turned)];
  for (let axis = 0; axis < 3; axis++)
    place[axis] = centre[axis]! + c * (from[axis]! - centre[axis]!) + s * radius * t[axis]!;
  setFoot(other, place);
  const off = [place[0] - foot.x, place[1] - foot.y, place[2] - foot.z];
  let slope = 0;
  for (let axis = 0; axis < 3; axis++)
    slope += off[axis]! * (c * t[axis]! - (s / radius) * (from[axis]! - centre[axis]!));
  return { slope, distance: foot.apart, along };
}
