/**
 * Where labels stand on the screen so that none covers another: the most wanted choose first, each takes the first of
 * its places that is free, and one that finds none is left out until there is room.
 */

export interface Place {
  /** Of the label's middle, in pixels. */
  readonly x: number;
  readonly y: number;
  /** Asked last, of a place that is free: may the label stand there? */
  readonly stands?: () => boolean;
}

export interface Wish {
  /** Lower chooses first. */
  readonly rank: number;
  /** Size in pixels. */
  readonly width: number;
  readonly height: number;
  /** Best first; only as many are asked for as are needed. */
  readonly places: Iterable<Place>;
}

export interface Placed {
  readonly x: number;
  readonly y: number;
}

interface Area {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const CLEAR = 2;

/** One answer a wish, in the same order; null where no place is free or all lie outside the bay. */
export function declutter(
  wishes: readonly Wish[],
  bay: { readonly width: number; readonly height: number },
): readonly (Placed | null)[] {
  const taken = takenAreas();
  const answers: (Placed | null)[] = wishes.map(() => null);
  const order = wishes.map((_, i) => i).toSorted((a, b) => wishes[a]!.rank - wishes[b]!.rank || a - b);
  for (const i of order) {
    const { width, height, places } = wishes[i]!;
    for (const { x, y, stands } of places) {
      const area = {
        left: x - width / 2 - CLEAR,
        right: x + width / 2 + CLEAR,
        top: y - height / 2 - CLEAR,
        bottom: y + height / 2 + CLEAR,
      };
      if (area.left < 0 || area.top < 0 || area.right > bay.width || area.bottom > bay.height) continue;
      if (!taken.isFree(area) || stands?.() === false) continue;
      taken.take(area);
      answers[i] = { x, y };
      break;
    }
  }
  return answers;
}

/** Pixels: about a label. */
const CELL = 64;

/** What is taken, by the cells of a grid, so that a label looks only at those near it. */
function takenAreas(): { isFree(area: Area): boolean; take(area: Area): void } {
  const cells = new Map<number, Area[]>();
  const cellsOf = function* ({ left, right, top, bottom }: Area): Generator<number> {
    for (let row = Math.floor(top / CELL); row <= bottom / CELL; row += 1)
      for (let column = Math.floor(left / CELL); column <= right / CELL; column += 1) yield row * 1000 + column;
  };
  return {
    isFree(area) {
      for (const cell of cellsOf(area)) {
        if (cells.get(cell)?.some((other) => overlap(area, other))) return false;
      }
      return true;
    },
    take(area) {
      for (const cell of cellsOf(area)) {
        const here = cells.get(cell);
        if (here === undefined) cells.set(cell, [area]);
        else here.push(area);
      }
    },
  };
}

const overlap = (a: Area, b: Area): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
