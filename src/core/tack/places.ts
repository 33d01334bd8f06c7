/**
 * Places that a tape can be held at and a person can find while a cage is tacked: on the edge of a cut end, the corner of a foot, the top of a
 * hoop, and where on the car the middle of a foot comes that does not stand yet, which is struck there before anything is set. Each is one exact point of the steel or the car, and has beside it the place on the centreline that it stands for; a spot is both.
 *
 * A cut end is found by the line along the tube that its sheet and wrap count from: the edge is taken on that line, or on the one opposite.
 */
import { placeAt } from '../geometry/path.ts';
import {
  cross,
  addScaled,
  interpolate,
  length,
  normalize,
  rejectFrom,
  scale,
  subtract,
  type Vec3,
} from '../geometry/vector.ts';
import type { TubeRef } from '../job/reference.ts';
import { footCorners } from '../feet/corners.ts';
import { standsOf } from '../feet/stand.ts';
import type { SolvedTube } from '../solve/types.ts';

interface Held {
  /** Where the tape is held. */
  readonly mark: Vec3;
  /** On the centreline: an end's node, the middle of a hoop's top. */
  readonly centre: Vec3;
}

/** On the cut edge of an end, on the tube's line (its scribed line, or the inside of its nearest bend) or opposite it. */
export interface EdgePlace extends Held {
  readonly kind: 'edge';
  readonly tube: TubeRef;
  readonly end: 'A' | 'B';
  readonly side: 'line' | 'opposite';
}

/** A corner of a foot, on the car: as footCorners goes round. */
export interface CornerPlace extends Held {
  readonly kind: 'corner';
  readonly tube: TubeRef;
  readonly end: 'A' | 'B';
  readonly corner: 0 | 1 | 2 | 3;
}

/** Half-way along a tube of two bends or more, from node to node: on the outside of its bends, or on either face of it, named by the way in the car that it faces. */
export interface TopPlace extends Held {
  readonly kind: 'top';
  readonly tube: TubeRef;
  readonly face: Face;
}

export type Face = 'front' | 'rear' | 'left' | 'right' | 'upper' | 'lower';

/** Where the middle of a foot, or of an end on a plate, comes to lie on the car. */
export interface SpotPlace extends Held {
  readonly kind: 'spot';
  readonly tube: TubeRef;
  readonly end: 'A' | 'B';
}

export type TackPlace = EdgePlace | CornerPlace | TopPlace | SpotPlace;

/** mm. Longer by less than this nobody tells the two sides of an end apart by eye. */
const LONGER = 0.5;

/** On both lines, that first on which the tube is longer: the open side of a joint. What no cutter meets is left out. */
export function edgesOf(tube: SolvedTube, which: 0 | 1): EdgePlace[] {
  const { position, direction, reference, outer } = tube.ends[which];
  const edge = (side: EdgePlace['side']): EdgePlace[] => {
    const trim = outer[side === 'line' ? 0 : 180]!;
    if (Number.isNaN(trim)) return [];
    const onto = addScaled(position, scale(reference, side === 'line' ? 1 : -1), tube.section.outerDiameter / 2);
    return [
      {
        kind: 'edge',
        tube: tube.id,
        end: which === 0 ? 'A' : 'B',
        side,
        mark: addScaled(onto, direction, trim),
        centre: position,
      },
    ];
  };
  const sides = outer[180]! < outer[0]! - LONGER ? (['opposite', 'line'] as const) : (['line', 'opposite'] as const);
  return sides.flatMap(edge);
}

/** The four of each foot that the tube stands on. */
export const cornersOf = (tube: SolvedTube): CornerPlace[] =>
  standsOf(tube).flatMap((stand) =>
    footCorners(stand).map((mark, i) => ({
      kind: 'corner',
      tube: tube.id,
      end: stand.which === 0 ? 'A' : 'B',
      corner: i as CornerPlace['corner'],
      mark,
      centre: stand.place,
    })),
  );

/** mm. A tube whose middle lies as near to the line between its ends has no top. */
const STANDS_UP = 100;

/** Three of them; none where the tube has fewer than two bends, or bends that overlap, or its middle does not stand out. */
export function topsOf({ id, path, bends, straights, corners, section }: SolvedTube): TopPlace[] {
  if (bends.length < 2 || straights.some((straight) => straight < 0)) return [];
  const { point, tangent } = placeAt(path, path.length / 2);
  const off = rejectFrom(subtract(point, interpolate(corners[0]!, corners.at(-1)!, 0.5)), tangent);
  if (length(off) < STANDS_UP) return [];
  const out = normalize(off);
  const aside = cross(tangent, out);
  return [out, aside, scale(aside, -1)].map((way) => ({
    kind: 'top',
    tube: id,
    face: faceOf(way),
    mark: addScaled(point, way, section.outerDiameter / 2),
    centre: point,
  }));
}

/** How far its half-way mark is along a tube from its finished tip A, mm. */
export const halfWayFromTip = ({ path, ends }: SolvedTube): number => path.length / 2 - (ends[0].tip ?? 0);

const FACES = [
  ['rear', 'front'],
  ['right', 'left'],
  ['lower', 'upper'],
] as const;

/** By the axis of the car that the way runs along the most. */
export function faceOf(way: Vec3): Face {
  const axis = [0, 1, 2].reduce((most, each) => (Math.abs(way[each]!) > Math.abs(way[most]!) ? each : most));
  return FACES[axis]![way[axis]! > 0 ? 1 : 0];
}

/** Of each end that stands on the car. */
export const spotsOf = ({ id, ends }: SolvedTube): SpotPlace[] =>
  ends.flatMap(({ fit, position }, which) =>
    fit === 'foot' || fit === 'plate'
      ? [{ kind: 'spot', tube: id, end: which === 0 ? 'A' : 'B', mark: position, centre: position }]
      : [],
  );
