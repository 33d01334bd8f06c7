/**
 * A drawing larger than the paper, as sheets to be laid edge to edge. Neighbours overlap; in the overlap both carry the line at
 * which they are joined, and crosses with the same name that must come to lie on one another. Words stand whole on one sheet, moved
 * there as far as they must be to keep clear of its joints, of the paper's edge and of one another.
 */
import { boxOf, clearOf } from '../../drawing/clear.ts';
import { clipped, type Box2 } from '../../drawing/clip.ts';
import { shrunk } from '../../drawing/fit.ts';
import type { Lettering } from '../../drawing/lettering.ts';
import { moved } from '../../drawing/move.ts';
import type { Size } from '../../drawing/shelves.ts';
import { cross, DASHED, line, words } from '../../drawing/strokes.ts';
import type { Arc, Line, Mark, Place2, Words } from '../../drawing/types.ts';

export interface Tile {
  /** B3: second row from the top, third column from the left. */
  readonly name: string;
  /** In the drawing's own coordinates. */
  readonly box: Box2;
  /** From the room's lower left corner. */
  readonly marks: readonly Mark[];
}

/** What is done with the sheets, on each of them. */
export const JOIN = 'Join the sheets on their crosses';

/** What two neighbours have in common, mm. */
const OVERLAP = 12;
const CROSS = 4;

/** Tiles row by row from the top; those on which no line is drawn are left out. `marks` stand in 0..width, 0..height. */
export function tiled(marks: readonly Mark[], { width, height }: Size, space: Size, face: Lettering): Tile[] {
  const lines = marks.filter((mark): mark is Line | Arc => mark.kind !== 'words');
  const columns = countOf(width, space.width);
  const rows = countOf(height, space.height);
  const grid: Grid = { rows, columns, space };
  const all = Array.from({ length: rows * columns }, (_, i) => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    const left = column * (space.width - OVERLAP);
    const top = height - row * (space.height - OVERLAP);
    const box = { left, right: left + space.width, bottom: top - space.height, top };
    return { row, column, name: tileName(row, column), box };
  });
  const drawnOn = all
    .map((tile) => ({ ...tile, own: ownPart(tile.box, tile.row, tile.column, grid) }))
    .filter(({ own }) => clipped(lines, own).length > 0);
  const names = new Set(drawnOn.map(({ name }) => name));
  const joints = drawnOn.map(({ row, column, box }) =>
    moved(jointMarks(row, column, names, space), box.left, box.bottom),
  );
  const named = joints.map((of) => of.filter((mark) => mark.kind === 'words'));
  for (const mark of marks.filter((each) => each.kind === 'words')) {
    const put = drawnOn.map(({ own }) => putWithin(mark, own, face));
    const least = Math.min(...put.map(({ off }) => off));
    const nearest = put.findIndex(({ off }) => off === least);
    if (nearest < 0) continue;
    const here = named[nearest]!;
    here.push(clearOf(placesAbout(put[nearest]!.mark, drawnOn[nearest]!.own, face), here, face));
  }
  return drawnOn.map(({ name, box }, i) => ({
    name,
    box,
    marks: moved(
      [...clipped(lines, box), ...joints[i]!.filter((mark) => mark.kind !== 'words'), ...named[i]!],
      -box.left,
      -box.bottom,
    ),
  }));
}

/** How far words are moved to stand clear of others, in heights of their letters: down and up, and to the sides. */
const MOST_MOVED = 12;

/** The words where they are, then moved on within the box, the nearest places first. */
function placesAbout(mark: Words, box: Box2, face: Lettering): Words[] {
  const step = 0.75 * mark.size;
  const steps = Array.from({ length: 2 * MOST_MOVED + 1 }, (_, i) => step * (i - MOST_MOVED));
  const corners = boxOf(mark, face);
  return steps
    .flatMap((dx) => steps.map((dy) => ({ dx, dy })))
    .filter(({ dx, dy }) =>
      corners.every(
        ({ x, y }) =>
          (dx === 0 || (x + dx >= box.left && x + dx <= box.right)) &&
          (dy === 0 || (y + dy >= box.bottom && y + dy <= box.top)),
      ),
    )
    .toSorted((a, b) => Math.hypot(a.dx, a.dy) - Math.hypot(b.dx, b.dy))
    .map(({ dx, dy }) => ({ ...mark, at: { x: mark.at.x + dx, y: mark.at.y + dy } }));
}

/** The words brought into a box, made smaller only where they are longer than it; and how far they had to be moved, mm. */
function putWithin(mark: Words, { left, right, bottom, top }: Box2, face: Lettering): { mark: Words; off: number } {
  const level = Math.abs(Math.sin(mark.turn)) < 0.5;
  const fitted = { ...mark, ...shrunk(face, mark.text, level ? right - left : top - bottom, mark.size, mark.bold) };
  const corners = boxOf(fitted, face);
  const x = shiftInto(
    left,
    right,
    corners.map((corner) => corner.x),
  );
  const y = shiftInto(
    bottom,
    top,
    corners.map((corner) => corner.y),
  );
  return { mark: { ...fitted, at: { x: mark.at.x + x, y: mark.at.y + y } }, off: Math.hypot(x, y) };
}

const shiftInto = (from: number, to: number, at: readonly number[]): number =>
  Math.max(0, from - Math.min(...at)) - Math.max(0, Math.max(...at) - to);

interface Grid {
  readonly rows: number;
  readonly columns: number;
  readonly space: Size;
}

/** What lies on this side of the joints: what lies beyond them is seen on a neighbour. */
const ownPart = ({ left, right, bottom, top }: Box2, row: number, column: number, { rows, columns }: Grid): Box2 => ({
  left: left + (column > 0 ? OVERLAP / 2 : 0),
  right: right - (column < columns - 1 ? OVERLAP / 2 : 0),
  bottom: bottom + (row < rows - 1 ? OVERLAP / 2 : 0),
  top: top - (row > 0 ? OVERLAP / 2 : 0),
});

const countOf = (length: number, space: number): number =>
  Math.max(1, Math.ceil((length - OVERLAP) / (space - OVERLAP)));

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** A1, B1 ... Z1, AA1; outside the drawing a name that no tile has. */
function tileName(row: number, column: number): string {
  const letters = row < 26 ? (LETTERS[row] ?? '') : `${LETTERS[Math.floor(row / 26) - 1]!}${LETTERS[row % 26]!}`;
  return `${letters}${column + 1}`;
}

/** Towards the neighbours that there are. */
function jointMarks(row: number, column: number, names: ReadonlySet<string>, space: Size): Mark[] {
  const middle = OVERLAP / 2;
  const here = tileName(row, column);
  const [left, right] = [tileName(row, column - 1), tileName(row, column + 1)];
  const [above, below] = [tileName(row - 1, column), tileName(row + 1, column)];
  const upright = (x: number, pair: string): Mark[] => [
    line(
      'joints',
      [
        { x, y: 0 },
        { x, y: space.height },
      ],
      DASHED,
    ),
    ...[0.2, 0.8].flatMap((share) => joint({ x, y: share * space.height }, pair)),
  ];
  const level = (y: number, pair: string): Mark[] => [
    line(
      'joints',
      [
        { x: 0, y },
        { x: space.width, y },
      ],
      DASHED,
    ),
    ...[0.2, 0.8].flatMap((share) => joint({ x: share * space.width, y }, pair)),
  ];
  return [
    ...(names.has(left) ? upright(middle, `${left}–${here}`) : []),
    ...(names.has(right) ? upright(space.width - middle, `${here}–${right}`) : []),
    ...(names.has(above) ? level(space.height - middle, `${above}–${here}`) : []),
    ...(names.has(below) ? level(middle, `${here}–${below}`) : []),
  ];
}

const joint = (at: Place2, name: string): Mark[] => [
  ...cross('joints', at, CROSS),
  words('joints', at.x + 1, at.y + 1, name, 3.1),
];
