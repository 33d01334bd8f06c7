/** Gussets when the bars that their legs run along are told for each side of the car, or for both again. */
import { nextId } from '../edit/ids.ts';
import { appendRecord, takeOut, withRecords } from '../edit/records.ts';
import { dot, mirrored } from '../geometry/vector.ts';
import { gussetsOf, isMade, type SetGusset } from '../gusset/gussets.ts';
import { sameData } from '../job/equal.ts';
import type { Gusset, GussetLeg } from '../job/kinds/gusset.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import { bareId } from '../job/reference.ts';
import { shownName } from '../job/shown.ts';
import type { Job } from '../job/types.ts';
import type { Frame } from '../solve/types.ts';
import type { References } from './place-image.ts';

const renamed = (gusset: Gusset, { node, tube }: References): Gusset => {
  const leg = (one: GussetLeg): GussetLeg => ({ ...one, member: tube(one.member) });
  return { ...gusset, node: node(gusset.node), between: [leg(gusset.between[0]), leg(gusset.between[1])] };
};

/**
 * With a gusset of its own for each side where the bars of an image are members of their own from now on. `after` has the members as they are then, `rename` what references become.
 */
export function gussetsEachSide(frame: Frame, after: Job, rename: References): Job {
  const others = gussetsOf(frame).flatMap(({ gusset, isImage, node, ways }) => {
    const isApart = ways.some(({ bar }) => rename.tube(bar.id) !== bar.id);
    return isImage && isApart ? [{ gusset, node, ways }] : [];
  });
  const isTwo = new Set(others.map(({ gusset }) => gusset.id));
  const own = withRecords(
    after,
    'gussets',
    mapKeeping(after.gussets, (gusset) => {
      const told = renamed(gusset, rename);
      return isTwo.has(gusset.id) ? { ...told, mirror: false } : told;
    }),
  );
  return others.reduce((job, { gusset, node, ways }) => {
    const leg = (i: 0 | 1): GussetLeg => {
      const { bar, towards } = ways[i];
      return { ...gusset.between[i], member: rename.tube(bar.id), towards };
    };
    return appendRecord(job, 'gussets', {
      ...gusset,
      id: nextId(job, 'gussets'),
      name: shownName(`${gusset.name}, mirrored`),
      node: rename.node(node),
      between: [leg(0), leg(1)],
      mirror: false,
    });
  }, own);
}

/**
 * The way back: told of the images. Of two that are each other's mirror image in the car as it stands one stays, for both sides; others stay as they are, each on its side. `gone` are the
 * members that are images from now on.
 */
export function gussetsForBoth(frame: Frame, job: Job, rename: References, gone: ReadonlySet<string>): Job {
  const others = job.gussets.filter(({ between }) => between.some(({ member }) => gone.has(member)));
  const imageOfIt = ({ id }: Gusset): Gusset | undefined =>
    others.find((other) => other.id !== id && isImageOf(frame, id, other.id, rename));
  const double = new Map(
    job.gussets.flatMap((gusset) => {
      const other = others.includes(gusset) ? undefined : imageOfIt(gusset);
      return other === undefined ? [] : [[gusset.id, other.id]];
    }),
  );
  const left = takeOut(job, 'gussets', new Set(double.values()));
  return withRecords(
    left,
    'gussets',
    mapKeeping(left.gussets, (gusset) => {
      const told = renamed(gusset, rename);
      return double.has(gusset.id) ? { ...told, mirror: true } : told;
    }),
  );
}

/** Whether the other is the same sheet on the other side: its legs along the images of the same bars and the same way, in the car as it stands. */
function isImageOf(frame: Frame, id: string, otherId: string, rename: References): boolean {
  const [own, other] = [id, otherId].map((each) => gussetsOf(frame).find((set) => set.id === each)) as [
    SetGusset,
    SetGusset,
  ];
  if (!isMade(own.made) || !isMade(other.made) || !sameData(sheetOf(own), sheetOf(other))) return false;
  const [a, b] = [own.made.corner.sides, other.made.corner.sides];
  return (
    bareId(rename.node(own.node)) === bareId(rename.node(other.node)) &&
    a.every(
      ({ bar, direction }, i) =>
        bareId(rename.tube(bar.id)) === bareId(rename.tube(b[i]!.bar.id)) &&
        dot(mirrored(direction), b[i]!.direction) > 0,
    )
  );
}

/** What is cut for it, but for where. */
function sheetOf({ gusset }: SetGusset) {
  const { id: _, name: __, node: ___, mirror: ____, between, ...cut } = gusset;
  return { ...cut, legs: between.map(({ leg }) => leg) };
}
