/** A drawing at full size on sheets that are joined by their crosses, before them a map of the sheets. */
import type { Box2 } from '../../drawing/clip.ts';
import type { Lettering } from '../../drawing/lettering.ts';
import { moved, stretched } from '../../drawing/move.ts';
import { FAINT, rectangle, shape, words } from '../../drawing/strokes.ts';
import type { Mark, Sheet } from '../../drawing/types.ts';
import { sizeOf } from '../shared/paper.ts';
import { JOIN, tiled, type Tile } from '../shared/tiles.ts';

/** What is done with the sheets. */
export const JOINED = `${JOIN}: neighbours share the dashed line and the crosses with the same name.`;

export interface TilePage {
  readonly name: string;
  readonly marks: () => readonly Mark[];
}

/** A map of the sheets, and each of them. */
export function tilePages(face: Lettering, drawing: Sheet, space: Box2): TilePage[] {
  const tiles = tiled(drawing.marks, drawing, sizeOf(space), face);
  return [
    { name: `${drawing.name}, map of ${tiles.length} sheets`, marks: () => mapOf(drawing, tiles, space) },
    ...tiles.map((tile) => ({
      name: `${drawing.name}, sheet ${tile.name}`,
      marks: () => moved(tile.marks, space.left, space.bottom),
    })),
  ];
}

/** The drawing made small, with the sheets and their names. Not to scale with anything: it only shows which lies where. */
function mapOf(drawing: Sheet, tiles: readonly Tile[], space: Box2): Mark[] {
  const size = sizeOf(space);
  const left = Math.min(...tiles.map(({ box }) => box.left));
  const right = Math.max(...tiles.map(({ box }) => box.right));
  const bottom = Math.min(...tiles.map(({ box }) => box.bottom));
  const top = Math.max(...tiles.map(({ box }) => box.top));
  const small = Math.min(size.width / (right - left), size.height / (top - bottom));
  const lines = drawing.marks.filter((mark) => mark.kind !== 'words');
  const frames = tiles.flatMap(({ name, box }): Mark[] => [
    shape('map', rectangle(box.left, box.bottom, box.right - box.left, box.top - box.bottom), FAINT),
    words('map', (box.left + box.right) / 2, (box.bottom + box.top) / 2, name, 5 / small, {
      anchor: 'middle',
      grey: 0.4,
    }),
  ]);
  const [dx, dy] = [space.left - left * small, space.top - top * small];
  return stretched([...lines, ...frames], small, small, dx, dy);
}
