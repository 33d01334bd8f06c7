/** A measured point of the car. */
import * as v from 'valibot';
import type { Vec3 } from '../../geometry/vector.ts';
import { GREATEST_ACCURACY, LEAST_SIZE, MOST_TRIM } from '../limits.ts';
import type { PointId, ScanId } from '../reference.ts';
import { named, number, upTo, vector } from './fields.ts';
import type { Kind } from './kind.ts';
import { leastGap } from './least-gap.ts';

export interface Point {
  readonly id: PointId;
  readonly name: string;
  /** mm: the standard deviation of each of its coordinates, where something says what it is. */
  readonly accuracy?: number;
  /** Of one that comes of measurements (`by`) no more than a first guess. */
  readonly position: Vec3;
  /** 'survey': its place comes of the measurements. Else it is typed, and exact. */
  readonly by?: string;
  /** It was picked on this scan: nobody has measured it on the car. */
  readonly from?: { readonly scan: ScanId };
  /** Put in by the program for a start: nobody has measured it, or said that it is right. */
  readonly guessed?: true;
  /** It was measured on a seat or a door that is not the real one: the real one is still to come. */
  readonly standIn?: true;
  /** mm of trim that goes over it: it was measured on the bare skin. */
  readonly trim?: number;
  /** mm from it to the outside of any tube that does not stand on it, at least. */
  readonly leastGap?: number;
}

export const pointKind: Kind<Point> = {
  word: 'point',
  letter: 'p',
  shape: v.looseObject({
    ...named,
    accuracy: v.exactOptional(upTo(GREATEST_ACCURACY)),
    position: vector,
    by: v.exactOptional(v.string()),
    from: v.exactOptional(v.looseObject({ scan: v.string() })),
    guessed: v.exactOptional(v.literal(true)),
    standIn: v.exactOptional(v.literal(true)),
    trim: v.exactOptional(number(LEAST_SIZE, MOST_TRIM, `below ${LEAST_SIZE} mm`, `beyond ${MOST_TRIM} mm`)),
    leastGap,
  }),
  keys: ['id name accuracy position by from guessed standIn trim leastGap', 'scan'],
  hasImage: () => true,
  beyondShape: ({ from }, at) =>
    from === undefined ? [] : [{ place: `${at}.from.scan`, list: 'scans', to: from.scan }],
};
