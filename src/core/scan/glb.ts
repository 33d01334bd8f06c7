/**
 * GLB, the one file form of glTF: Khronos, glTF 2.0 Specification (2021; ISO/IEC 12113). Read are the meshes of the scene, triangles and points,
 * each where its nodes put it. Materials and pictures are passed over, scripts there are none, and nothing outside of the file is fetched.
 */
import { fault, type Fault } from '../job/fault.ts';
import type { Plain, PlainObject } from '../job/plain.ts';
import { gather, grouped, noVertex, type Gather } from './gather.ts';
import {
  accessorOf,
  glbParts,
  isObject,
  listIn,
  wantsMore,
  wholeIn,
  type Accessor,
  type GlbParts,
} from './glb-parts.ts';
import { AS_IT_IS, matrixOf, placedBy, through, type Matrix } from './glb-place.ts';
import { MOST_SCANNED, type Reading, type Thinning } from './types.ts';

/** Triangles or points from one report to the next. */
const STRIDE = 16_384;

/** Vertices that the scene may show, a mesh counted as often as it stands in it. */
const MOST_SHOWN = 40_000_000;

const [POINTS, TRIANGLES, STRIP, FAN] = [0, 4, 5, 6];

/** All that the scene shows. Where there are triangles, its points are left out. */
export function* readGlb(bytes: Uint8Array, thinning: Thinning): Reading {
  const parts = glbParts(bytes);
  if ('message' in parts) return { ok: false, fault: parts };
  const more = wantsMore(parts.json);
  if (more !== null) return { ok: false, fault: more };
  const placed = meshesIn(parts.json);
  if ('message' in placed) return { ok: false, fault: placed };
  const primitives = placed.flatMap(({ mesh, matrix }) => primitivesOf(parts.json, mesh, matrix));
  const modes = new Set(primitives.map(({ mode }) => mode));
  const wanted = [TRIANGLES, STRIP, FAN].some((mode) => modes.has(mode)) ? [TRIANGLES, STRIP, FAN] : [POINTS];
  const shown = primitives.filter(({ mode }) => wanted.includes(mode));
  const into = gather(thinning);
  for (const [i, primitive] of shown.entries()) {
    yield i / shown.length;
    const trouble = yield* readPrimitive(parts, primitive, into, (share) => (i + share) / shown.length);
    if (trouble !== null) return { ok: false, fault: trouble };
  }
  return into.done();
}

interface Placed {
  readonly mesh: number;
  readonly matrix: Matrix;
}

/** The meshes of the scene; of a file without one, of all nodes. A node that is met again, below itself or below two others, is a fault. */
function meshesIn(json: PlainObject): readonly Placed[] | Fault {
  const nodes = listIn(json, 'nodes');
  const children = (node: Plain | undefined): readonly Plain[] => (isObject(node) ? listIn(node, 'children') : []);
  const scene = listIn(json, 'scenes')[wholeIn(json, 'scene', 0)];
  const below = new Set(nodes.flatMap(children));
  const roots = isObject(scene) ? listIn(scene, 'nodes') : nodes.map((_, i) => i).filter((i) => !below.has(i));
  const met = new Set<Plain>();
  const placed: Placed[] = [];
  const open = roots.map((index) => ({ index, above: AS_IT_IS }));
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const index = typeof next.index === 'number' ? next.index : NaN;
    const place = Number.isNaN(index) ? 'nodes' : `nodes[${index}]`;
    const node = nodes[index];
    if (!isObject(node)) return fault(place, 'there is none');
    if (met.has(next.index)) return fault(place, 'stands in the scene twice');
    met.add(next.index);
    const own = matrixOf(node);
    if (own === null) return fault(place, 'a place that is no number');
    const matrix = placedBy(next.above, own);
    const mesh = wholeIn(node, 'mesh');
    if (node['mesh'] !== undefined && !isObject(listIn(json, 'meshes')[mesh])) return fault(place, 'no such mesh');
    if (node['mesh'] !== undefined) placed.push({ mesh, matrix });
    for (const index of children(node)) open.push({ index, above: matrix });
  }
  return placed;
}

interface Primitive {
  readonly place: string;
  readonly mode: number;
  readonly what: PlainObject;
  readonly matrix: Matrix;
}

const primitivesOf = (json: PlainObject, mesh: number, matrix: Matrix): Primitive[] => {
  const found = listIn(json, 'meshes')[mesh];
  const primitives = isObject(found) ? listIn(found, 'primitives') : [];
  return primitives.flatMap((what, i) =>
    isObject(what)
      ? [{ place: `meshes[${mesh}].primitives[${i}]`, mode: wholeIn(what, 'mode', TRIANGLES), what, matrix }]
      : [],
  );
};

function* readPrimitive(
  parts: GlbParts,
  { place, mode, what, matrix }: Primitive,
  into: Gather,
  share: (of: number) => number,
): Generator<number, Fault | null, void> {
  const attributes = what['attributes'];
  if (!isObject(attributes) || attributes['POSITION'] === undefined) return fault(place, 'no POSITION');
  const places = accessorOf(parts, wholeIn(attributes, 'POSITION'), 'VEC3');
  if ('message' in places) return fault(`${place}, ${places.place}`, places.message);
  const indices =
    what['indices'] === undefined ? countedUp(places.count) : accessorOf(parts, wholeIn(what, 'indices'), 'SCALAR');
  if ('message' in indices) return fault(`${place}, ${indices.place}`, indices.message);
  const triangles =
    mode === POINTS ? 0 : mode === TRIANGLES ? Math.floor(indices.count / 3) : Math.max(0, indices.count - 2);
  // Of a mesh that stands in the scene a thousand times, and is too much already, the number is all that is needed.
  if (into.triangles() + triangles > MOST_SCANNED) {
    into.countOnly(triangles);
    return null;
  }
  if (into.vertices() + places.count > MOST_SHOWN)
    return fault('', `it shows more than ${grouped(MOST_SHOWN)} corners`);
  const first = into.vertices();
  for (let i = 0; i < places.count; i++) {
    if (i % STRIDE === 0) yield share((0.5 * i) / places.count);
    const wrong = into.vertex(...through(matrix, places.at(i, 0), places.at(i, 1), places.at(i, 2)));
    if (wrong !== null) return fault(`${place}, vertex ${grouped(i)}`, wrong);
  }
  for (let i = 0; i < triangles; i++) {
    if (i % STRIDE === 0) yield share(0.5 + (0.5 * i) / triangles);
    const corners = cornersOf(mode, i).map((k) => indices.at(k, 0)) as [number, number, number];
    const beyond = corners.find((vertex) => !Number.isSafeInteger(vertex) || vertex >= places.count);
    if (beyond !== undefined) {
      return fault(`${place}, triangle ${grouped(i)}`, noVertex(beyond, places.count));
    }
    into.triangle(first + corners[0], first + corners[1], first + corners[2]);
  }
  return null;
}

const countedUp = (count: number): Accessor => ({ count, at: (i) => i });

/** Which three of the indices the i-th triangle has; every other one of a strip is the other way round. */
function cornersOf(mode: number, i: number): readonly [number, number, number] {
  if (mode === STRIP) return i % 2 === 0 ? [i, i + 1, i + 2] : [i + 1, i, i + 2];
  return mode === FAN ? [0, i + 1, i + 2] : [3 * i, 3 * i + 1, 3 * i + 2];
}
