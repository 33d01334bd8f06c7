/**
 * Where the tube is on the machine, at one angle of one bend. Bender axes, mm.
 *
 * The front is clamped to the die: it goes round with it, about the die's upright axis. What lies behind slides along
 * the feed by centreline radius x angle, and that much of it is laid round the die. The tube is rolled about itself so
 * that this bend's plane is level and it bends to the machine's side. A bend that is made has its own radius and its
 * net angle; one that is not yet made is as much straight tube as its arc will take. At either end the tube runs on
 * past the node by allowance less tip, and at least as far as the die's grip from the bend there: so it is never
 * shorter than what the shop cuts.
 */
import type { Radians } from '../geometry/angle.ts';
import { arcPiece, type ArcPiece, type LinePiece, type Path, type Piece } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { add, addScaled, rotateAbout, scale, subtract, X_AXIS, Z_AXIS, type Vec3 } from '../geometry/vector.ts';
import type { BendStep } from '../job/kinds/bent.ts';
import { beyondNode, gripShort } from '../solve/amount.ts';
import type { BendableTube } from './bendable.ts';
import type { Bend } from '../solve/types.ts';
import { dieCentre, sideOf } from './machine.ts';
import type { Pose } from './types.ts';

/**
 * The tube while bend `step.bend` is made, with the bends in `made` (1 = first from end A) made before it, and the
 * machine turned by `angle` from 0 up. The straights must not be negative.
 */
export function poseAt(tube: BendableTube, made: ReadonlySet<number>, step: BendStep, angle: Radians): Pose {
  const { die } = tube;
  const side = sideOf(die.bender);
  const front = layFront(tube, made, step);
  const rear = layRear(tube, made, step);
  const start: Vec3 = [0, 0, die.bender.planeHeight];
  const arc = arcPiece(start, X_AXIS, scale(Z_AXIS, side), die.centrelineRadius, angle, 0);
  return {
    front: turned(front, dieCentre(die, die.bender), side * angle),
    arc: angle > 0 ? { pieces: [arc], length: arc.length } : null,
    rear: slid(rear, die.centrelineRadius * angle),
  };
}

/** In front of the bend, before the machine is turned. */
export function layFront(tube: BendableTube, made: ReadonlySet<number>, step: BendStep): Path {
  const { bender } = tube.die;
  return layOutwards(tube, made, step.bend, step.front, 0, X_AXIS, scale(Z_AXIS, sideOf(bender)));
}

/** Behind it, before the machine is turned: what this bend will take is still straight. */
export function layRear(tube: BendableTube, made: ReadonlySet<number>, step: BendStep): Path {
  const { bender } = tube.die;
  const end = step.front === 'A' ? 'B' : 'A';
  const { arc } = tube.bends[step.bend - 1]!;
  return layOutwards(tube, made, step.bend, end, arc, scale(X_AXIS, -1), scale(Z_AXIS, -sideOf(bender)));
}

/** mm of tube beyond the tangent nearest to end A, and beyond the one nearest to end B. */
function endStraights(tube: BendableTube): readonly [number, number] {
  const { straights, ends } = tube;
  return [
    straights[0]! + beyondNode(ends[0]) + gripShort(tube, 0),
    straights.at(-1)! + beyondNode(ends[1]) + gripShort(tube, 1),
  ];
}

/**
 * From bend number `from` to end `towards`, as the tube is travelled outwards: along `direction` first, `lead` mm more
 * than the straight there. `normal`: the tube would turn right-hand about it at the bend it starts from. The turn from
 * one plane to the next reads the same whichever way the tube is travelled (docs/maths/marks.md).
 */
function layOutwards(
  tube: BendableTube,
  made: ReadonlySet<number>,
  from: number,
  towards: 'A' | 'B',
  lead: number,
  direction: Vec3,
  normal: Vec3,
): Path {
  const { bends, straights } = tube;
  const ways = endStraights(tube);
  const pieces: Piece[] = [];
  let position: Vec3 = [0, 0, tube.die.bender.planeHeight];
  let at = 0;
  let straight = lead;
  const runOn = () => {
    if (straight > ROUNDING || pieces.length === 0) pieces.push(straightPiece(position, direction, straight, at));
    position = addScaled(position, direction, straight);
    at += straight;
    straight = 0;
  };
  const [step, last] = towards === 'A' ? [-1, 0] : [1, bends.length - 1];
  for (let i = from - 1; i !== last;) {
    const rotation = bends[Math.max(i, i + step)]!.rotation;
    straight += straights[Math.max(i, i + step)]!;
    i += step;
    const bend: Bend = bends[i]!;
    normal = rotateAbout(normal, direction, rotation);
    if (made.has(i + 1)) {
      runOn();
      const arc = arcPiece(position, direction, normal, bend.radius, bend.angle, at);
      pieces.push(arc);
      ({ to: position, endTangent: direction } = arc);
      at += arc.length;
    } else straight += bend.arc;
  }
  straight += ways[towards === 'A' ? 0 : 1];
  runOn();
  return { pieces, length: at };
}

/** Like linePiece, but it keeps its direction where it has no length. */
function straightPiece(from: Vec3, direction: Vec3, length: number, at: number): LinePiece {
  const to = addScaled(from, direction, length);
  return { kind: 'line', at, length, from, to, startTangent: direction, endTangent: direction };
}

/** The path turned about the upright axis through `centre`. */
function turned({ pieces, length }: Path, centre: Vec3, angle: Radians): Path {
  const way = (v: Vec3): Vec3 => rotateAbout(v, Z_AXIS, angle);
  const place = (p: Vec3): Vec3 => add(centre, way(subtract(p, centre)));
  return {
    length,
    pieces: pieces.map((piece): Piece => {
      const [from, to] = [place(piece.from), place(piece.to)];
      const ends = { from, to, startTangent: way(piece.startTangent), endTangent: way(piece.endTangent) };
      if (piece.kind === 'line') return { ...piece, ...ends };
      return { ...piece, ...ends, centre: place(piece.centre), normal: way(piece.normal) };
    }),
  };
}

/** The path moved along the feed by so many mm; what passes the start of bend is no longer behind it. */
function slid({ pieces, length }: Path, by: number): Path {
  const first = pieces[0] as LinePiece;
  const left = Math.max(0, first.length - by);
  const rest = pieces.slice(1).map((piece): Piece => {
    const moved = { at: piece.at - first.length + left, from: along(piece.from, by), to: along(piece.to, by) };
    if (piece.kind === 'line') return { ...piece, ...moved };
    return { ...piece, ...moved, centre: along(piece.centre, by) } satisfies ArcPiece;
  });
  const head = straightPiece(first.from, first.startTangent, left, 0);
  return {
    pieces: left > ROUNDING || rest.length === 0 ? [head, ...rest] : rest,
    length: length - first.length + left,
  };
}

const along = ([x, y, z]: Vec3, by: number): Vec3 => [x + by, y, z];
