/** What is cut for a gusset, and whether it can be: the flat sheet, and what stands in its way in the corner that it is for. */
import { ROUNDING } from '../geometry/tolerance.ts';
import type { Gusset } from '../job/kinds/gusset.ts';
import type { TubeRef } from '../job/reference.ts';
import { STEEL_DENSITY } from '../solve/amount.ts';
import type { Corner } from './corner.ts';
import { areaWithin, type Edge, type Place2 } from './edges.ts';
import { faceAt, type Face } from './face.ts';
import { flatOutline } from './flat.ts';
import { folded, offFold, onFold, unfolded, type Folded, type FoldLine } from './fold.ts';

export interface Sheet {
  /** Of a flat gusset on the corner's plane (corner.ts), of a bent one unfolded (fold.ts). */
  readonly edges: readonly Edge[];
  readonly bends: readonly FoldLine[];
  /** mm2, of the flat sheet. */
  readonly area: number;
  /** kg, at 7850 kg/m3. */
  readonly mass: number;
  readonly shape: { readonly kind: 'flat'; readonly face: Face } | { readonly kind: 'bent'; readonly fold: Folded };
}

export type NoSheet =
  /** The leg runs past the end of the tube's straight: the longest that it could be, mm; 0 or less where there is none, null where the sheet is bent and some leg could be. */
  | { readonly why: 'leg-long'; readonly bar: TubeRef; readonly leg: number; readonly longest: number | null }
  /** The leg ends in the bend that the gusset stands across: at least so long, mm, where the sheet is flat; null where it is bent. */
  | { readonly why: 'leg-in-bend'; readonly bar: TubeRef; readonly leg: number; readonly least: number | null }
  /** A face of the fold would stand past the tube: the widest that it could be, mm. */
  | { readonly why: 'wide'; readonly bar: TubeRef; readonly width: number; readonly widest: number }
  /** The fold takes all of the face: what it takes from the free edge on, and what there is, mm. */
  | { readonly why: 'no-face'; readonly depth: number; readonly there: number }
  /** The tube's inside has no round left in the bend. */
  | { readonly why: 'tight-bend'; readonly bar: TubeRef };

/** The sheet for that corner, or why there is none. */
export function sheetFor(corner: Corner, gusset: Gusset): Sheet | NoSheet {
  const [one] = corner.sides;
  if (corner.bend !== null && corner.bend.radius <= one.radius) return { why: 'tight-bend', bar: one.bar.id };
  return gusset.kind === 'flat' ? flatSheet(corner, gusset) : bentSheet(corner, gusset);
}

/**
 * How long each leg of a flat sheet can be, mm: past the tangent of the bend that it stands across, else more than 0, and up to the end of the straight, which may lie before that.
 */
export function legRanges(corner: Corner): readonly (readonly [least: number, longest: number])[] {
  const { sides, bend } = corner;
  // The plane passes within a millimetre of both axes: it meets both tubes.
  const face = faceAt(corner, 0, 0)!;
  const along = alongAxes(corner, [face.corner, face.corner]);
  return sides.map(({ room }, i) => [bend === null ? 0 : bend.setBack - along[i]!, room - along[i]!]);
}

function flatSheet(corner: Corner, gusset: Gusset): Sheet | NoSheet {
  const { sides, angle, bend } = corner;
  const ranges = legRanges(corner);
  for (const i of [0, 1] as const) {
    const bar = sides[i].bar.id;
    const { leg } = gusset.between[i];
    const [least, longest] = ranges[i]!;
    if (leg > longest + ROUNDING) return { why: 'leg-long', bar, leg, longest };
    if (bend !== null && leg < least - ROUNDING) return { why: 'leg-in-bend', bar, leg, least };
  }
  const face = faceAt(corner, gusset.relief, 0)!;
  return sheetOf({ kind: 'flat', face }, flatOutline(face, angle, gusset), [], gusset);
}

function bentSheet(corner: Corner, gusset: Extract<Gusset, { kind: 'bent' }>): Sheet | NoSheet {
  const { sides, bend } = corner;
  const { width } = gusset;
  const wide = sides.find(({ radius, height }) => width > 2 * (radius - Math.abs(height)) + ROUNDING);
  if (wide !== undefined) {
    return { why: 'wide', bar: wide.bar.id, width, widest: 2 * (wide.radius - Math.abs(wide.height)) };
  }
  const fold = folded(corner, gusset)!;
  const ends = fold.stations.map(({ ends: [a, b], p }) => [offFold(fold, [a, p]), offFold(fold, [b, p])] as const);
  const along = ends.map((each) => alongAxes(corner, each));
  for (const i of [0, 1] as const) {
    const { bar, room } = sides[i];
    const { leg } = gusset.between[i];
    const [least, greatest] = [Math.min(...along.map((each) => each[i])), Math.max(...along.map((each) => each[i]))];
    if (greatest > room + ROUNDING) {
      const most = room - alongAxes(corner, [fold.midway, fold.midway])[i];
      // The free edge turns with the leg, and the fold's end with it: no one length is the longest for long.
      return { why: 'leg-long', bar: bar.id, leg, longest: most > 0 ? null : most };
    }
    if (bend !== null && least < bend.setBack - ROUNDING) return { why: 'leg-in-bend', bar: bar.id, leg, least: null };
  }
  const there = Math.min(...fold.faces.flatMap(({ begins }) => begins.map((place) => onFold(fold, place)[1])));
  if (there < fold.depth + ROUNDING) return { why: 'no-face', depth: fold.depth, there };
  const { edges, bends } = unfolded(fold);
  return sheetOf({ kind: 'bent', fold }, edges, bends, gusset);
}

/** From where the axes meet to the foot of a place of leg 1, and of one of leg 2, mm along each axis. */
export function alongAxes({ angle }: Corner, [one, two]: readonly [Place2, Place2]): readonly [number, number] {
  return [one[0], two[0] * Math.cos(angle) + two[1] * Math.sin(angle)];
}

function sheetOf(
  shape: Sheet['shape'],
  edges: readonly Edge[],
  bends: readonly FoldLine[],
  { thickness }: Gusset,
): Sheet {
  const area = areaWithin(edges);
  return { shape, edges, bends, area, mass: STEEL_DENSITY * thickness * area };
}
