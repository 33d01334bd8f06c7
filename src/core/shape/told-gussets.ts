/** Gussets when the bars that their legs run along are counted from the other end, parted, joined, or told for each side of the car. */
import { nextId } from '../edit/ids.ts';
import { appendRecord, withRecords } from '../edit/records.ts';
import { gussetsOf } from '../gusset/gussets.ts';
import { isAcrossBend, type Gusset, type GussetLeg } from '../job/kinds/gusset.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import { bareId } from '../job/reference.ts';
import { shownName } from '../job/shown.ts';
import type { Job } from '../job/types.ts';
import type { Frame } from '../solve/types.ts';
import type { References } from './place-image.ts';

/** The job with every leg told anew. Across a bend there is no weld, and no relief for it. */
export const withLegs = (job: Job, told: (leg: GussetLeg, gusset: Gusset) => GussetLeg): Job =>
  withRecords(
    job,
    'gussets',
    mapKeeping(job.gussets, (gusset) => {
      const [a, b] = gusset.between;
      const between = [told(a, gusset), told(b, gusset)] as const;
      return { ...gusset, between, ...(isAcrossBend({ between }) && { relief: 0 }) };
    }),
  );

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

/** The way back: told of the images. Of two that are each other's mirror image now one stays, for both sides. `gone` are the members that are images from now on. */
export function gussetsForBoth(job: Job, rename: References, gone: ReadonlySet<string>): Job {
  const isOther = ({ between }: Gusset): boolean => between.some(({ member }) => gone.has(member));
  const keyOf = (gusset: Gusset): string => {
    const { node, between } = renamed(gusset, rename);
    return [bareId(node), ...between.map(({ member }) => bareId(member))].join(' ');
  };
  const own = new Set(job.gussets.filter((gusset) => !isOther(gusset)).map(keyOf));
  const double = new Set(job.gussets.filter((gusset) => isOther(gusset) && own.has(keyOf(gusset))).map(keyOf));
  const left =
    double.size === 0 ? job.gussets : job.gussets.filter((gusset) => !isOther(gusset) || !double.has(keyOf(gusset)));
  return withRecords(
    job,
    'gussets',
    mapKeeping(left, (gusset) => {
      const told = renamed(gusset, rename);
      return double.has(keyOf(gusset)) ? { ...told, mirror: true } : told;
    }),
  );
}
