/** One view of the frame on paper: every tube with hidden lines left out, and its number in a balloon. */
import type { SolvedTube } from '../../core/solve/types.ts';
import { placeAt } from '../../core/geometry/path.ts';
import { seenOutlines } from '../../drawing/outlines.ts';
import { extentOf, project, type Extent, type View } from '../../drawing/projection.ts';
import { seenPast } from '../../drawing/rods.ts';
import { addScaled } from '../../core/geometry/vector.ts';
import type { Mark, Place2 } from '../../drawing/types.ts';
import { BALLOON, placeBalloons, type Bounds } from './balloons.ts';
import { circle, disc, FINE, HAIR, stroke, text } from '../../drawing/ink.ts';

/** How many places along a tube are asked whether they are seen, and so may bear its number. */
const LOOKS = 24;
const OUTLINE = { width: 0.22, grey: 0 };

/** Where the view's mm lie on paper. */
export interface Laid {
  readonly x: number;
  readonly y: number;
  /** Paper by car. */
  readonly scale: number;
}

/** Of all tubes' outlines in a view, mm of the car. */
export const extentInView = (tubes: readonly SolvedTube[], view: View): Extent =>
  extentOf(
    tubes.flatMap(({ path, section }) => {
      const radius = section.outerDiameter / 2;
      return path.pieces
        .flatMap(({ from, to, at, length }) => [from, placeAt(path, at + length / 2).point, to])
        .flatMap((place) => {
          const { x, y } = project(view, place);
          return [
            { x: x - radius, y: y - radius },
            { x: x + radius, y: y + radius },
          ];
        });
    }),
  );

/** The view's marks, and the numbers of the tubes for which no place was left. */
export function keyView(
  tubes: readonly SolvedTube[],
  view: View,
  laid: Laid,
  space: Bounds,
): { readonly marks: readonly Mark[]; readonly unnumbered: readonly number[] } {
  const on = ({ x, y }: Place2): Place2 => ({ x: laid.x + x * laid.scale, y: laid.y + y * laid.scale });
  const outlines = seenOutlines(tubes, view).map(({ kind, places }) => ({ kind, places: places.map(on) }));
  const seen = seenPast(tubes, view);
  const candidates = tubes.map((tube, i) => {
    const radius = tube.section.outerDiameter / 2;
    const places = Array.from({ length: LOOKS - 1 }, (_, k) =>
      placeAt(tube.path, (tube.path.length * (k + 1)) / LOOKS),
    );
    // Its own wall is not in the way of the place on it that is nearest to the eye.
    const visible = places.filter(({ point }) => seen(addScaled(point, view.toEye, 1.2 * radius), i, Infinity));
    return {
      number: tube.number,
      feet: (visible.length > 0 ? visible : places).map(({ point }) => on(project(view, point))),
    };
  });
  const balloons = placeBalloons(
    candidates,
    outlines.flatMap(({ places }) => spread(places)),
    space,
  );
  const drawn = [...balloons.values()].filter((balloon) => balloon !== null);
  return {
    marks: [
      ...outlines.map(({ kind, places }) => stroke(places, kind === 'edge' ? OUTLINE : HAIR)),
      ...drawn.flatMap(({ centre, foot }) =>
        Math.hypot(centre.x - foot.x, centre.y - foot.y) > BALLOON
          ? [stroke([foot, centre], HAIR), disc(foot, 0.45, null, 0)]
          : [],
      ),
      ...drawn.flatMap(({ number, centre }) => [
        disc(centre, BALLOON, null, 1),
        circle(centre, BALLOON, FINE),
        text(centre.x, centre.y - 1.1, String(number), { size: 3.1, bold: true, anchor: 'middle' }),
      ]),
    ],
    unnumbered: [...balloons]
      .flatMap(([number, balloon]) => (balloon === null ? [number] : []))
      .toSorted((a, b) => a - b),
  };
}

/** Places along a line, near enough to each other that a balloon over it is noticed. */
function spread(places: readonly Place2[]): Place2[] {
  return places.slice(1).flatMap((to, i) => {
    const from = places[i]!;
    const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / (BALLOON / 2)));
    return Array.from({ length: steps }, (_, k) => ({
      x: from.x + ((to.x - from.x) * (k + 1)) / steps,
      y: from.y + ((to.y - from.y) * (k + 1)) / steps,
    }));
  });
}
