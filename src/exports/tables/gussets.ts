/** The gussets of a job as they stand in the car, for the fabrication file. Millimetres, degrees, kilograms, car axes. */
import type { Derived } from '../../core/derive.ts';
import { toDegrees, type Degrees } from '../../core/geometry/angle.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import { inCar } from '../../core/gusset/corner.ts';
import { extentOf } from '../../core/gusset/edges.ts';
import { freeEdge } from '../../core/gusset/flat.ts';
import { gussetsOf, isMade, type MadeGusset } from '../../core/gusset/gussets.ts';
import type { Gusset } from '../../core/job/kinds/gusset.ts';
import type { GussetId, NodeRef, TubeRef } from '../../core/job/reference.ts';

export interface FabricationGusset {
  /** The job's, with a prime for its mirror image. */
  readonly id: GussetId;
  readonly name: string;
  readonly node: NodeRef;
  readonly kind: Gusset['kind'];
  readonly thickness: number;
  readonly between: readonly { readonly bar: TubeRef; readonly towards: 'A' | 'B'; readonly leg: number }[];
  /** Between the legs. */
  readonly angle: Degrees;
  /** Where the two tubes' lines meet on the sheet, and where its free edge begins and ends; of a bent one on the plane of the two axes. */
  readonly corner: Vec3;
  readonly freeEdge: readonly [Vec3, Vec3];
  /** Unit, out of the plane of the two axes. */
  readonly normal: Vec3;
  /** Of the flat sheet: that just holds it, as it is drawn in gussets.dxf. */
  readonly size: readonly [number, number];
  readonly area: number;
  readonly mass: number;
}

/** Those that can be made, in the order of the job, each mirror image after its own. */
export const fabricationGussets = (derived: Derived): readonly FabricationGusset[] =>
  gussetsOf(derived).flatMap(({ gusset, id, node, ways, made }) => {
    if (!isMade(made)) return [];
    const { corner, sheet } = made;
    const [x, y] = extentOf(sheet.edges);
    return [
      {
        id,
        name: gusset.name,
        node,
        kind: gusset.kind,
        thickness: gusset.thickness,
        between: ways.map(({ bar, towards }, i) => ({ bar: bar.id, towards, leg: gusset.between[i]!.leg })),
        angle: toDegrees(corner.angle),
        ...placesOf(made, gusset),
        normal: corner.normal,
        size: [x[1] - x[0], y[1] - y[0]] as const,
        area: sheet.area,
        mass: sheet.mass,
      },
    ];
  });

function placesOf(
  { corner, sheet: { shape } }: MadeGusset,
  gusset: Gusset,
): Pick<FabricationGusset, 'corner' | 'freeEdge'> {
  const at = shape.kind === 'flat' ? shape.face.corner : shape.fold.midway;
  const [one, two] = freeEdge(at, corner.angle, gusset);
  return { corner: inCar(corner, at, 0), freeEdge: [inCar(corner, one, 0), inCar(corner, two, 0)] };
}
