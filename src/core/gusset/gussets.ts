/**
 * The gussets of a frame as they stand in it: each as the job has it and, unless it is for one side alone, its mirror image. The image runs along the images of its bars; along
 * a bar that has none, such as a hoop across the car, or one in the place of it, along what runs at the image of the node in the mirrored direction.
 */
import { nearestOnPath } from '../geometry/path.ts';
import { MEETING_DISTANCE } from '../geometry/tolerance.ts';
import { distance, dot, equal, mirrored, type Vec3 } from '../geometry/vector.ts';
import type { Gusset } from '../job/kinds/gusset.ts';
import { primed, type NodeRef } from '../job/reference.ts';
import { remembered } from '../remembered.ts';
import type { Bar, Frame } from '../solve/types.ts';
import { cornerAt, tangentsOf, type Corner, type NoCorner, type Side, type Way } from './corner.ts';
import { sheetFor, type NoSheet, type Sheet } from './sheet.ts';

export type NoGusset = NoCorner | NoSheet;

export interface SetGusset {
  readonly gusset: Gusset;
  /** Its id, with a prime for the mirror image. */
  readonly id: string;
  readonly isImage: boolean;
  readonly node: NodeRef;
  readonly place: Vec3;
  readonly ways: readonly [Way, Way];
  readonly made: MadeGusset | NoGusset;
}

export interface MadeGusset {
  readonly corner: Corner;
  readonly sheet: Sheet;
}

/** Whether it can be made. */
export const isMade = (made: SetGusset['made']): made is MadeGusset => 'sheet' in made;

/** In the order of the job, an image after its own. */
export const gussetsOf: (frame: Frame) => readonly SetGusset[] = remembered((frame) =>
  frame.job.gussets.flatMap((gusset) => {
    const own = ownOf(frame, gusset);
    const image = imageOf(frame, own);
    return image === null ? [own] : [own, image];
  }),
);

function ownOf(frame: Frame, gusset: Gusset): SetGusset {
  const [a, b] = gusset.between.map(({ member, towards }): Way => ({ bar: frame.bars.get(member)!, towards }));
  return setAt(frame, gusset, false, [a!, b!]);
}

function setAt(frame: Frame, gusset: Gusset, isImage: boolean, ways: SetGusset['ways']): SetGusset {
  const [id, node] = isImage ? [primed(gusset.id), primed(gusset.node)] : [gusset.id, gusset.node];
  const place = frame.nodes.get(node)!;
  const known = isImage ? images : owns;
  const before = known.get(gusset);
  if (before !== undefined && equal(before.place, place) && isAlong(before.ways, ways)) return before;
  const set = { gusset, id, isImage, node, place, ways, made: madeAt(cornerAt(place, ways), gusset) };
  known.set(gusset, set);
  return set;
}

/** What was made of a gusset holds as long as its node stands there and its bars are the same: an edit leaves most of them alone. */
const owns = new WeakMap<Gusset, SetGusset>();
const images = new WeakMap<Gusset, SetGusset>();

const isAlong = (a: SetGusset['ways'], b: SetGusset['ways']): boolean =>
  a.every(({ bar, towards }, i) => bar === b[i]!.bar && towards === b[i]!.towards);

function madeAt(corner: Corner | NoCorner, gusset: Gusset): SetGusset['made'] {
  if ('why' in corner) return corner;
  const sheet = sheetFor(corner, gusset);
  return 'why' in sheet ? sheet : { corner, sheet };
}

/** Null where none is asked for, where nothing runs there as its bars do, where it is its own image, and where it has no corner itself. */
function imageOf(frame: Frame, own: SetGusset): SetGusset | null {
  const { gusset, made } = own;
  if (!isMade(made) || !gusset.mirror) return null;
  const [a, b] = made.corner.sides.map((side) => imageWay(frame, side, mirrored(made.corner.place)));
  if (a == null || b == null) return null;
  const set = setAt(frame, gusset, true, [a, b]);
  return isSame(own, set) ? null : set;
}

/** The way along the image of the side's bar, or along the bar that runs there. */
function imageWay({ bars }: Frame, { bar, towards, direction }: Side, place: Vec3): Way | null {
  if (bar.member.mirror) return { bar: bars.get(primed(bar.id))!, towards };
  const wanted = mirrored(direction);
  for (const each of [bar, ...bars.values()]) {
    const sense = runs(each, place, wanted);
    if (sense !== 0) return { bar: each, towards: sense > 0 ? 'B' : 'A' };
  }
  return null;
}

/** The cosine of a degree: a bar that runs so near a direction runs in it. */
const ALIKE = Math.cos(Math.PI / 180);

/** Whether the bar runs from the place on along the direction, 1, against it, -1, or not, 0, as where it ends there; at the corner of a bend beside that. */
function runs(bar: Bar, place: Vec3, direction: Vec3): -1 | 0 | 1 {
  const bend = bar.bends.find(({ corner }) => distance(corner, place) <= MEETING_DISTANCE);
  const near = nearestOnPath(bar.path, place);
  if (bend === undefined && near.distance > MEETING_DISTANCE) return 0;
  const tangents = bend === undefined ? [near.tangent] : tangentsOf(bar, bend);
  const along = tangents.map((tangent) => dot(tangent, direction)).find((cosine) => Math.abs(cosine) >= ALIKE);
  if (along === undefined) return 0;
  const left = along > 0 ? bar.path.length - near.at : near.at;
  return left <= MEETING_DISTANCE ? 0 : along > 0 ? 1 : -1;
}

/** The two at one place, along the same bars: it lies across the centre plane. */
const isSame = (a: SetGusset, b: SetGusset): boolean =>
  distance(a.place, b.place) <= MEETING_DISTANCE &&
  a.ways.every(({ bar, towards }) => b.ways.some((way) => way.bar === bar && way.towards === towards));
