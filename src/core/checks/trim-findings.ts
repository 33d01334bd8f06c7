/** Tubes that are nearer to a measured point or a body line than is wanted there. */
import type { TrimGap, TrimGaps } from '../gaps/measure-trim.ts';
import type { Trim } from '../gaps/trim-places.ts';
import { nearestOnPath } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { normalize, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import type { NearTrim } from './car-types.ts';

/** Of each gap at most one, a warning. */
export function* trimTrouble({ byId }: Pick<Frame, 'byId'>, trimGaps: readonly TrimGaps[]): Generator<NearTrim> {
  for (const { trim, wanted, gaps } of trimGaps) {
    if (wanted === null) continue;
    for (const gap of gaps) if (gap.distance < wanted - ROUNDING) yield nearTrim(trim, wanted, gap, byId);
  }
}

/** A gap stays the same record as long as its tube, its place and what is wanted there are what they were. */
const known = new WeakMap<TrimGap, NearTrim>();

function nearTrim(trim: Trim, wanted: number, gap: TrimGap, byId: Frame['byId']): NearTrim {
  const before = known.get(gap);
  if (before !== undefined) return before;
  const { tube, at } = gap;
  const move = moveAway(gap, wanted, byId.get(tube)!);
  const base = { severity: 'warning', source: 'least-gap' } as const;
  const found: NearTrim = { ...base, id: 'gap/near-trim', tube, trim, at, distance: gap.distance, wanted, move };
  known.set(gap, found);
  return found;
}

/** From the trim straight to the tube's outside and on; out of a tube that runs into it the other way round; where it touches, towards its axis. */
function moveAway({ at, onTrim, distance: apart }: TrimGap, wanted: number, { path }: SolvedTube): Vec3 {
  const inwards =
    Math.abs(apart) > ROUNDING
      ? scale(subtract(at, onTrim), Math.sign(apart))
      : subtract(nearestOnPath(path, at).point, at);
  return scale(normalize(inwards), wanted - apart);
}
