/** Whether two tubes are joined: one is coped or butted to the other. What lies between them is a weld, not a gap. */
import type { SolvedTube } from '../solve/types.ts';

/** The same whichever comes first. */
export const joined = (a: SolvedTube, b: SolvedTube): boolean => endsAt(a, b) || endsAt(b, a);

const endsAt = ({ ends }: SolvedTube, { id }: SolvedTube): boolean =>
  ends.some(({ cuts, butted }) => cuts.some(({ against }) => against === id) || butted.includes(id));
