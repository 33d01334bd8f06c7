/**
 * How far the edge of a cut end stands off what it is to lie on: on lines of its profile the distance from the edge of the wall, square to
 * the face, mm; below 0 where steel is in the way, which is filed off. Where the end was left long, what was left counts too: a line is
 * open only as far as the nearer of its edge and that.
 */
import { distanceToPath } from '../geometry/path.ts';
import { add, addScaled, cross, dot, distance, normalize, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import type { NodeRef, TubeRef } from '../job/reference.ts';
import { tubesOfBar } from '../solve/bar-tubes.ts';
import type { Frame, SolvedTube, TubeEnd } from '../solve/types.ts';
import type { Pose, Stand } from './stand.ts';
import type { JointForecast } from './types.ts';

/** What an end lies on: a run tube, a place of the car, or the end of another tube. Of the flat ones the drawn place, and the unit normal towards the tube. */
type Face =
  | { readonly kind: 'run'; readonly bar: TubeRef; readonly radius: number }
  | { readonly kind: 'car'; readonly node: NodeRef; readonly drawn: Plane }
  | {
      readonly kind: 'end';
      readonly tube: TubeRef;
      readonly which: 0 | 1;
      readonly drawn: Plane;
      /** The normal along that end's direction, its reference and the third. */
      readonly own: Vec3;
    };

interface Plane {
  readonly place: Vec3;
  readonly normal: Vec3;
}

/** An end that is to be welded. */
export interface Joint {
  readonly tube: SolvedTube;
  readonly which: 0 | 1;
  readonly end: TubeEnd;
  readonly fit: JointForecast['fit'];
  /** The bars that it lies on. */
  readonly to: readonly TubeRef[];
  readonly faces: readonly Face[];
}

/** Lines of a profile, a degree apart, on which openings are asked for: cosine, sine and trim. */
export interface Line {
  readonly cosine: number;
  readonly sine: number;
  readonly trim: number;
}

/** Every end that is coped, stands on a plate or a foot, is mitred or butted, in build order; others are welded to nothing. */
export const jointsOf = (frame: Frame): readonly Joint[] =>
  frame.tubes.flatMap((tube) => ([0, 1] as const).flatMap((which) => jointAt(frame, tube, which)));

function jointAt(frame: Frame, tube: SolvedTube, which: 0 | 1): readonly Joint[] {
  const end = tube.ends[which];
  const base = { tube, which, end };
  const cutters = end.cuts.filter(({ reaches }) => reaches);
  if (cutters.length > 0) {
    const faces = cutters.map(({ against, sawDiameter }): Face => ({
      kind: 'run',
      bar: against,
      radius: sawDiameter / 2,
    }));
    return [{ ...base, fit: 'cope', to: cutters.map(({ against }) => against), faces }];
  }
  const towards = (normal: Vec3): Vec3 => scale(normalize(normal), dot(normal, end.direction) < 0 ? -1 : 1);
  if ((end.fit === 'plate' || end.fit === 'foot') && end.plateNormal !== null && end.node !== null) {
    const drawn = { place: end.position, normal: towards(end.plateNormal) };
    const face = { kind: 'car', node: end.node, drawn } as const;
    return [{ ...base, fit: end.fit, to: [], faces: [face] }];
  }
  const mate = end.butted[0];
  if (mate === undefined) return [];
  const normal = towards(end.fit === 'mitre' && end.plateNormal !== null ? end.plateNormal : end.direction);
  const fit = end.fit === 'mitre' ? 'mitre' : 'butt';
  return [{ ...base, fit, to: [mate], faces: [faceOfEnd(frame, mate, end.position, normal)] }];
}

/** The end of the bar that is nearest to the place. */
function faceOfEnd({ byId }: Frame, bar: TubeRef, place: Vec3, normal: Vec3): Face {
  const all = tubesOfBar(byId, bar).flatMap((tube) => ([0, 1] as const).map((which) => ({ tube, which })));
  const away = ({ tube, which }: (typeof all)[number]): number => distance(tube.ends[which].position, place);
  const { tube, which } = all.reduce((best, each) => (away(each) < away(best) ? each : best));
  const { position, direction, reference } = tube.ends[which];
  const own: Vec3 = [dot(normal, direction), dot(normal, reference), dot(normal, cross(direction, reference))];
  return { kind: 'end', tube: tube.id, which, drawn: { place: position, normal }, own };
}

/** Those of the end's lines, `step` degrees apart, on which it is cut. */
export function linesOf({ end }: Joint, step: number): readonly Line[] {
  const lines: Line[] = [];
  for (let degree = 0; degree < 360; degree += step) {
    const trim = end.outer[degree]!;
    const phi = (degree * Math.PI) / 180;
    if (!Number.isNaN(trim)) lines.push({ cosine: Math.cos(phi), sine: Math.sin(phi), trim });
  }
  return lines;
}

/** Of each line how far it stands open, mm; with `more` mm left on the end besides what the saw took. */
export function openings(
  { tube, which, faces, end }: Joint,
  lines: readonly Line[],
  more: number,
  stood: Stand,
): Float64Array {
  const pose = stood.ends(tube.id)[which];
  const drawn = drawnPose(end);
  const radius = tube.section.outerDiameter / 2;
  const runs = faces.flatMap((face) =>
    face.kind === 'run' ? [{ path: stood.bar(face.bar).path, radius: face.radius }] : [],
  );
  const flats = faces.flatMap((face) =>
    face.kind === 'run' ? [] : [{ drawn: face.drawn, is: planeNow(face, stood) }],
  );
  return Float64Array.from(lines, (line) => {
    const edge = onLine(pose, radius, line, line.trim + pose.short - more);
    let least = Infinity;
    for (const run of runs) least = Math.min(least, distanceToPath(run.path, edge, true) - run.radius);
    for (const flat of flats) {
      // The same height over the node as drawn is closed: the face of a foot lies its thickness over it.
      least = Math.min(least, over(flat.is, edge) - over(flat.drawn, onLine(drawn, radius, line, line.trim)));
    }
    return least;
  });
}

const over = ({ place, normal }: Plane, point: Vec3): number => dot(subtract(point, place), normal);

function planeNow(face: Exclude<Face, { readonly kind: 'run' }>, stood: Stand): Plane {
  if (face.kind === 'car') return { place: stood.node(face.node), normal: face.drawn.normal };
  const { position, direction, reference, short } = stood.ends(face.tube)[face.which];
  const [along, aside, across] = face.own;
  const normal = addScaled(addScaled(scale(direction, along), reference, aside), cross(direction, reference), across);
  return { place: addScaled(position, direction, short), normal };
}

const drawnPose = ({ position, direction, reference }: TubeEnd): Pose => ({ position, direction, reference, short: 0 });

function onLine({ position, direction, reference }: Pose, radius: number, { cosine, sine }: Line, along: number): Vec3 {
  const aside = addScaled(scale(reference, radius * cosine), cross(direction, reference), radius * sine);
  return addScaled(add(position, aside), direction, along);
}
