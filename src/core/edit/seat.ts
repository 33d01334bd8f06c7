/** Edits of where a tube was measured in the car. A place of which nothing is left is taken out, and the last of them with the list. */
import type { Axis } from '../geometry/vector.ts';
import { SEAT_PLACES, type BentTube, type Seat, type SeatPlace } from '../job/kinds/bent.ts';
import type { PointRef, TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { changeRun } from './bent.ts';

/** One coordinate of the place, mm in the car; null: not measured. It takes the place of a point. */
export const setSeat = (job: Job, tube: TubeRef, at: SeatPlace, axis: Axis, value: number | null): Job =>
  changeSeat(job, tube, at, (seat) => {
    if ((seat[axis] ?? null) === value) return null;
    const { point: _, [axis]: __, ...rest } = seat;
    return value === null ? rest : { ...rest, [axis]: value };
  });

/** The point that the place is at; null: at none. It takes the place of coordinates. */
export const setSeatPoint = (job: Job, tube: TubeRef, at: SeatPlace, point: PointRef | null): Job =>
  changeSeat(job, tube, at, (seat) => {
    if ((seat.point ?? null) === point) return null;
    return point === null ? { at } : { at, point };
  });

/** `change` answers null where it changes nothing. */
const changeSeat = (job: Job, tube: TubeRef, at: SeatPlace, change: (seat: Seat) => Seat | null): Job =>
  changeRun(job, tube, (run) => {
    const seats = new Map(run.seat?.map((seat) => [seat.at, seat]));
    const changed = change(seats.get(at) ?? { at });
    return changed === null ? run : withSeats(run, seats.set(at, changed));
  });

function withSeats(run: BentTube, seats: ReadonlyMap<SeatPlace, Seat>): BentTube {
  const { seat: _, ...rest } = run;
  const seat = SEAT_PLACES.flatMap((at) => seats.get(at) ?? []).filter(({ point, x, y, z }) =>
    [point, x, y, z].some((given) => given !== undefined),
  );
  return seat.length === 0 ? rest : { ...rest, seat };
}
