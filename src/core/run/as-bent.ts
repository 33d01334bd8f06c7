/**
 * The tube as it was bent: what was measured on it, the rest as it was planned.
 *
 * Marks are absolute: a bend starts at its mark, on the side of the end that was in front, and one that came out further takes its
 * arc from the straight behind it. A bend that is made keeps the mark that it was made at. A straight that was measured goes
 * before the marks. The tube keeps the length that it was cut to. A bend
 * keeps the radius it is laid out with; where that is taken from the pulls it is the die's radius x pulled / net, as long as that can be true.
 */
import { toRadians, type Radians } from '../geometry/angle.ts';
import { arcPiece, linePiece, type Piece } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { addScaled, distance, normalize, subtract, type Vec3 } from '../geometry/vector.ts';
import type { BentBend, BentTube } from '../job/kinds/bent.ts';
import { beyondNode } from '../solve/amount.ts';
import { rollOut, type RolledBend, type RollStart } from '../solve/roll-out.ts';
import type { SolvedTube } from '../solve/types.ts';
import { openedRadius } from '../springback/opened-radius.ts';
import { checkDimensions, type CheckDimension } from './check-dimensions.ts';
import { sawn, type SawnTube } from './sawn-tube.ts';

export interface AsBent {
  /** From end A; straight: tangent to tangent before the bend. */
  readonly bends: readonly RolledBend[];
  /** From the last bend to end B's node, mm. */
  readonly tail: number;
  /** End A's node held, and the plane of bend 1. */
  readonly form: SawnTube;
  readonly checks: readonly CheckDimension[];
  /** Where end B's node comes to lie, car axes, and how far that is from its place, mm. */
  readonly endB: Vec3;
  readonly endMoves: number;
}

/** How a tube lies on its blank, mm from end A's node as it was cut. */
export interface OnBlank {
  /** Of each bend from end A the tangent nearer the end in front: where it starts on the machine. */
  readonly starts: readonly number[];
  /** From end A's node to end B's. */
  readonly length: number;
}

/** As the tube is laid out. */
export const onBlank = ({ bends, developedLength }: SolvedTube, order: BentTube['order']): OnBlank => {
  const fronts = new Map(order.map(({ bend, front }) => [bend, front]));
  return {
    starts: bends.map(({ start, end }, i) => (fronts.get(i + 1) === 'B' ? end : start)),
    length: developedLength,
  };
};

/** A reading of a bend that the tube has not is passed over. */
export function asBent(
  tube: SolvedTube,
  { order, bends: made }: Pick<BentTube, 'order' | 'bends'>,
  { starts, length }: OnBlank = onBlank(tube, order),
): AsBent {
  const readings = new Map(made.map((each) => [each.bend, each]));
  const fronts = new Map(order.map(({ bend, front }) => [bend, front]));
  let behind = 0;
  const bends = tube.bends.map((planned, i): RolledBend => {
    const reading = readings.get(i + 1);
    const angle: Radians = reading === undefined ? planned.angle : toRadians(reading.net);
    const radius = radiusOf(tube, planned.radius, reading);
    const begun = reading?.start ?? starts[i]!;
    const byMark = fronts.get(i + 1) === 'B' ? begun - radius * angle : begun;
    const straight = reading?.straight ?? byMark - behind;
    behind += straight + radius * angle;
    const rotation = i > 0 && reading?.rotation !== undefined ? toRadians(reading.rotation) : planned.rotation;
    return { straight, rotation, angle, radius };
  });
  const tail = length - behind;
  const start = {
    position: tube.corners[0]!,
    direction: normalize(subtract(tube.corners[1]!, tube.corners[0]!)),
    normal: tube.bends[0]?.normal ?? tube.ends[0].reference,
  };
  const places = rollOut(start, bends, tail);
  const form = {
    pieces: sawn(piecesOf(start, bends, tail, places), tube.ends.map(beyondNode)),
    outerDiameter: tube.section.outerDiameter,
  };
  const endB = places.at(-1)!.position;
  return {
    bends,
    tail,
    form,
    checks: checkDimensions(form),
    endB,
    endMoves: distance(endB, tube.corners.at(-1)!),
  };
}

const radiusOf = ({ die }: SolvedTube, planned: number, reading: BentBend | undefined): number =>
  reading === undefined || die === null || die.radius === 'nominal'
    ? planned
    : openedRadius(die.centrelineRadius, reading.pulled, reading.net);

function piecesOf(
  start: RollStart,
  bends: readonly RolledBend[],
  tail: number,
  places: readonly RollStart[],
): readonly Piece[] {
  const pieces: Piece[] = [];
  let at = 0;
  let { position, direction } = start;
  const straightOn = (straight: number): void => {
    const to = addScaled(position, direction, straight);
    if (straight > ROUNDING) pieces.push(linePiece(position, to, at));
    at += straight;
    position = to;
  };
  bends.forEach(({ straight, angle, radius }, i) => {
    straightOn(straight);
    pieces.push(arcPiece(position, direction, places[i]!.normal, radius, angle, at));
    at += radius * angle;
    ({ position, direction } = places[i]!);
  });
  straightOn(tail);
  return pieces;
}
