/**
 * Where labels stand on the screen so that none covers another: the most wanted choose first, each takes the first of
 * its places that is free, and one that finds none is left out until there is room.
 */

export interface Wish {
  /** Lower chooses first. */
  readonly rank: number;
  /** Size in pixels. */
  readonly width: number;
  readonly height: number;
  /** Middles it would accept, best first, in pixels. */
  readonly places: readonly { readonly x: number; readonly y: number }[];
}

export interface Placed {
  readonly x: number;
  readonly y: number;
}

const CLEAR = 2;

/** One answer a wish, in the same order; null where no place is free or all lie outside the bay. */
export function declutter(
  wishes: readonly Wish[],
  bay: { readonly width: number; readonly height: number },
): readonly (Placed | null)[] {
  const taken: { left: number; right: number; top: number; bottom: number }[] = [];
  const answers: (Placed | null)[] = wishes.map(() => null);
  const order = wishes.map((_, i) => i).toSorted((a, b) => wishes[a]!.rank - wishes[b]!.rank || a - b);
  for (const i of order) {
    const { width, height, places } = wishes[i]!;
    for (const { x, y } of places) {
      const box = {
        left: x - width / 2 - CLEAR,
        right: x + width / 2 + CLEAR,
        top: y - height / 2 - CLEAR,
        bottom: y + height / 2 + CLEAR,
      };
      if (box.left < 0 || box.top < 0 || box.right > bay.width || box.bottom > bay.height) continue;
      if (
        taken.some(
          (other) =>
            box.left < other.right && other.left < box.right && box.top < other.bottom && other.top < box.bottom,
        )
      )
        continue;
      taken.push(box);
      answers[i] = { x, y };
      break;
    }
  }
  return answers;
}
