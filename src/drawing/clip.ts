/**
 * What of a drawing lies within a box: for a drawing larger than the paper, one sheet of it after the other. Lines are cut
 * exactly at the box (Liang and Barsky's parameters), arcs as chords. Words are never cut: see tiles.ts.
 */
import { chorded } from './move.ts';
import type { Arc, Line, Place2 } from './types.ts';

export interface Box2 {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

const within = ({ left, bottom, right, top }: Box2, { x, y }: Place2): boolean =>
  x >= left && x <= right && y >= bottom && y <= top;

/** Filled shapes that are not wholly inside are left out: only paper under words is filled on these drawings. */
export function clipped(marks: readonly (Line | Arc)[], box: Box2): Line[] {
  return marks.flatMap((mark): readonly Line[] => {
    if (mark.kind === 'arc') return clippedLine(chorded(mark), box);
    if (mark.fill !== null) return mark.places.every((place) => within(box, place)) ? [mark] : [];
    return clippedLine(mark, box);
  });
}

function clippedLine(line: Line, box: Box2): Line[] {
  const places = line.closed ? [...line.places, line.places[0]!] : line.places;
  if (places.every((place) => within(box, place))) return [line];
  const pieces: Place2[][] = [];
  let open: Place2[] = [];
  const close = (): void => {
    if (open.length > 1) pieces.push(open);
    open = [];
  };
  for (let i = 1; i < places.length; i++) {
    const part = clippedSegment(places[i - 1]!, places[i]!, box);
    if (part === null) {
      close();
      continue;
    }
    const [from, to] = part;
    const last = open.at(-1);
    if (last === undefined || last.x !== from.x || last.y !== from.y) {
      close();
      open.push(from);
    }
    open.push(to);
  }
  close();
  return pieces.map((piece) => ({ ...line, places: piece, closed: false }));
}

function clippedSegment(from: Place2, to: Place2, { left, bottom, right, top }: Box2): [Place2, Place2] | null {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  let [enter, leave] = [0, 1];
  const edges = [
    [-dx, from.x - left],
    [dx, right - from.x],
    [-dy, from.y - bottom],
    [dy, top - from.y],
  ] as const;
  for (const [rate, space] of edges) {
    if (rate === 0) {
      if (space < 0) return null;
      continue;
    }
    const at = space / rate;
    if (rate < 0) enter = Math.max(enter, at);
    else leave = Math.min(leave, at);
  }
  if (enter > leave) return null;
  const place = (at: number): Place2 =>
    at === 0 ? from : at === 1 ? to : { x: from.x + at * dx, y: from.y + at * dy };
  return [place(enter), place(leave)];
}
