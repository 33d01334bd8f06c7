/** The pieces of a foot as exact solids, its holes drilled: planes, and cylinders for a bend and for holes. */
import { drilledHoles } from '../../core/feet/corners.ts';
import { inPrism, prismsOf, type Prism } from '../../core/feet/solid.ts';
import { inCar, type Stand } from '../../core/feet/stand.ts';
import { arcPiece, linePiece, type Piece } from '../../core/geometry/path.ts';
import { toRadians } from '../../core/geometry/angle.ts';
import { addScaled, cross, normalize, scale, subtract, type Vec3 } from '../../core/geometry/vector.ts';
import type { Kink } from '../../core/job/kinds/kink.ts';
import { bar, cutBy, pushedSolid, scoped, solidsIn, type Keep, type Kernel, type Shape } from './kernel.ts';

export interface FootBody {
  readonly part: Prism['part'];
  readonly body: Shape;
}

/** mm. What is drilled begins before the steel and ends beyond it. */
const CLEAR = 1;

/** A body for each piece, noted with `keep`. */
export function footBodies(oc: Kernel, keep: Keep, stand: Stand): readonly FootBody[] {
  const { foot } = stand;
  return prismsOf(foot).map((prism) => {
    const kink = foot.kind === 'plate' ? foot.kink : undefined;
    const outline =
      kink === undefined || kink.angle === 0
        ? flatOutline(stand, prism)
        : bentOutline(stand, prism, kink, foot.thickness);
    const push = subtract(
      inCar(stand, inPrism(prism, [0, 0], prism.to)),
      inCar(stand, inPrism(prism, [0, 0], prism.from)),
    );
    const isDrilled = prism.part === 'plate' || prism.part === 'top';
    const body = scoped((brief) => {
      const whole = pushedSolid(oc, brief, outline, push);
      const drills = isDrilled
        ? drilledHoles(stand).map(({ from, direction, diameter }) =>
            bar(
              oc,
              brief,
              addScaled(from, direction, -CLEAR),
              direction,
              stand.along,
              diameter / 2,
              foot.thickness + 2 * CLEAR,
            ),
          )
        : [];
      const [solid] = solidsIn(oc, brief, cutBy(oc, brief, whole, drills));
      return keep(oc.TopoDS.Solid(solid!));
    });
    return { part: prism.part, body };
  });
}

const flatOutline = (stand: Stand, prism: Prism): Piece[] => {
  const [first, last] = [prism.section[0]!, prism.section.at(-1)!];
  return ringOf([first.low, last.low, last.high, first.high].map((at) => inCar(stand, inPrism(prism, at, prism.from))));
};

const ringOf = (places: readonly Vec3[]): Piece[] =>
  places.map((place, i) => linePiece(place, places[(i + 1) % places.length]!, 0));

/** The section of a bent plate: the flats of its drawn bend put back into the arcs that they stand for. */
function bentOutline(stand: Stand, prism: Prism, kink: Kink, thickness: number): Piece[] {
  const place = (at: readonly [number, number]): Vec3 => inCar(stand, inPrism(prism, at, prism.from));
  const [start, end] = [prism.section.at(0)!, prism.section.at(-1)!];
  const [begins, ends] = [prism.section.at(1)!, prism.section.at(-2)!];
  const turn = toRadians(Math.abs(kink.angle));
  // The section goes from its least place to its greatest: a bend on the far side is met going out, one on the near side coming in.
  const out = normalize(subtract(place(begins.low), place(start.low)));
  const up = normalize(subtract(place(start.high), place(start.low)));
  const lowIsInside = kink.angle > 0;
  const [lowRadius, highRadius] = lowIsInside
    ? [kink.radius, kink.radius + thickness]
    : [kink.radius + thickness, kink.radius];
  // Travel is right-hand about it: down and round where the plate falls, up where it rises.
  const about = scale(cross(out, up), lowIsInside ? -1 : 1);
  const low = arcPiece(place(begins.low), out, about, lowRadius, turn, 0);
  const back = normalize(subtract(place(ends.high), place(end.high)));
  const high = arcPiece(place(ends.high), back, scale(about, -1), highRadius, turn, 0);
  return [
    linePiece(place(start.low), low.from, 0),
    low,
    linePiece(low.to, place(end.low), 0),
    linePiece(place(end.low), place(end.high), 0),
    linePiece(place(end.high), high.from, 0),
    high,
    linePiece(high.to, place(start.high), 0),
    linePiece(place(start.high), place(start.low), 0),
  ];
}
