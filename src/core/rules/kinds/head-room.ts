/**
 * Room for the heads of the drivers, mm, each on their own. `box` and `padding` go by the helmet's box with the room that the head moves in; all else by the
 * helmet where it was measured, on a driver who sits still, as a book has it.
 *
 * `box` the least gap to a tube's outside; `line-front` and `line-stay` under a line over the structure (under-line.ts); `behind` from the flat back of the
 * helmet's box to the wall of the nearest tube, of what of its centreline lies behind that; `circle` a ball with its top at the helmet's top; `padding` how
 * much of which tubes is near (padding.ts). docs/maths/head-room.md.
 */
import { outsideOf } from '../../gaps/outside.ts';
import { gapToStretch, stretchBetween } from '../../gaps/stretch-gap.ts';
import { arcPiece, linePiece, placeOnPiece, type Piece } from '../../geometry/path.ts';
import { placesInPlane } from '../../geometry/plane-places.ts';
import { nearestToBox, signedDistanceToBox, type SolidBox } from '../../geometry/solid-box.ts';
import { addScaled, normalize, subtract, X_AXIS, Y_AXIS, Z_AXIS } from '../../geometry/vector.ts';
import type { DriverEnvelope } from '../../job/kinds/envelope.ts';
import type { CheckOf } from '../../job/kinds/rule-check.ts';
import { placeAmong } from '../../solve/envelope-box.ts';
import type { SolvedTube } from '../../solve/types.ts';
import type { Questions } from '../questions.ts';
import type { Judge, Measured, Outcome } from '../types.ts';
import { driversOf, nearestTube } from './drivers.ts';
import { padding } from './padding.ts';
import { underLine } from './under-line.ts';

export const headRoom: Judge<'head-room'> = (check, ask) => {
  const drivers = driversOf(ask);
  if (drivers.length === 0) return [{ unknown: { id: 'no-driver' }, concerns: [], at: null }];
  if (check.of === 'line-front' || check.of === 'line-stay') return underLine(check, ask, drivers);
  const tubes = ask.tubes(check.roles.length === 0 && check.only === undefined ? undefined : barsOf(check, ask));
  if (check.of === 'padding') return padding(check, ask, drivers, tubes);
  return drivers.flatMap((driver): readonly Outcome[] => {
    if (check.of === 'box') return nearestTube(driver, ask, tubes);
    const found = check.of === 'circle' ? toBall(driver, ask, tubes, check.diameter) : behind(driver, ask, tubes);
    if (found !== null) return [found];
    // What is behind one head says nothing of another.
    return tubes.length === 0 ? [] : [{ unknown: { id: 'nothing-behind' }, concerns: [], at: topOf(driver, ask) }];
  });
};

const topOf = (driver: DriverEnvelope, ask: Questions) => placeAmong(ask.points(), driver.helmetTop);

const barsOf = (check: CheckOf<'head-room'>, ask: Questions) => ask.bars(check.roles, check.only);

/** mm. A helmeted head where the article says nothing (Formula SAE 2026 F.5.6.5). */
const BALL = 300;

function toBall(driver: DriverEnvelope, ask: Questions, tubes: readonly SolvedTube[], across = BALL): Measured | null {
  const radius = across / 2;
  const centre = addScaled(placeAmong(ask.points(), driver.helmetTop)!, Z_AXIS, -radius);
  let best: Measured | null = null;
  for (const tube of tubes) {
    const below: number = best === null ? Infinity : best.value + radius;
    const gap = gapToStretch(outsideOf(tube), stretchBetween(centre, centre), below);
    if (gap === null || gap.distance >= below) continue;
    const outwards = normalize(subtract(gap.onTube, centre));
    best = {
      value: gap.distance - radius,
      concerns: [tube.id],
      envelope: driver.id,
      at: gap.onTube,
      to: addScaled(centre, outwards, gap.distance < 0 ? -radius : radius),
    };
  }
  return best;
}

function behind(driver: DriverEnvelope, ask: Questions, tubes: readonly SolvedTube[]): Measured | null {
  const [length, width, height] = driver.helmet;
  const top = placeAmong(ask.points(), driver.helmetTop)!;
  const back: SolidBox = {
    centre: [top[0] - length / 2, top[1], top[2] - height / 2],
    half: [0, width / 2, height / 2],
    axes: [X_AXIS, Y_AXIS, Z_AXIS],
  };
  let best: Measured | null = null;
  for (const tube of tubes) {
    const { pieces, radius } = outsideOf(tube);
    for (const piece of pieces.flatMap((each) => partsBehind(each, back.centre[0]))) {
      const { distance, along } = nearestToBox(piece, back);
      if (best !== null && distance - radius >= best.value) continue;
      const { point } = placeOnPiece(piece, along);
      const away = signedDistanceToBox(point, back).gradient;
      best = {
        value: distance - radius,
        concerns: [tube.id],
        envelope: driver.id,
        at: addScaled(point, away, -radius),
        to: addScaled(point, away, -distance),
      };
    }
  }
  return best;
}

/** What of a piece lies at x or behind. */
function partsBehind(piece: Piece, x: number): readonly Piece[] {
  const crossings = placesInPlane({ pieces: [piece], length: piece.length }, 0, x).map(({ at }) => at - piece.at);
  const cuts = [0, ...crossings, piece.length].filter((at, i, all) => i === 0 || at > all[i - 1]!);
  if (cuts.length === 1) return piece.from[0] <= x ? [piece] : [];
  return cuts.slice(1).flatMap((to, i): readonly Piece[] => {
    const from = cuts[i]!;
    if (placeOnPiece(piece, (from + to) / 2).point[0] > x) return [];
    const [start, stop] = [placeOnPiece(piece, from), placeOnPiece(piece, to)];
    if (piece.kind === 'line') return [linePiece(start.point, stop.point, piece.at + from)];
    const { normal, radius } = piece;
    return [arcPiece(start.point, start.tangent, normal, radius, (to - from) / radius, piece.at + from)];
  });
}
