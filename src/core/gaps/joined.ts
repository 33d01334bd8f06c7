/**
 * Whether two tubes are joined: one is coped, butted or mitred to the other or to the bar that the other is a piece of, or both are
 * pieces that end at one cutter. What lies between them is a weld, not a gap.
 */
import type { SolvedTube } from '../solve/types.ts';

/** The same whichever comes first. */
export const joined = (a: SolvedTube, b: SolvedTube): boolean => endsAt(a, b) || endsAt(b, a) || endAtOneCutter(a, b);

const endsAt = ({ ends }: SolvedTube, { id, bar }: SolvedTube): boolean =>
  ends.some(
    ({ cuts, butted }) =>
      cuts.some(({ against }) => against === id || against === bar) || butted.includes(id) || butted.includes(bar),
  );

/** No node stands where a bar in pieces is cut. */
const endAtOneCutter = (a: SolvedTube, b: SolvedTube): boolean =>
  a.piece !== null &&
  b.piece !== null &&
  a.ends.some(
    (end) =>
      end.node === null &&
      b.ends.some(
        (other) =>
          other.node === null && other.cuts.some(({ against }) => end.cuts.some((cut) => cut.against === against)),
      ),
  );
