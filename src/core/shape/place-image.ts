/** A place with its references exchanged, and the place of the mirror image in y = 0 written as one of its own. */
import type { Vec3 } from '../geometry/vector.ts';
import type { Place } from '../job/places.ts';
import type { Coordinate } from '../job/places/coordinate.ts';
import type { NodeRef, PointRef, TubeRef } from '../job/reference.ts';

/** What each reference becomes. */
export interface References {
  readonly node: (to: NodeRef) => NodeRef;
  readonly point: (to: PointRef) => PointRef;
  readonly tube: (to: TubeRef) => TubeRef;
}

/** The place by other references, else as it is. */
export const withReferences = (at: Place, to: References): Place => placed(at, to, false);

/**
 * The mirror image of the place, by what the references become: what is given across the car has the other sign. On a tube it is as far from the
 * same end, which is the image's place where `to` leads to a tube that mirrors its own.
 */
export const imageOfPlace = (at: Place, to: References): Place => placed(at, to, true);

/** The mirror image of a vector in y = 0, without the sign of a zero, which a file has not. */
export const imageOf = ([x, y, z]: Vec3): Vec3 => [x, 0 - y, z];

function placed(at: Place, to: References, isImage: boolean): Place {
  const vector = (v: Vec3): Vec3 => (isImage ? imageOf(v) : v);
  const across = (by: number): number => (isImage ? 0 - by : by);
  const coordinate = <C extends Coordinate>(given: C, isAcross: boolean): C => {
    const plus = (by: number): number => (isAcross ? across(by) : by);
    if (given.value !== undefined) return { ...given, value: plus(given.value) };
    if (given.node !== undefined) return { ...given, node: to.node(given.node), plus: plus(given.plus) };
    return { ...given, point: to.point(given.point), plus: plus(given.plus) };
  };
  switch (at.kind) {
    case 'fixed':
      return { ...at, position: vector(at.position) };
    case 'point': {
      const clear = at.clear && { ...at.clear, direction: vector(at.clear.direction) };
      return { ...at, point: to.point(at.point), offset: vector(at.offset), ...(clear && { clear }) };
    }
    case 'between':
      return { ...at, nodes: [to.node(at.nodes[0]), to.node(at.nodes[1])] };
    case 'ray': {
      const { axis, value } = at.until;
      const until = { ...at.until, value: axis === 'y' ? across(value) : value };
      return { ...at, from: to.node(at.from), direction: vector(at.direction), until };
    }
    case 'lined-up':
      return { ...at, x: coordinate(at.x, false), y: coordinate(at.y, true), z: coordinate(at.z, false) };
    case 'crossing':
      return { ...at, member: to.tube(at.member), line: [to.node(at.line[0]), to.node(at.line[1])] };
    case 'on': {
      const on = { ...at, member: to.tube(at.member), offset: vector(at.offset) };
      return on.until === undefined ? on : { ...on, until: coordinate(on.until, on.until.axis === 'y') };
    }
  }
}
