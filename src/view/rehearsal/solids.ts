/** The machine's solids as triangles and edges, in bender axes, free of any drawing library. */
import { addScaled, cross, normalize, type Vec3 } from '../../core/geometry/vector.ts';
import type { Solid } from '../../core/rehearse/types.ts';
import { BOX_EDGES, BOX_FACES } from '../meshes/box.ts';
import type { Stroke } from '../scene/Strokes.tsx';

export interface SolidMesh {
  /** x, y, z of each vertex, mm. */
  readonly positions: Float32Array;
  /** Unit, outwards. */
  readonly normals: Float32Array;
  /** Three a triangle, counter-clockwise seen from outside. */
  readonly indices: Uint16Array;
  readonly edges: readonly Stroke[];
}

type Box = Extract<Solid['shape'], { kind: 'box' }>;
type Cylinder = Extract<Solid['shape'], { kind: 'cylinder' }>;
type Plane = Extract<Solid['shape'], { kind: 'plane' }>;

const SIDES = 48;

/** A plane is drawn as a sheet of so much to each side of where it is nearest to the machine, and no deeper than the floor. */
export function solidMesh({ shape }: Solid, reach: number): SolidMesh {
  switch (shape.kind) {
    case 'box':
      return boxMesh(shape);
    case 'cylinder':
      return cylinderMesh(shape);
    case 'plane':
      return sheetMesh(shape, reach);
  }
}

/** Corner i: bits 0, 1, 2 of i say which side along the box's own axes. */
const cornersOf = ({ centre, half, axes }: Box): readonly Vec3[] =>
  Array.from({ length: 8 }, (_, i) =>
    axes.reduce((at, axis, k) => addScaled(at, axis, (i >> k) & 1 ? half[k]! : -half[k]!), centre),
  );

function boxMesh(box: Box): SolidMesh {
  const corners = cornersOf(box);
  return {
    ...facesOf(BOX_FACES.map((face) => face.map((i) => corners[i]!))),
    edges: BOX_EDGES.map(([a, b]): Stroke => [corners[a]!, corners[b]!]),
  };
}

/** Flat faces of four corners each, counter-clockwise seen from outside, every one with corners of its own. */
function facesOf(faces: readonly (readonly Vec3[])[]): Omit<SolidMesh, 'edges'> {
  const normals = faces.flatMap(([a, b, c]) => {
    const square = normalize(cross(minus(b!, a!), minus(c!, b!)));
    return [square, square, square, square];
  });
  return {
    positions: Float32Array.from(faces.flat(2)),
    normals: Float32Array.from(normals.flat()),
    indices: Uint16Array.from(faces.flatMap((_, i) => [0, 1, 2, 0, 2, 3].map((corner) => 4 * i + corner))),
  };
}

const minus = (a: Vec3, b: Vec3): Vec3 => addScaled(a, b, -1);

function cylinderMesh({ centre, radius, halfHeight }: Cylinder): SolidMesh {
  const spoke = (side: number): Vec3 => {
    const phi = (2 * Math.PI * (side % SIDES)) / SIDES;
    return [Math.cos(phi), Math.sin(phi), 0];
  };
  const rim = (side: number, up: 1 | -1): Vec3 => {
    const [x, y] = addScaled(centre, spoke(side), radius);
    return [x, y, centre[2] + up * halfHeight];
  };
  const sides = Array.from({ length: SIDES }, (_, side) => side);
  // The wall's two rings, then each cap's ring with its own normals and its middle.
  const positions = [
    ...sides.flatMap((side) => [rim(side, -1), rim(side, 1)]),
    ...sides.map((side) => rim(side, 1)),
    ...sides.map((side) => rim(side, -1)),
    addScaled(centre, [0, 0, 1], halfHeight),
    addScaled(centre, [0, 0, 1], -halfHeight),
  ];
  const normals = [
    ...sides.flatMap((side) => [spoke(side), spoke(side)]),
    ...sides.map((): Vec3 => [0, 0, 1]),
    ...sides.map((): Vec3 => [0, 0, -1]),
    [0, 0, 1],
    [0, 0, -1],
  ];
  const [top, bottom, topMiddle, bottomMiddle] = [2 * SIDES, 3 * SIDES, 4 * SIDES, 4 * SIDES + 1];
  const indices = sides.flatMap((side) => {
    const next = (side + 1) % SIDES;
    const [a, b] = [2 * side, 2 * next];
    const band = [a, b, b + 1, a, b + 1, a + 1];
    return band.concat(topMiddle, top + side, top + next, bottomMiddle, bottom + next, bottom + side);
  });
  return {
    positions: Float32Array.from(positions.flat()),
    normals: Float32Array.from(normals.flat()),
    indices: Uint16Array.from(indices),
    edges: ([1, -1] as const).flatMap((up) => sides.map((side): Stroke => [rim(side, up), rim(side + 1, up)])),
  };
}

function sheetMesh({ point, normal }: Plane, reach: number): SolidMesh {
  const level: Vec3 = Math.hypot(normal[0], normal[1]) > 0.01 ? normalize([-normal[1], normal[0], 0]) : [1, 0, 0];
  const rising = normalize(cross(normal, level));
  const up = rising[2] < 0 ? addScaled([0, 0, 0], rising, -1) : rising;
  const away = normal[0] * point[0] + normal[1] * point[1] + normal[2] * point[2];
  const foot = addScaled([0, 0, 0], normal, away);
  // A wall stands on the floor; a ceiling or a bench's top lies round the machine's own axis.
  const upright = up[2] > 0.5;
  const bottom = upright ? addScaled(foot, up, -foot[2] / up[2]) : addScaled(foot, up, -reach);
  const high = upright ? reach : 2 * reach;
  const corner = (along: number, rise: number): Vec3 => addScaled(addScaled(bottom, level, along), up, rise);
  const corners = [corner(-reach, 0), corner(reach, 0), corner(reach, high), corner(-reach, high)];
  const outwards = rising[2] < 0 ? corners.toReversed() : corners;
  return {
    ...facesOf([outwards]),
    edges: corners.map((from, i): Stroke => [from, corners[(i + 1) % 4]!]),
  };
}
