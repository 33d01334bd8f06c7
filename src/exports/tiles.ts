/**
 * A drawing larger than the paper, as sheets to be laid edge to edge. Neighbours overlap; in the overlap both carry the line at
 * which they are joined, and crosses with the same name that must come to lie on one another.
 */
import { clipped, type Box2 } from './drawing/clip.ts';
import { moved } from './drawing/move.ts';
import type { Size } from './drawing/shelves.ts';
import { DASHED, FINE, line, words } from './drawing/strokes.ts';
import type { Mark, Place2 } from './drawing/types.ts';

export interface Tile {
  /** B3: second row from the top, third column from the left. */
  readonly name: string;
  /** In the drawing's own coordinates. */
  readonly box: Box2;
  /** From the room's lower left corner. */
  readonly marks: readonly Mark[];
}

/** What two neighbours have in common, mm. */
const OVERLAP = 12;
const CROSS = 4;

/** Tiles row by row from the top; those on which nothing is drawn are left out. `marks` stand in 0..width, 0..height. */
export function tiled(marks: readonly Mark[], { width, height }: Size, room: Size): Tile[] {
  const columns = countOf(width, room.width);
  const rows = countOf(height, room.height);
  const [across, down] = [room.width - OVERLAP, room.height - OVERLAP];
  const tiles: Tile[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const left = column * across;
      const top = height - row * down;
      const box = { left, right: left + room.width, bottom: top - room.height, top };
      if (!clipped(marks, ownPart(box, row, column, rows, columns)).some((mark) => mark.kind !== 'words')) continue;
      const drawn = clipped(marks, box);
      const joints = jointMarks(row, column, rows, columns, room);
      tiles.push({ name: tileName(row, column), box, marks: [...moved(drawn, -box.left, -box.bottom), ...joints] });
    }
  }
  return tiles;
}

/** What lies on this side of the joints: what lies beyond them is seen on a neighbour. */
const ownPart = (
  { left, right, bottom, top }: Box2,
  row: number,
  column: number,
  rows: number,
  columns: number,
): Box2 => ({
  left: left + (column > 0 ? OVERLAP / 2 : 0),
  right: right - (column < columns - 1 ? OVERLAP / 2 : 0),
  bottom: bottom + (row < rows - 1 ? OVERLAP / 2 : 0),
  top: top - (row > 0 ? OVERLAP / 2 : 0),
});

const countOf = (length: number, room: number): number => Math.max(1, Math.ceil((length - OVERLAP) / (room - OVERLAP)));

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** A1, B1 ... Z1, AA1. */
function tileName(row: number, column: number): string {
  const letters = row < 26 ? LETTERS[row]! : `${LETTERS[Math.floor(row / 26) - 1]!}${LETTERS[row % 26]!}`;
  return `${letters}${column + 1}`;
}

function jointMarks(row: number, column: number, rows: number, columns: number, room: Size): Mark[] {
  const middle = OVERLAP / 2;
  const here = tileName(row, column);
  const upright = (x: number, pair: string): Mark[] => [
    line(
      'joints',
      [
        { x, y: 0 },
        { x, y: room.height },
      ],
      DASHED,
    ),
    ...[0.2, 0.8].flatMap((share) => cross({ x, y: share * room.height }, pair)),
  ];
  const level = (y: number, pair: string): Mark[] => [
    line(
      'joints',
      [
        { x: 0, y },
        { x: room.width, y },
      ],
      DASHED,
    ),
    ...[0.2, 0.8].flatMap((share) => cross({ x: share * room.width, y }, pair)),
  ];
  return [
    ...(column > 0 ? upright(middle, `${tileName(row, column - 1)}–${here}`) : []),
    ...(column < columns - 1 ? upright(room.width - middle, `${here}–${tileName(row, column + 1)}`) : []),
    ...(row > 0 ? level(room.height - middle, `${tileName(row - 1, column)}–${here}`) : []),
    ...(row < rows - 1 ? level(middle, `${here}–${tileName(row + 1, column)}`) : []),
  ];
}

const cross = ({ x, y }: Place2, name: string): Mark[] => [
  line(
    'joints',
    [
      { x: x - CROSS, y },
      { x: x + CROSS, y },
    ],
    FINE,
  ),
  line(
    'joints',
    [
      { x, y: y - CROSS },
      { x, y: y + CROSS },
    ],
    FINE,
  ),
  words('joints', x + 1, y + 1, name, 3.1),
];
