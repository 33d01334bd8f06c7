/**
 * One cope curve, 360 ordinates of the outer surface, by the program, by mesh booleans and by exact solids; on a
 * straight run and on a bend. OD 38.1 on OD 44.45, leaning 60 degrees.
 *
 * What is timed: of the mesh boolean, the difference of branch and run alone, their meshes made beforehand and nothing
 * read off; of the exact solids, the boolean cut, solids made beforehand, and the reading of the 360 ordinates off the edges it leaves. So both
 * are spared what a program that used them would have to do besides.
 */
import type { ManifoldToplevel } from 'manifold-3d';
import type { OpenCascadeInstance, TopoDS_Shape } from 'replicad-opencascadejs';
import { derive } from '../../src/core/derive.ts';
import type { Bundle } from '../../src/core/geometry/fan.ts';
import type { Sleeve } from '../../src/core/geometry/met-sleeve.ts';
import { trimBySleeves } from '../../src/core/geometry/sleeve.ts';
import { cutterThrough, distanceToCentreline, type Cutter } from '../reference/oracles/centreline.ts';
import { partsOf, scoped, solidOf, type Keep, type Part } from '../reference/oracles/kernel.ts';
import { cylinder, SEGMENTS, solidsOf } from '../reference/oracles/mesh.ts';
import { inner, outer, type Triple } from '../reference/oracles/space.ts';
import { jobFrom } from './lattice.ts';
import { timed, type Timing } from './clock.ts';

/** The branch goes up z from the origin; the run's corners. */
export interface Curve {
  readonly name: string;
  readonly corners: readonly Triple[];
}

const RUN = 44.45;
const BRANCH = 38.1;
const BEND_RADIUS = 152.4;
const [SIN, COS] = [Math.sin(Math.PI / 3), 0.5];

export const STRAIGHT: Curve = {
  name: 'straight run',
  corners: [
    [-400 * SIN, 0, -400 * COS],
    [400 * SIN, 0, 400 * COS],
  ],
};

/** A quarter bend whose middle passes through the origin, square to x, and leans 60 degrees to the branch there. */
export const BEND: Curve = { name: 'bend', corners: bendThroughOrigin() };

function bendThroughOrigin(): Triple[] {
  const corner = BEND_RADIUS * (Math.SQRT2 - 1);
  const leg = 400 * Math.SQRT1_2;
  const flat: readonly [number, number][] = [
    [-leg, corner - leg],
    [0, corner],
    [leg, corner - leg],
  ];
  return flat.map(([along, across]): Triple => [along * SIN, across, along * COS]);
}

const cutterOf = (curve: Curve): Cutter => cutterThrough(curve.corners, BEND_RADIUS, RUN / 2);
const BUNDLE: Bundle = { origin: [0, 0, 0], direction: [0, 0, 1], reference: [1, 0, 0] };

export function timeOurs(curve: Curve): { time: Timing; trim: Float64Array } {
  const sleeves = [sleeveOf(curve)];
  const trim = trimBySleeves(sleeves, BUNDLE, BRANCH / 2);
  return { time: timed(2000, 2000, () => trimBySleeves(sleeves, BUNDLE, BRANCH / 2)), trim };
}

function sleeveOf({ corners }: Curve): Sleeve {
  const nodes = corners.map((position, i) => ({ id: `n${i}`, at: { kind: 'fixed', position } }));
  const result = derive(
    jobFrom({
      sections: [{ id: 's', outerDiameter: RUN, wall: 3 }],
      dies: [{ id: 'd', outerDiameter: RUN, centrelineRadius: BEND_RADIUS }],
      nodes,
      members: [{ id: 'run', path: nodes.map((node) => node.id), section: 's', die: 'd' }],
    }),
  );
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return { path: result.value.byId.get('run')!.path, radius: RUN / 2, reach: Infinity };
}

export function timeMesh(module: ManifoldToplevel, curve: Curve): Timing {
  const solids = solidsOf(module, cutterOf(curve), 360 / SEGMENTS);
  const branch = cylinder(module, BRANCH / 2, 400).translate([0, 0, -200]);
  // Its work is put off until something is asked of the result.
  for (const solid of [branch, ...solids]) solid.numTri();
  return timed(7, 2, () => {
    const rest = module.Manifold.difference([branch, ...solids]);
    rest.numTri();
    rest.delete();
  });
}

export function timeKernel(oc: OpenCascadeInstance, curve: Curve, trim: Float64Array): { time: Timing; worst: number } {
  const cutter = cutterOf(curve);
  return scoped((keep) => {
    const branchPart: Part = { origin: [0, 0, -200], z: [0, 0, 1], x: [1, 0, 0], length: 400 };
    const branch = solidOf(oc, keep, branchPart, BRANCH / 2);
    const tools = partsOf(cutter).map((part) => solidOf(oc, keep, part, RUN / 2));
    let read: readonly number[] = [];
    const time = timed(9, 2, () => {
      read = scoped((keepNow) => readCurve(oc, keepNow, cutWith(oc, keepNow, branch, tools), cutter));
    });
    return { time, worst: Math.max(...read.map((s, phi) => Math.abs(s - trim[phi]!))) };
  });
}

function cutWith(
  oc: OpenCascadeInstance,
  keep: Keep,
  branch: TopoDS_Shape,
  tools: readonly TopoDS_Shape[],
): TopoDS_Shape {
  const [cut, less] = [keep(new oc.NCollection_List_TopoDS_Shape()), keep(new oc.NCollection_List_TopoDS_Shape())];
  cut.Append(branch);
  for (const tool of tools) less.Append(tool);
  const boolean = keep(new oc.BRepAlgoAPI_Cut());
  boolean.SetArguments(cut);
  boolean.SetTools(less);
  boolean.Build(keep(new oc.Message_ProgressRange()));
  return keep(boolean.Shape());
}

const SAMPLES = 400;

/** Samples the edges that lie on both surfaces, keeps the side that leaves the run, and goes straight between samples. */
function readCurve(oc: OpenCascadeInstance, keep: Keep, shape: TopoDS_Shape, cutter: Cutter): number[] {
  const samples: { phi: number; s: number }[] = [];
  const explorer = keep(new oc.TopExp_Explorer(shape, oc.TopAbs_ShapeEnum.TopAbs_EDGE));
  for (; explorer.More(); explorer.Next()) {
    const curve = keep(new oc.BRepAdaptor_Curve(keep(oc.TopoDS.Edge(keep(explorer.Current())))));
    const [first, last] = [curve.FirstParameter(), curve.LastParameter()];
    for (let i = 0; i <= SAMPLES; i++) {
      const p = keep(curve.Value(first + ((last - first) * i) / SAMPLES));
      const at: Triple = [p.X(), p.Y(), p.Z()];
      if (
        Math.abs(Math.hypot(at[0], at[1]) - BRANCH / 2) > 1e-4 ||
        Math.abs(distanceToCentreline(cutter, at) - RUN / 2) > 1e-4
      )
        break;
      const s = inner(at, BUNDLE.direction);
      const bearing =
        (Math.atan2(inner(at, outer(BUNDLE.direction, BUNDLE.reference)), inner(at, BUNDLE.reference)) * 180) / Math.PI;
      if (distanceToCentreline(cutter, [at[0], at[1], s + 0.01]) > RUN / 2)
        samples.push({ phi: (bearing + 360) % 360, s });
    }
  }
  samples.sort((a, b) => a.phi - b.phi);
  const round = [
    { ...samples.at(-1)!, phi: samples.at(-1)!.phi - 360 },
    ...samples,
    { ...samples[0]!, phi: samples[0]!.phi + 360 },
  ];
  let at = 0;
  return Array.from({ length: 360 }, (_, phi) => {
    while (round[at + 1]!.phi <= phi) at += 1;
    const [a, b] = [round[at]!, round[at + 1]!];
    return a.s + ((b.s - a.s) * (phi - a.phi)) / (b.phi - a.phi);
  });
}
