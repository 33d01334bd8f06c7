/** One coordinate of a place: a number, or that coordinate of a node or a point, and so much more. */
import * as v from 'valibot';
import { chosenByKey } from '../kinds/chosen.ts';
import { coordinate } from '../kinds/fields.ts';
import type { Reference } from '../kinds/kind.ts';
import type { NodeRef, PointRef } from '../reference.ts';

/** mm, car axes: along x, y or z as its place says. */
export type Coordinate = CoordinateValue | CoordinateOfNode | CoordinateOfPoint;

interface CoordinateValue {
  readonly value: number;
  readonly node?: never;
  readonly point?: never;
  readonly plus?: never;
}
interface CoordinateOfNode {
  readonly node: NodeRef;
  readonly plus: number;
  readonly value?: never;
  readonly point?: never;
}
interface CoordinateOfPoint {
  readonly point: PointRef;
  readonly plus: number;
  readonly value?: never;
  readonly node?: never;
}

const plus = v.optional(coordinate, 0);
const notBeside = (other: string) => v.exactOptional(v.never(`not beside "${other}"`));
const none = v.exactOptional(v.never());

/** The shape of an object that gives a coordinate, with what else stands in it. */
export const coordinateShape = <Entries extends v.ObjectEntries>(others: Entries) =>
  chosenByKey(
    ['value', 'node', 'point'],
    [
      v.looseObject({
        ...others,
        value: coordinate,
        node: notBeside('value'),
        point: notBeside('value'),
        plus: notBeside('value'),
      }),
      v.looseObject({ ...others, node: v.string(), plus, value: none, point: notBeside('node') }),
      v.looseObject({ ...others, point: v.string(), plus, value: none, node: none }, (issue) =>
        issue.expected === '"point"' ? 'missing, and there is no "value" or "node" either' : '',
      ),
    ],
  );

/** In which order a file holds them, and the axis where one is named beside them. */
export const COORDINATE_KEYS = 'node point axis value plus';

/** What the coordinate at `at` follows. */
export function coordinateReferences({ node, point }: Coordinate, at: string): readonly Reference[] {
  if (node !== undefined) return [{ place: `${at}.node`, list: 'nodes', to: node, carried: true }];
  if (point !== undefined) return [{ place: `${at}.point`, list: 'points', to: point, carried: true }];
  return [];
}
