/**
 * Directions round a ring for names that must not stand on one another: each as near to its own as the others leave room for.
 * Names that come too near stand side by side about the middle of where they would be, in their order round the ring.
 */
import { wrapHalfTurn, type Radians } from '../../core/geometry/angle.ts';

interface Row {
  /** Mean of the wanted directions of its names, unwrapped. */
  readonly middle: number;
  readonly count: number;
}

/**
 * @param wanted the direction of each name.
 * @param apart the least angle between two of them; all of them must fit round the ring with it.
 * @returns a direction for each, in the order given, unwrapped.
 */
export function spread(wanted: readonly Radians[], apart: Radians): Radians[] {
  const order = fromWidestGap(wanted);
  const rows: Row[] = [];
  for (const at of order.map(({ angle }) => angle)) {
    let row: Row = { middle: at, count: 1 };
    for (let last = rows.at(-1); last !== undefined && overlap(last, row, apart); last = rows.at(-1)) {
      rows.pop();
      const count = last.count + row.count;
      row = { middle: (last.middle * last.count + row.middle * row.count) / count, count };
    }
    rows.push(row);
  }
  const placed = rows.flatMap(({ middle, count }) =>
    Array.from({ length: count }, (_, at) => middle + (at - (count - 1) / 2) * apart),
  );
  return order
    .map(({ index }, at) => ({ index, angle: placed[at]! }))
    .toSorted((one, other) => one.index - other.index)
    .map(({ angle }) => angle);
}

/** Whether two rows, side by side, would come nearer than two names may. */
const overlap = (one: Row, next: Row, apart: Radians): boolean =>
  next.middle - one.middle < ((one.count + next.count) / 2) * apart;

/** In rising order, the ring cut open where there is most room, so that no row goes over the cut; equal ones in the order given. */
function fromWidestGap(wanted: readonly Radians[]): { readonly angle: Radians; readonly index: number }[] {
  const sorted = wanted
    .map((angle, index) => ({ angle: wrapHalfTurn(angle), index }))
    .toSorted((one, other) => one.angle - other.angle || one.index - other.index);
  const turn = 2 * Math.PI;
  const gaps = sorted.map(({ angle }, at) => angle - (at === 0 ? sorted.at(-1)!.angle - turn : sorted[at - 1]!.angle));
  const cut = gaps.indexOf(Math.max(...gaps));
  return [...sorted.slice(cut), ...sorted.slice(0, cut).map(({ angle, index }) => ({ angle: angle + turn, index }))];
}
