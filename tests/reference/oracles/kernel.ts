/**
 * Trim read off exact solids: the run is built of the kernel's own cylinders and tori (Open CASCADE), the generator
 * lines are edges, and the kernel's boolean "common" keeps the pieces of each edge that lie inside the run. The kernel
 * works to 1e-7 mm; near a grazing line its answer is as good as the root of that.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import initialise, { type OpenCascadeInstance, type TopoDS_Shape } from 'replicad-opencascadejs';
import { cutterThrough, type Cutter } from './centreline.ts';
import { generatorStart, type End } from './march.ts';
import { along, anySquare, difference, inner, outer, type Triple } from './space.ts';

/** How far the prolonged straights and the generator lines are modelled; crossings beyond it are not seen. */
export const MODELLED = 1500;
/** Two pieces of a line that end and begin this near to each other are one: the run's parts meet there. */
const MEETING = 1e-5;
/** Asked of the volume: the kernel's plain overload is off by hundreds of mm3 where tubes are nearly equal. */
const VOLUME_ERROR = 1e-6;

export type Keep = <T extends { delete(): void }>(made: T) => T;

const ignore = (): void => {};
let started: Promise<OpenCascadeInstance> | undefined;

/** One for all files that a process tests: it takes seconds to start, and whoever makes something in it frees it. */
export function startKernel(): Promise<OpenCascadeInstance> {
  const wasm = createRequire(import.meta.url).resolve('replicad-opencascadejs/wasm');
  return (started ??= initialise({ wasmBinary: readFileSync(wasm), print: ignore, printErr: ignore }));
}

/** The kernel's objects live outside JavaScript's memory: what is made inside is freed when `work` is done. */
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

/** Leaving crossings nearest to the node, of all cutters the largest, at each of `degrees`; null where none reaches. */
export function trimsByKernel(oc: OpenCascadeInstance, end: End, degrees: readonly number[]): (number | null)[] {
  const trims: (number | null)[] = degrees.map(() => null);
  for (const cutter of end.cutters) {
    insidesOf(oc, end, cutter, degrees).forEach((insides, i) => {
      const leaving = joined(insides).map((inside) => inside[1]);
      const nearest = leaving.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a), Infinity);
      const before = trims[i]!;
      if (leaving.length > 0 && (before === null || nearest > before)) trims[i] = nearest;
    });
  }
  return trims;
}

type Interval = readonly [number, number];

/** Per generator line, the stretches of it that lie in the run, part by part. */
function insidesOf(oc: OpenCascadeInstance, end: End, cutter: Cutter, degrees: readonly number[]): Interval[][] {
  const insides: Interval[][] = degrees.map(() => []);
  // A boolean of its own for each part: where parts meet the kernel then has no seam to trip over.
  for (const part of partsOf(cutter)) {
    scoped((keep) => {
      const lines = keep(new oc.NCollection_List_TopoDS_Shape());
      for (const phi of degrees) lines.Append(lineEdge(oc, keep, end, phi));
      const tools = keep(new oc.NCollection_List_TopoDS_Shape());
      tools.Append(solidOf(oc, keep, part, cutter.radius));
      const common = keep(new oc.BRepAlgoAPI_Common());
      common.SetArguments(lines);
      common.SetTools(tools);
      common.Build(keep(new oc.Message_ProgressRange()));
      for (const edge of edgesOf(oc, keep, keep(common.Shape()))) {
        const [first, last] = endsOf(oc, keep, edge).map((p) => difference(p, end.node)) as [Triple, Triple];
        const stretch: Interval = [inner(first, end.direction), inner(last, end.direction)];
        insides[lineAt(end, first, degrees)]!.push(stretch[0] < stretch[1] ? stretch : [stretch[1], stretch[0]]);
      }
    });
  }
  return insides;
}

function lineEdge(oc: OpenCascadeInstance, keep: Keep, end: End, phi: number): TopoDS_Shape {
  const start = generatorStart(end, phi);
  const [a, b] = [-MODELLED, MODELLED].map((s) => keep(new oc.gp_Pnt(...along(start, end.direction, s))));
  return keep(keep(new oc.BRepBuilderAPI_MakeEdge(a!, b!)).Edge());
}

/** Which of the lines a point lies on, known by its bearing about the branch. */
function lineAt(end: End, fromNode: Triple, degrees: readonly number[]): number {
  const across = outer(end.direction, end.reference);
  const bearing = (Math.atan2(inner(fromNode, across), inner(fromNode, end.reference)) * 180) / Math.PI;
  const off = degrees.map((phi) => Math.abs(((bearing - phi + 540) % 360) - 180));
  return off.indexOf(Math.min(...off));
}

function joined(stretches: readonly Interval[]): Interval[] {
  const rising = stretches.toSorted((a, b) => a[0] - b[0]);
  const whole: [number, number][] = [];
  for (const [from, to] of rising) {
    const last = whole.at(-1);
    if (last && from <= last[1] + MEETING) last[1] = Math.max(last[1], to);
    else whole.push([from, to]);
  }
  return whole;
}

function edgesOf(oc: OpenCascadeInstance, keep: Keep, shape: TopoDS_Shape): TopoDS_Shape[] {
  const found: TopoDS_Shape[] = [];
  const explorer = keep(new oc.TopExp_Explorer(shape, oc.TopAbs_ShapeEnum.TopAbs_EDGE));
  for (; explorer.More(); explorer.Next()) found.push(keep(explorer.Current()));
  return found;
}

function endsOf(oc: OpenCascadeInstance, keep: Keep, edge: TopoDS_Shape): Triple[] {
  const curve = keep(new oc.BRepAdaptor_Curve(keep(oc.TopoDS.Edge(edge))));
  return [curve.FirstParameter(), curve.LastParameter()].map((t) => {
    const p = keep(curve.Value(t));
    return [p.X(), p.Y(), p.Z()];
  });
}

/** A straight or a bend as the kernel makes it: a cylinder from `origin` along z, or a torus about z from x. */
export interface Part {
  readonly origin: Triple;
  readonly z: Triple;
  readonly x: Triple;
  readonly length?: number;
  readonly bend?: { readonly radius: number; readonly angle: number };
}

export function partsOf(cutter: Cutter): Part[] {
  return cutter.parts.map((part, i) => {
    if (part.kind === 'bow') {
      const { centre, toStart, travel, radius, angle } = part;
      return { origin: centre, z: outer(toStart, travel), x: toStart, bend: { radius, angle } };
    }
    const behind = part.openBehind ? MODELLED : 0;
    const ahead = i === cutter.parts.length - 1 ? MODELLED : part.length;
    return {
      origin: along(part.from, part.direction, -behind),
      z: part.direction,
      x: anySquare(part.direction),
      length: behind + ahead,
    };
  });
}

export function solidOf(oc: OpenCascadeInstance, keep: Keep, part: Part, radius: number): TopoDS_Shape {
  const [origin, z, x] = [new oc.gp_Pnt(...part.origin), new oc.gp_Dir(...part.z), new oc.gp_Dir(...part.x)];
  const axes = keep(new oc.gp_Ax2(keep(origin), keep(z), keep(x)));
  const maker = part.bend
    ? new oc.BRepPrimAPI_MakeTorus(axes, part.bend.radius, radius, part.bend.angle)
    : new oc.BRepPrimAPI_MakeCylinder(axes, radius, part.length!);
  return keep(keep(maker).Shape());
}

export interface CopedTube {
  readonly corners: readonly Triple[];
  readonly bendRadius: number;
  readonly radius: number;
  readonly bore: number;
  /** At the first corner and at the last; the cutters of an end touch only the straight there. */
  readonly cutters: readonly [readonly Cutter[], readonly Cutter[]];
}

/** How far a coped end runs past its node before it is cut: more than any tip. */
const PAST_NODE = 150;

/** Volume in mm3 of the steel of a coped tube: what its outside holds less what its bore holds, each cut by the cutters. */
export const copedVolume = (oc: OpenCascadeInstance, tube: CopedTube): number =>
  heldBy(oc, tube, tube.radius) - heldBy(oc, tube, tube.bore);

function heldBy(oc: OpenCascadeInstance, tube: CopedTube, radius: number): number {
  const parts = partsBetween(tube);
  return parts.reduce((total, part, i) => {
    const cutters = [...(i === 0 ? tube.cutters[0] : []), ...(i === parts.length - 1 ? tube.cutters[1] : [])];
    return (
      total + scoped((keep) => greatestVolume(oc, keep, cutDown(oc, keep, solidOf(oc, keep, part, radius), cutters)))
    );
  }, 0);
}

/** The tube's own straights and bends, its coped ends lengthened past their nodes. */
function partsBetween({ corners, bendRadius, radius, cutters }: CopedTube): Part[] {
  const extra = cutters.map((list) => (list.length > 0 ? PAST_NODE : 0)) as [number, number];
  const { parts } = cutterThrough(corners, bendRadius, radius);
  const last = corners.at(-1)!;
  return partsOf({ radius, parts }).map((part, i) => {
    const own = parts[i]!;
    if (own.kind === 'bow') return part;
    const [behind, ahead] = [i === 0 ? extra[0] : 0, i === parts.length - 1 ? extra[1] : 0];
    const length = Number.isFinite(own.length) ? own.length : inner(difference(last, own.from), own.direction);
    return { ...part, origin: along(own.from, own.direction, -behind), length: behind + length + ahead };
  });
}

function cutDown(oc: OpenCascadeInstance, keep: Keep, solid: TopoDS_Shape, cutters: readonly Cutter[]): TopoDS_Shape {
  const progress = keep(new oc.Message_ProgressRange());
  let left = solid;
  for (const cutter of cutters) {
    for (const part of partsOf(cutter)) {
      const tool = solidOf(oc, keep, part, cutter.radius);
      left = keep(keep(new oc.BRepAlgoAPI_Cut(left, tool, progress)).Shape());
    }
  }
  return left;
}

/** Of the pieces that a cut leaves, the tube is the greatest; what lies beyond the cope is scrap. */
function greatestVolume(oc: OpenCascadeInstance, keep: Keep, shape: TopoDS_Shape): number {
  const explorer = keep(new oc.TopExp_Explorer(shape, oc.TopAbs_ShapeEnum.TopAbs_SOLID));
  let greatest = 0;
  for (; explorer.More(); explorer.Next()) {
    const properties = keep(new oc.GProp_GProps());
    oc.BRepGProp.VolumeProperties(keep(explorer.Current()), properties, VOLUME_ERROR, false, false);
    greatest = Math.max(greatest, properties.Mass());
  }
  return greatest;
}
