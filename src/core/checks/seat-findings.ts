/** A tube that was measured in the car: what of the figures is not met, since they cannot all be so; and whether one of them hardly tells where it is. */
import { AXIS_INDEX, distance, type Vec3 } from '../geometry/vector.ts';
import { SEAT_PLACES, type SeatPlace } from '../job/kinds/bent.ts';
import { seatFigures, seatMoves, seatPlace, type SeatFigure } from '../solve/seat.ts';

import type { Frame, SolvedTube } from '../solve/types.ts';
import type { SeatLoose, SeatMissed } from './made-types.ts';
import { FITS } from './misfit.ts';

/** mm, as a tape in the car is good to. Common practice. */
const TAPE = 1;

/** A figure that moves the tube by more than this for each millimetre is read too coarsely by a tape, and is no place for it to stand by. */
const LOOSE = 5;

/** None where all figures are met, and none of a tube that does not stand by any. */
export function* seatTrouble(tube: SolvedTube, { job }: Frame): Generator<SeatMissed | SeatLoose> {
  const run = job.bent.find((each) => each.tube === tube.id && each.stands);
  if (run?.seat === undefined || tube.asDrawn === null) return;
  const figures = seatFigures(run, job.points);
  yield* missedOf(tube, figures);
  yield* looseOf(tube, tube.asDrawn, figures);
}

function* looseOf(tube: SolvedTube, drawn: SolvedTube, figures: readonly SeatFigure[]): Generator<SeatLoose> {
  const all = seatMoves(tube, drawn.corners, figures);
  const moves = Math.max(...all);
  const figure = figures[all.indexOf(moves)];
  if (figure === undefined || moves <= LOOSE) return;
  const { at: place, axis } = figure;
  const base = { severity: 'warning', source: 'practice', tube: tube.id, at: seatPlace(tube, place) } as const;
  yield { ...base, id: 'made/seat-loose', place, axis, moves };
}

function* missedOf(tube: SolvedTube, figures: readonly SeatFigure[]): Generator<SeatMissed> {
  const missed = SEAT_PLACES.map((place) => ({ place, by: missAt(tube, place, figures) })).filter(
    ({ by }) => mostOf(by) > 0,
  );
  if (missed.length === 0) return;
  const worst = missed.reduce((most, each) => (mostOf(each.by) > mostOf(most.by) ? each : most));
  yield {
    id: 'made/seat-missed',
    severity: mostOf(worst.by) > TAPE ? 'warning' : 'note',
    source: 'practice',
    tube: tube.id,
    at: seatPlace(tube, worst.place),
    missed,
    apart: PAIRS.flatMap((places) => apart(tube, places, figures)),
  };
}

const mostOf = (by: Vec3): number => Math.max(...by.map(Math.abs));

function missAt(tube: SolvedTube, place: SeatPlace, figures: readonly SeatFigure[]): Vec3 {
  const stands = seatPlace(tube, place);
  const by: [number, number, number] = [0, 0, 0];
  for (const { at, axis, value } of figures) {
    const miss = stands[AXIS_INDEX[axis]] - value;
    if (at === place && Math.abs(miss) > FITS) by[AXIS_INDEX[axis]] = miss;
  }
  return by;
}

const PAIRS = [
  ['A', 'B'],
  ['A', 'middle'],
  ['middle', 'B'],
] as const satisfies readonly (readonly [SeatPlace, SeatPlace])[];

function apart(
  tube: SolvedTube,
  places: readonly [SeatPlace, SeatPlace],
  figures: readonly SeatFigure[],
): SeatMissed['apart'] {
  const [from, to] = places.map((place) => measuredWhole(place, figures));
  if (from == null || to == null) return [];
  const measured = distance(from, to);
  const built = distance(seatPlace(tube, places[0]), seatPlace(tube, places[1]));
  return Math.abs(measured - built) > FITS ? [{ places, measured, built }] : [];
}

/** Null unless all three coordinates were. */
function measuredWhole(place: SeatPlace, figures: readonly SeatFigure[]): Vec3 | null {
  const values = figures.filter(({ at }) => at === place).map(({ value }) => value);
  return values.length === 3 ? (values as unknown as Vec3) : null;
}
