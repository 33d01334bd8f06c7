/**
 * The places at which two pieces of centreline come nearest to one another: every least one, since the nearest of all may lie where a
 * tube's wall is cut away.
 *
 * Two straights have one, in closed form. Of an arc and another piece they lie at an end of one of them, in closed form, or where
 * both go on: along the arc, taken in stretches of some degrees and shorter ones where the two run nearly along each other, the slope of the distance
 * to the line or the ring that the other is part of is followed to where it changes from falling to rising. Lows nearer to one another than
 * the shortest stretch are taken for one, which lies farther by some millionths of a millimetre.
 */
import { foot, setFoot } from './foot.ts';
import type { ArcPiece, LinePiece, Piece } from './path.ts';
import { ROUNDING } from './tolerance.ts';
import { addScaled, distance, dot, interpolate, subtract } from './vector.ts';

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
const STRETCH = Math.PI / 36;
/** Times that such a stretch is halved, where it may hold two lows: an arc then stands off its chord by less than 2e-8 of its radius. */
const HALVINGS = 8;

/** Beside each other between their ends, or at an end of one of them: each of these alone is smooth, which the nearest of all is not. */
function nearOfArc(arc: ArcPiece, other: Piece, below: number, visit: (near: NearPlaces) => void): void {
  // An arc of less than half a turn lies in the ball on its chord.
  const ball = distance(arc.from, arc.to) / 2;
  setFoot(other, interpolate(arc.from, arc.to, 0.5));
  if (foot.apart - ball >= below) return;
  besideEnds(arc, other, (apart, alongA, alongB) => {
    if (apart < below) visit({ distance: apart, alongA, alongB });
  });
  besideEnds(other, arc, (apart, alongB, alongA) => {
    if (apart < below) visit({ distance: apart, alongA, alongB });
  });
  const bent = 1 / arc.radius + (other.kind === 'arc' ? 1 / other.radius : 0);
  const look = (from: Slope, to: Slope, halvings: number): void => {
    const length = to.along - from.along;
    // Nowhere between them is it less than half the stretch allows.
    if (Math.min(from.distance, to.distance) - length / 2 >= below) return;
    const rises = from.slope < 0 && to.slope >= 0;
    const far = Math.max(from.distance, to.distance);
    // So much the slope changes at most, but close to a ring's axis: it does not come back to its sign.
    if (!rises && Math.abs(from.slope) + Math.abs(to.slope) > length * (1 + far * bent)) return;
    // Where the two run nearly along each other the slope may turn round within the stretch, and hide a low or a second one; not where they
    // run side by side, as bends about one axis do.
    const isFlat = Math.max(Math.abs(from.slope), Math.abs(to.slope)) <= CLOSE;
    if (halvings > 0 && !isFlat && Math.abs(to.slope - from.slope) <= 3 * bent * length * length) {
      const middle = slopeAt(arc, other, (from.along + to.along) / 2);
      look(from, middle, halvings - 1);
      look(middle, to, halvings - 1);
    } else if (rises) {
      const along = risingAt(arc, other, from, to);
      const { distance: apart } = slopeAt(arc, other, along);
      setFoot(other, place);
      // Else the other piece ends before it.
      if (foot.apart < below && foot.apart <= apart + ROUNDING)
        visit({ distance: foot.apart, alongA: along, alongB: foot.at - other.at });
    }
  };
  const count = Math.max(1, Math.ceil(arc.angle / STRETCH));
  let from = slopeAt(arc, other, 0);
  for (let i = 1; i <= count; i++) {
    const to = slopeAt(arc, other, (i / count) * arc.length);
    look(from, to, HALVINGS);
    from = to;
  }
}

/** At each end of a piece, unless it comes nearer further in: how far away the other is, and the places along both, mm. */
function besideEnds(
  piece: Piece,
  other: Piece,
  give: (apart: number, along: number, alongOther: number) => void,
): void {
  for (const [end, inwards, along, sense] of [
    [piece.from, piece.startTangent, 0, 1],
    [piece.to, piece.endTangent, piece.length, -1],
  ] as const) {
    setFoot(other, end);
    const ahead = (foot.x - end[0]) * inwards[0] + (foot.y - end[1]) * inwards[1] + (foot.z - end[2]) * inwards[2];
    // Where the two touch there, rounding alone has a sense.
    if (ahead * sense <= ROUNDING) give(foot.apart, along, foot.at - other.at);
  }
}

/** mm: where the slope changes its sign is closed in on to this. */
const CLOSE = 1e-11;

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

/** A place of the arc, the tangent there and what is nearest of the other: scratch. */
const place: [number, number, number] = [0, 0, 0];
const tangent: [number, number, number] = [0, 0, 0];
const beside: [number, number, number] = [0, 0, 0];

/** Of the distance, along the arc, to what the other piece is part of, an endless line or a whole ring; times that distance: its sign counts. */
function slopeAt({ centre, from, startTangent: t, radius }: ArcPiece, other: Piece, along: number): Slope {
  const turned = along / radius;
  const [c, s] = [Math.cos(turned), Math.sin(turned)];
  for (let axis = 0; axis < 3; axis++) {
    const spoke = from[axis]! - centre[axis]!;
    place[axis] = centre[axis]! + c * spoke + s * radius * t[axis]!;
    tangent[axis] = c * t[axis]! - (s / radius) * spoke;
  }
  setBeside(other);
  const [x, y, z] = [place[0] - beside[0], place[1] - beside[1], place[2] - beside[2]];
  return {
    slope: x * tangent[0] + y * tangent[1] + z * tangent[2],
    distance: Math.sqrt(x * x + y * y + z * z),
    along,
  };
}

/** Sets `beside` to the place of the endless line or the whole ring that is nearest to `place`. */
function setBeside(other: Piece): void {
  const { from, startTangent: t } = other;
  const o = other.kind === 'line' ? from : other.centre;
  const [px, py, pz] = [place[0] - o[0], place[1] - o[1], place[2] - o[2]];
  const y = px * t[0] + py * t[1] + pz * t[2];
  if (other.kind === 'line') {
    for (let axis = 0; axis < 3; axis++) beside[axis] = from[axis]! + y * t[axis]!;
    return;
  }
  const { radius } = other;
  const x = (px * (from[0] - o[0]) + py * (from[1] - o[1]) + pz * (from[2] - o[2])) / radius;
  const aside = Math.sqrt(x * x + y * y);
  // On the ring's own axis all its places are as near.
  const [c, s] = aside > 0 ? [x / aside, y / aside] : [1, 0];
  for (let axis = 0; axis < 3; axis++) beside[axis] = o[axis]! + c * (from[axis]! - o[axis]!) + s * radius * t[axis]!;
}
