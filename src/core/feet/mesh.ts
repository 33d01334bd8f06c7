/**
 * A foot as triangles: a closed shell for each of its pieces, every face flat with vertices of its own, wound outwards. A bend stands in flats
 * of 5 degrees. Holes are left out.
 */
import { cross, normalize, subtract, type Vec3 } from '../geometry/vector.ts';
import { inPrism, prismsOf, type Prism, type Station } from './solid.ts';
import { inCar, type Stand } from './stand.ts';

export interface FootMesh {
  readonly part: Prism['part'];
  /** x, y, z of each vertex, mm, car axes. */
  readonly positions: Float32Array<ArrayBuffer>;
  /** Unit, out of the steel. */
  readonly normals: Float32Array<ArrayBuffer>;
  /** Three a triangle, counter-clockwise seen from outside the steel. */
  readonly indices: Uint32Array<ArrayBuffer>;
  /** Two a stroke: the piece's outer edges, not those between the flats of a bend. */
  readonly edges: Uint32Array<ArrayBuffer>;
}

/** A shell for each piece of the foot, in the order of its solids. */
export const footMeshes = (stand: Stand): readonly FootMesh[] =>
  prismsOf(stand.foot).map((prism) => shellOf(stand, prism));

type Quad = readonly [Vec3, Vec3, Vec3, Vec3];

function shellOf(stand: Stand, prism: Prism): FootMesh {
  const { section, from, to } = prism;
  const at = (place: Station['low'], aside: number): Vec3 => inCar(stand, inPrism(prism, place, aside));
  // Counter-clockwise from outside where section, push and up are right-handed; a mirror image, and a section that runs across, turn that round.
  const isRight = (prism.axis === 0) !== stand.mirrored;
  const quads: Quad[] = [];
  const edges: number[] = [];
  /** Answers where its four corners stand among the vertices. */
  const put = (a: Vec3, b: Vec3, c: Vec3, d: Vec3): readonly [number, number, number, number] => {
    const first = 4 * quads.length;
    quads.push(isRight ? [a, b, c, d] : [d, c, b, a]);
    return isRight ? [first, first + 1, first + 2, first + 3] : [first + 3, first + 2, first + 1, first];
  };
  section.slice(1).forEach((next, i) => {
    const here = section[i]!;
    put(at(here.high, from), at(next.high, from), at(next.high, to), at(here.high, to));
    put(at(here.low, to), at(next.low, to), at(next.low, from), at(here.low, from));
    const near = put(at(here.low, from), at(next.low, from), at(next.high, from), at(here.high, from));
    const far = put(at(here.high, to), at(next.high, to), at(next.low, to), at(here.low, to));
    for (const [a, b, c, d] of [near, far]) edges.push(a, b, c, d);
  });
  const [first, last] = [section[0]!, section.at(-1)!];
  const ends = [
    put(at(first.low, from), at(first.high, from), at(first.high, to), at(first.low, to)),
    put(at(last.low, to), at(last.high, to), at(last.high, from), at(last.low, from)),
  ];
  for (const [a, b, c, d] of ends) edges.push(a, b, b, c, c, d, d, a);
  return {
    part: prism.part,
    positions: Float32Array.from(quads.flat(2)),
    normals: Float32Array.from(quads.flatMap((quad) => quad.flatMap(() => [...squareTo(quad)]))),
    indices: Uint32Array.from(quads.flatMap((_, i) => [0, 1, 2, 0, 2, 3].map((corner) => 4 * i + corner))),
    edges: Uint32Array.from(edges),
  };
}

const squareTo = ([a, b, c]: Quad): Vec3 => normalize(cross(subtract(b, a), subtract(c, a)));
