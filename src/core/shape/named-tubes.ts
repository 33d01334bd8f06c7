/** What names a member's tubes, when the member becomes part of another or two members. */
import { withRecords } from '../edit/records.ts';
import { sameData } from '../job/equal.ts';
import type { EndFit } from '../job/kinds/end.ts';
import type { Member } from '../job/kinds/member.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import { bareId, isPrimed, primed, type TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { withToldNumbers } from './told-numbers.ts';

/** Where a member names a tube: at end A, at end B, or where it is cut by it. */
export type Naming = 0 | 1 | 'cut';

/** The job with every tube that a member names exchanged; what comes out twice in a list stands there once. */
export function withTubes(job: Job, tube: (to: TubeRef, member: Member, naming: Naming) => TubeRef): Job {
  const members = mapKeeping(job.members, (member): Member => {
    const end = (which: 0 | 1): EndFit => {
      const fit = member.ends[which];
      if (fit.fit === 'cope') return { ...fit, against: once(fit.against.map((to) => tube(to, member, which))) };
      return fit.fit === 'mitre' ? { ...fit, with: tube(fit.with, member, which) } : fit;
    };
    const { cutBy } = member;
    return {
      ...member,
      ends: [end(0), end(1)],
      ...(cutBy && { cutBy: once(cutBy.map((to) => tube(to, member, 'cut'))) }),
    };
  });
  return withRecords(job, 'members', members);
}

const once = (tubes: readonly TubeRef[]): readonly TubeRef[] => [...new Set(tubes)];

/** A place on a tube that something is kept of: the whole tube, one of its ends, or a bend. */
export interface OfTube {
  readonly tube: TubeRef;
  readonly end?: 'A' | 'B';
  readonly bend?: number;
}

/** The job with its logged pulls and marks of what was seen told of other tubes. With null a mark goes; a pull stays as it is, its tube is no more than a note. */
export function withKeptOf(job: Job, told: (of: OfTube) => OfTube | null): Job {
  const pulls = mapKeeping(job.pulls, (pull) => {
    const { tube, bend } = pull;
    if (tube === undefined) return pull;
    return { ...pull, ...told(bend === undefined ? { tube } : { tube, bend }) };
  });
  const seen = job.seen.flatMap(({ tube, end, bend, ...rest }) => {
    const to = told({ tube, ...(end && { end }), ...(bend !== undefined && { bend }) });
    return to === null ? [] : [{ ...rest, ...to }];
  });
  return { ...job, pulls, seen: sameData(seen, job.seen) ? job.seen : seen };
}

/** The job with tubes called otherwise where something is kept of them as they are made: bend runs, how far they are made, what was printed of them, how they are fed, photos of them, logged pulls, marks of what was seen. */
export function withTubesCalled(job: Job, called: (tube: TubeRef) => TubeRef): Job {
  const onTubes = <R extends { readonly tube: TubeRef }>(records: readonly R[]): readonly R[] =>
    mapKeeping(records, (record) => ({ ...record, tube: called(record.tube) }));
  const told = withKeptOf(job, (of) => ({ ...of, tube: called(of.tube) }));
  return {
    ...told,
    bent: onTubes(job.bent),
    made: onTubes(job.made),
    printed: onTubes(job.printed),
    feeds: onTubes(job.feeds),
    photos: mapKeeping(job.photos, (photo) => ({ ...photo, ...(photo.tubes && { tubes: photo.tubes.map(called) }) })),
  };
}

/** The changed job, in which tubes are called as the map says, and their images as its images: what is kept of them stays with them, their numbers too. */
export function withSameTubes(before: Job, after: Job, names: ReadonlyMap<TubeRef, TubeRef>): Job {
  const were = new Map([...names].map(([was, is]) => [is, was]));
  const by = (map: ReadonlyMap<TubeRef, TubeRef>) => (tube: TubeRef) => {
    const name = map.get(bareId(tube));
    return name === undefined ? tube : isPrimed(tube) ? primed(name) : name;
  };
  return withToldNumbers(before, withTubesCalled(after, by(names)), by(were));
}
