/** Gussets when the bars that their legs run along are counted from the other end, parted, joined, or told for each side of the car. */
import { nextId } from '../edit/ids.ts';
import { appendRecord, withRecords } from '../edit/records.ts';
import { gussetsOf } from '../gusset/gussets.ts';
import { isAcrossBend, type Gusset, type GussetLeg } from '../job/kinds/gusset.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import { bareId, primed } from '../job/reference.ts';
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
 * With a gusset of its own for each mirror image that would be none any more, because all the mirrored bars of it are made two. `after` has the members as they are then,
 * `rename` what references become.
 */
export function gussetsEachSide(frame: Frame, after: Job, rename: References): Job {
  const isMirrored = (member: string): boolean =>
    after.members.find(({ id }) => id === bareId(member))?.mirror === true;
  const told = withRecords(
    after,
    'gussets',
    mapKeeping(after.gussets, (gusset) => renamed(gusset, rename)),
  );
  return gussetsOf(frame).reduce((job, { gusset, isImage, ways, made }) => {
    const legs = ways.map(({ bar, towards }, i) => ({ ...gusset.between[i]!, member: rename.tube(bar.id), towards }));
    const [a, b] = legs as [GussetLeg, GussetLeg];
    if (!isImage || ('why' in made && made.why === 'no-image') || legs.some(({ member }) => isMirrored(member)))
      return job;
    return appendRecord(job, 'gussets', {
      ...gusset,
      id: nextId(job, 'gussets'),
      name: shownName(`${gusset.name}, mirrored`),
      node: rename.node(primed(gusset.node)),
      between: [a, b],
    });
  }, told);
}

/** The way back: told of the images; one that would stand where the mirror image of another is goes. `gone` are the members that are images from now on. */
export function gussetsForBoth(job: Job, rename: References, gone: ReadonlySet<string>): Job {
  const isOther = ({ between }: Gusset): boolean => between.some(({ member }) => gone.has(member));
  const keyOf = (gusset: Gusset): string => {
    const { node, between } = renamed(gusset, rename);
    return [bareId(node), ...between.map(({ member }) => bareId(member))].join(' ');
  };
  const own = new Set(job.gussets.filter((gusset) => !isOther(gusset)).map(keyOf));
  const left = job.gussets.filter((gusset) => !isOther(gusset) || !own.has(keyOf(gusset)));
  return withRecords(
    job,
    'gussets',
    mapKeeping(left.length === job.gussets.length ? job.gussets : left, (gusset) => renamed(gusset, rename)),
  );
}
