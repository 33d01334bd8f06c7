/** Tubes laid down by hand, so that the mesh builders are tested without the solver. */
import type { Path, Piece } from '../../../src/core/geometry/path.ts';
import {
  add,
  addScaled,
  cross,
  distance,
  dot,
  normalize,
  rejectFrom,
  rotateAbout,
  scale,
  subtract,
  type Vec3,
} from '../../../src/core/geometry/vector.ts';
import type { SolvedTube, TubeEnd } from '../../../src/core/solve/types.ts';

export interface Step {
  readonly straight: number;
  /** Turn after the straight, about a unit axis square to the direction of travel. */
  readonly turn?: { readonly angle: number; readonly about: Vec3; readonly radius: number };
}

/** Walks from the origin along `heading`. */
export function walkPath(heading: Vec3, steps: readonly Step[]): Path {
  const pieces: Piece[] = [];
  let at: Vec3 = [0, 0, 0];
  let going = heading;
  let length = 0;
  for (const { straight, turn } of steps) {
    const to = addScaled(at, going, straight);
    pieces.push({ kind: 'line', at: length, length: straight, from: at, to, startTangent: going, endTangent: going });
    length += straight;
    at = to;
    if (turn === undefined) continue;
    const centre = addScaled(at, cross(turn.about, going), turn.radius);
    const end = add(centre, rotateAbout(subtract(at, centre), turn.about, turn.angle));
    const leaving = rotateAbout(going, turn.about, turn.angle);
    const arc = turn.radius * turn.angle;
    pieces.push({
      kind: 'arc',
      at: length,
      length: arc,
      from: at,
      to: end,
      startTangent: going,
      endTangent: leaving,
      centre,
      radius: turn.radius,
      normal: turn.about,
      angle: turn.angle,
    });
    length += arc;
    at = end;
    going = leaving;
  }
  return { pieces, length };
}

export type Trim = (phi: number, radius: number) => number;

/** Direction from the axis to the wall at `phi`, right-hand about the end's direction from its reference. */
export const wallDirection = (direction: Vec3, reference: Vec3, phi: number): Vec3 =>
  add(scale(reference, Math.cos(phi)), scale(cross(direction, reference), Math.sin(phi)));

/** First contact, coming from inside the tube, of a line along `direction` with a round bar through `through`. */
export function leaveBar(start: Vec3, direction: Vec3, through: Vec3, axis: Vec3, radius: number): number {
  const d = rejectFrom(direction, axis);
  const o = rejectFrom(subtract(start, through), axis);
  const a = dot(d, d);
  const b = dot(o, d);
  return (-b + Math.sqrt(b * b - a * (dot(o, o) - radius * radius))) / a;
}

export interface EndByHand {
  readonly reference: Vec3;
  readonly trim: Trim;
}

const OD = 44.45;
const WALL = 3.048;
const SECTION = { id: 's', name: '', outerDiameter: OD, wall: WALL, material: '' };

/** 1 3/4 x .120 along `path`. */
export function tubeByHand(path: Path, hands: readonly [EndByHand, EndByHand]): SolvedTube {
  const first = path.pieces[0]!;
  const last = path.pieces.at(-1)!;
  const makeEnd = (position: Vec3, direction: Vec3, { reference, trim }: EndByHand): TubeEnd => {
    const sample = (radius: number) => Float64Array.from({ length: 360 }, (_, i) => trim((i * Math.PI) / 180, radius));
    const outer = sample(OD / 2);
    const reached = [...outer].filter((s) => !Number.isNaN(s));
    const at = (s: number) => ({ phi: (outer.indexOf(s) * Math.PI) / 180, s });
    const [least, greatest] = [Math.min(...reached), Math.max(...reached)];
    const square = normalize(rejectFrom(reference, direction));
    return {
      node: 'n',
      position,
      spec: { fit: 'square', allowance: 0 },
      fit: 'square',
      direction,
      reference: square,
      cuts: [],
      butted: [],
      plateNormal: null,
      foot: null,
      unmitred: null,
      cutter: {
        bundle: { origin: position, direction, reference: square },
        section: SECTION,
        plateNormal: null,
        rise: 0,
        sleeves: [],
      },
      outer,
      inner: sample(OD / 2 - WALL),
      tip: reached.length > 0 ? least : null,
      throat: reached.length > 0 ? greatest : null,
      lows: reached.length > 0 ? [at(least)] : [],
      high: reached.length > 0 ? at(greatest) : null,
      passedBy: reached.length < outer.length,
      meanTrim: 0,
      allowance: 0,
    };
  };
  const arcs = path.pieces.filter((piece) => piece.kind === 'arc');
  return {
    id: 't',
    name: 'Tube',
    number: 1,
    bar: 't',
    piece: null,
    member: {
      id: 't',
      name: 'Tube',
      role: '',
      path: ['a', 'b'],
      section: 's',
      mirror: false,
      ends: [
        { fit: 'square', allowance: 0 },
        { fit: 'square', allowance: 0 },
      ],
    },
    twinOf: null,
    asDrawn: null,
    held: null,
    section: SECTION,
    die: null,
    pullLaw: null,
    route: [first.from, last.to],
    corners: [first.from, last.to],
    path,
    bends: arcs.map((arc) => ({
      corner: arc.from,
      angle: arc.angle,
      rotation: 0,
      radius: arc.radius,
      setBack: arc.radius * Math.tan(arc.angle / 2),
      arc: arc.length,
      start: arc.at,
      end: arc.at + arc.length,
      centre: arc.centre,
      normal: arc.normal,
    })),
    straights: path.pieces.filter((piece) => piece.kind === 'line').map((line) => line.length),
    developedLength: path.length,
    sharpCornerLength: distance(first.from, last.to),
    blankLength: path.length,
    mass: 1,
    ends: [makeEnd(first.from, first.startTangent, hands[0]), makeEnd(last.to, scale(last.endTangent, -1), hands[1])],
  };
}
