/**
 * Where the card stands beside what is aimed at: at a corner of the aim from which it hides neither the leg that leads there nor the strip and
 * the keys of the views; where there is no such corner, along the lower or the upper edge. Pure; pixels of the bay.
 */

interface Spot {
  readonly x: number;
  readonly y: number;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Room {
  readonly bay: Size;
  /** What the views' keys take of the lower edge. */
  readonly below: number;
  /** The drawing strip. */
  readonly strip: Box | null;
}

/** From what is aimed at to the card, and what it keeps off the bay's edge. */
const BESIDE = 18;
const EDGE = 8;

/**
 * The card's upper left corner.
 *
 * @param from where the leg begins; null where none does
 */
export function standBeside(card: Size, { bay, below, strip }: Room, aim: Spot, from: Spot | null): Spot {
  const boxAt = (left: number, top: number): Box => ({
    left,
    top,
    right: left + card.width,
    bottom: top + card.height,
  });
  const [left, right] = [aim.x - BESIDE - card.width, aim.x + BESIDE];
  const [above, under] = [aim.y - BESIDE - card.height, aim.y + BESIDE];
  const lowest = bay.height - below - EDGE;
  const isFree = (box: Box): boolean =>
    box.left >= EDGE &&
    box.right <= bay.width - EDGE &&
    box.top >= EDGE &&
    box.bottom <= lowest &&
    (strip === null || !overlap(box, strip));
  const free = [boxAt(right, under), boxAt(left, under), boxAt(right, above), boxAt(left, above)].filter(isFree);
  const chosen = free.find((box) => from === null || !crosses(box, from, aim)) ?? free[0];
  if (chosen !== undefined) return { x: chosen.left, y: chosen.top };

  const x = clamp(aim.x - card.width / 2, EDGE, bay.width - EDGE - card.width);
  const low = boxAt(x, lowest - card.height);
  const isUnderStrip = strip !== null && strip.left < low.right && strip.right > low.left && strip.top <= EDGE;
  const high = boxAt(x, isUnderStrip ? strip.bottom + EDGE : EDGE);
  const top = aim.y + BESIDE <= low.top || aim.y - BESIDE < high.bottom ? low.top : high.top;
  if (top >= high.top && !overlap(boxAt(x, top), around(aim))) return { x, y: top };
  // Too low a bay for it above or below: beside the aim, or as far aside as there is room.
  const farthest = aim.x > bay.width / 2 ? EDGE : Math.max(EDGE, bay.width - EDGE - card.width);
  const aside = right + card.width <= bay.width - EDGE ? right : left >= EDGE ? left : farthest;
  return { x: aside, y: Math.max(high.top, low.top) };
}

const clamp = (value: number, least: number, greatest: number): number => Math.max(least, Math.min(greatest, value));

const around = ({ x, y }: Spot): Box => ({ left: x - EDGE, top: y - EDGE, right: x + EDGE, bottom: y + EDGE });

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Whether any of the line from `a` to `b` lies in the box: what is left of it between the four edges. */
function crosses({ left, top, right, bottom }: Box, a: Spot, b: Spot): boolean {
  let [first, last] = [0, 1];
  for (const [start, way, least, greatest] of [
    [a.x, b.x - a.x, left, right],
    [a.y, b.y - a.y, top, bottom],
  ] as const) {
    if (way === 0) {
      if (start < least || start > greatest) return false;
      continue;
    }
    const [into, out] = [(least - start) / way, (greatest - start) / way];
    first = Math.max(first, Math.min(into, out));
    last = Math.min(last, Math.max(into, out));
  }
  return first <= last;
}
