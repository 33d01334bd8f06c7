/**
 * The exact kernel (Open CASCADE), as the solids use it. Whoever asks for solids brings it: where its file lies, and how
 * it is read, differs between the browser and the command line.
 */
import type start from 'replicad-opencascadejs';
import type {
  BRepBuilderAPI_MakeShape,
  OpenCascadeInstance,
  TopoDS_Edge,
  TopoDS_Shape,
  TopoDS_Wire,
} from 'replicad-opencascadejs';
import { placeOnPiece, type ArcPiece, type Piece } from '../../core/geometry/path.ts';
import { cross, normalize, subtract, type Vec3 } from '../../core/geometry/vector.ts';

export type Kernel = OpenCascadeInstance;
export type Shape = TopoDS_Shape;

/**
 * Starts the kernel: the package's own entry, and the bytes of its WebAssembly. It reports to the console otherwise, which is
 * where nobody looks and the command line must not write.
 */
export const startKernel = (initialise: typeof start, wasmBinary: ArrayBufferView | ArrayBuffer): Promise<Kernel> =>
  initialise({ wasmBinary, print: ignore, printErr: ignore });

const ignore = (): void => {};

/** Notes an object of the kernel for freeing, and hands it on. */
export type Keep = <T extends { delete(): void }>(made: T) => T;

/** The kernel's objects live outside JavaScript's memory: all that is made inside is freed when `work` is done. */
export function scoped<Result>(work: (keep: Keep) => Result): Result {
  const made: { delete(): void }[] = [];
  try {
    return work((object) => {
      made.push(object);
      return object;
    });
  } finally {
    for (const object of made.toReversed()) object.delete();
  }
}

/** Part of a piece of centreline, from and to in mm along it; on a line they may lie beyond its ends. */
export interface Stretch {
  readonly piece: Piece;
  readonly from: number;
  readonly to: number;
}

/** Unit tangent where a stretch begins. */
export const tangentAt = ({ piece, from }: Stretch): Vec3 => placeOnPiece(piece, from).tangent;

/**
 * A chain of stretches swept through by a disc, or by a ring where there is a bore: cylinders and tori that meet in their
 * common tangent planes, closed by planes square to both ends. `seam` (not along the first tangent) is the direction in which
 * the surfaces' seams start. What is made is kept by `keep`.
 */
export function sweptSolid(
  oc: Kernel,
  keep: Keep,
  chain: readonly Stretch[],
  radius: number,
  bore: number | null,
  seam: Vec3,
): Shape {
  const spine = keep(new oc.BRepBuilderAPI_MakeWire());
  for (const stretch of chain) spine.Add(edgeOf(oc, keep, stretch));
  const { point, tangent } = placeOnPiece(chain[0]!.piece, chain[0]!.from);
  const circle = (r: number): TopoDS_Wire => circleWire(oc, keep, point, tangent, seam, r);
  const face = keep(new oc.BRepBuilderAPI_MakeFace(circle(radius), true));
  if (bore !== null) {
    const hole = circle(bore);
    hole.Reverse();
    face.Add(hole);
  }
  return keep(keep(new oc.BRepOffsetAPI_MakePipe(keep(spine.Wire()), keep(face.Face()))).Shape());
}

/** What a flat outline, its pieces end to end and closed, takes up as it is pushed by so much. */
export function pushedSolid(oc: Kernel, keep: Keep, outline: readonly Piece[], by: Vec3): Shape {
  const wire = keep(new oc.BRepBuilderAPI_MakeWire());
  for (const piece of outline) wire.Add(edgeOf(oc, keep, { piece, from: 0, to: piece.length }));
  const face = keep(keep(new oc.BRepBuilderAPI_MakeFace(keep(wire.Wire()), true)).Face());
  return keep(keep(new oc.BRepPrimAPI_MakePrism(face, keep(new oc.gp_Vec(...by)), false, true)).Shape());
}

function edgeOf(oc: Kernel, keep: Keep, { piece, from, to }: Stretch): TopoDS_Edge {
  if (piece.kind === 'line') {
    const ends = [from, to].map((at) => point(oc, keep, placeOnPiece(piece, at).point)) as [Point, Point];
    return keep(keep(new oc.BRepBuilderAPI_MakeEdge(...ends)).Edge());
  }
  const circle = keep(new oc.gp_Circ(axesOfArc(oc, keep, piece), piece.radius));
  return keep(keep(new oc.BRepBuilderAPI_MakeEdge(circle, from / piece.radius, to / piece.radius)).Edge());
}

/** Angles on it count from the arc's start, in the direction of travel. */
const axesOfArc = (oc: Kernel, keep: Keep, { centre, normal, from }: ArcPiece) =>
  axes(oc, keep, centre, normal, normalize(subtract(from, centre)));

function circleWire(oc: Kernel, keep: Keep, centre: Vec3, normal: Vec3, seam: Vec3, radius: number): TopoDS_Wire {
  const circle = keep(new oc.gp_Circ(axes(oc, keep, centre, normal, seam), radius));
  const edge = keep(keep(new oc.BRepBuilderAPI_MakeEdge(circle)).Edge());
  return keep(keep(new oc.BRepBuilderAPI_MakeWire(edge)).Wire());
}

type Point = ReturnType<typeof point>;

export const point = (oc: Kernel, keep: Keep, [x, y, z]: Vec3) => keep(new oc.gp_Pnt(x, y, z));

/** z along `normal`; x is the part of `seam` square to it. */
const axes = (oc: Kernel, keep: Keep, origin: Vec3, normal: Vec3, seam: Vec3) =>
  keep(
    new oc.gp_Ax2(
      point(oc, keep, origin),
      keep(new oc.gp_Dir(...normal)),
      keep(new oc.gp_Dir(...cross(cross(normal, seam), normal))),
    ),
  );

/** A round bar from `from` along the unit direction. */
export function bar(
  oc: Kernel,
  keep: Keep,
  from: Vec3,
  direction: Vec3,
  seam: Vec3,
  radius: number,
  length: number,
): Shape {
  const maker: BRepBuilderAPI_MakeShape = keep(
    new oc.BRepPrimAPI_MakeCylinder(axes(oc, keep, from, direction, seam), radius, length),
  );
  return keep(maker.Shape());
}

/** A box from its corner: its height along the unit direction `up`, its width along `across`, and its depth square to both. */
export function box(oc: Kernel, keep: Keep, corner: Vec3, up: Vec3, across: Vec3, [wide, deep, high]: Vec3): Shape {
  return keep(keep(new oc.BRepPrimAPI_MakeBox(axes(oc, keep, corner, up, across), wide, deep, high)).Shape());
}

/**
 * mm. Faces nearer to each other than this count as touching. Without it the kernel gives up in silence, and cuts nothing, where
 * a tube touches the sides of a bend that is just as thick: their surfaces are tangent there, and only their curvatures
 * differ. With 1e-5 and with 1e-3 the volumes come out the same to 0.1 mm3.
 */
const TOUCHING = 1e-4;

/** What is left of `solid` without the tools. */
export function cutBy(oc: Kernel, keep: Keep, solid: Shape, tools: readonly Shape[]): Shape {
  return tools.reduce((left, tool) => {
    const cut = keep(new oc.BRepAlgoAPI_Cut());
    cut.SetArguments(listOf(oc, keep, left));
    cut.SetTools(listOf(oc, keep, tool));
    cut.SetFuzzyValue(TOUCHING);
    cut.Build(keep(new oc.Message_ProgressRange()));
    return keep(cut.Shape());
  }, solid);
}

function listOf(oc: Kernel, keep: Keep, shape: Shape) {
  const list = keep(new oc.NCollection_List_TopoDS_Shape());
  list.Append(shape);
  return list;
}

/** Relative error that is asked of a volume: the kernel's plain way is off by hundreds of mm3 where tubes are nearly equal. */
const VOLUME_ERROR = 1e-6;

/** mm3. */
export function volumeOf(oc: Kernel, keep: Keep, shape: Shape): number {
  const properties = keep(new oc.GProp_GProps());
  oc.BRepGProp.VolumeProperties(shape, properties, VOLUME_ERROR, false, false);
  return properties.Mass();
}

/** The solids within a shape, one by one. */
export function solidsIn(oc: Kernel, keep: Keep, shape: Shape): Shape[] {
  const found: Shape[] = [];
  const explorer = keep(new oc.TopExp_Explorer(shape, oc.TopAbs_ShapeEnum.TopAbs_SOLID));
  for (; explorer.More(); explorer.Next()) found.push(keep(explorer.Current()));
  return found;
}

/** Whether the kernel's own examination finds nothing wrong with it. */
export const isValid = (oc: Kernel, keep: Keep, shape: Shape): boolean =>
  keep(new oc.BRepCheck_Analyzer(shape, true)).IsValid();
