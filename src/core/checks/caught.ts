/**
 * Bars that go in last between two that stand already: with both ends coped to those there is no slack to bring it in by. A foot, a plate, a square or a
 * butted end leaves some: the bar is lowered, or slid along itself.
 */
import { bareId, type MemberId, type TubeRef } from '../job/reference.ts';
import type { Bar, Frame } from '../solve/types.ts';

/** What a bar is caught between, as its two ends are coped; a member and its twin alike. */
export interface Caught {
  readonly between: readonly [readonly TubeRef[], readonly TubeRef[]];
}

/** In build order, by member; one that has slack at an end is left out. */
export function caughtBars({ job, bars }: Pick<Frame, 'job' | 'bars'>): ReadonlyMap<MemberId, Caught> {
  const order = new Map(job.members.map(({ id }, place) => [id, place]));
  return new Map(
    job.members.flatMap(({ id }, place) => {
      const stands = (tube: TubeRef): boolean => order.get(bareId(tube))! < place;
      const between = bars.get(id)!.ends.map((end) => againstAt(end));
      const [a, b] = between;
      const isCaught = [a!, b!].every((against) => against.length > 0 && against.every(stands));
      return isCaught ? [[id, { between: [a!, b!] }] as const] : [];
    }),
  );
}

const againstAt = ({ cuts, butted }: Bar['ends'][0]): readonly TubeRef[] =>
  butted.length > 0 ? [] : cuts.map(({ against }) => against);
