/** Where in the car a tube is: the frame as grey bands, nearer over farther, and this tube in black. */
import type { SolvedTube } from '../../core/solve/types.ts';
import { extentOf, ISOMETRIC, ISOMETRIC_RIGHT, project, type Projected } from '../../drawing/projection.ts';
import { jointsOf } from '../../drawing/rods.ts';
import type { Mark, Place2 } from '../../drawing/types.ts';
import { stroke } from '../../drawing/ink.ts';
import type { Block } from './page.ts';

const GREY = 0.72;
/** mm on paper: no tube is drawn thinner, and what passes behind it stops this far from its edge. */
const THINNEST = 0.5;
const CLEAR = 0.35;

/** A tube's centreline in a view. */
interface Lie {
  readonly tube: SolvedTube;
  readonly places: readonly Projected[];
  readonly depth: number;
}

/** All tubes in a view, farthest first; worked out once for all sheets. */
export type Lies = readonly Lie[];

/** As the key drawing shows them, and from the other side of the car. */
export const liesOf = (tubes: readonly SolvedTube[]): readonly Lies[] =>
  [ISOMETRIC, ISOMETRIC_RIGHT].map((view) =>
    tubes
      .map((tube): Lie => {
        const places = jointsOf(tube).map(({ point }) => project(view, point));
        return { tube, places, depth: places.reduce((sum, { depth }) => sum + depth, 0) / places.length };
      })
      .toSorted((a, b) => a.depth - b.depth),
  );

/** Seen from the left, or from the right where the tube would point at the eye. */
export function locator(views: readonly Lies[], picked: SolvedTube, width: number, height: number): Block {
  const shown = views.map((lies) => lengthShown(lies.find(({ tube }) => tube === picked)!.places));
  const lies = shown[1]! > 1.6 * shown[0]! ? views[1]! : views[0]!;
  const extent = extentOf(lies.flatMap(({ places }) => places));
  const [wide, high] = [extent.right - extent.left, extent.high - extent.low];
  const margin = 2.5;
  const scale = Math.min((width - 2 * margin) / Math.max(wide, 1), (height - 2 * margin) / Math.max(high, 1));
  return {
    height,
    draw: (left, top) => {
      const on = ({ x, y }: Place2): Place2 => ({
        x: left + width / 2 + (x - (extent.left + extent.right) / 2) * scale,
        y: top - height / 2 + (y - (extent.low + extent.high) / 2) * scale,
      });
      const band = ({ tube, places }: Lie, grey: number, more: number): Mark =>
        stroke(places.map(on), { width: Math.max(THINNEST, tube.section.outerDiameter * scale) + more, grey });
      const others = lies.filter(({ tube }) => tube !== picked);
      const own = lies.find(({ tube }) => tube === picked)!;
      return [
        ...others.flatMap((lie) => [band(lie, 1, 2 * CLEAR), band(lie, GREY, 0)]),
        band(own, 1, 2 * CLEAR),
        band(own, 0, 0.2),
      ];
    },
  };
}

const lengthShown = (places: readonly Place2[]): number =>
  places.slice(1).reduce((sum, { x, y }, i) => sum + Math.hypot(x - places[i]!.x, y - places[i]!.y), 0);
