/** What is wrong between tubes that are not joined: those that run into each other, and those that leave a torch no room. */
import { outsideOf } from '../gaps/outside.ts';
import type { TubeGap } from '../gaps/measure-gaps.ts';
import { wayApart } from '../gaps/tube-gap.ts';
import { MEETING_DISTANCE } from '../geometry/tolerance.ts';
import { distance, normalize, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import { FIRST_TORCH_GAP } from '../job/kinds/torch-gap.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import type { Finding } from './types.ts';

/** mm. What dips in less than this is no more than the shop is off by, and is filed away. */
export const FILED_AWAY = 0.2;

/** Of each gap at most one: an error where the tubes run into each other, a warning where the torch has too little room. */
export function* gapTrouble({ job, byId }: Frame, gaps: readonly TubeGap[]): Generator<Finding> {
  const torchGap = job.torchGap ?? FIRST_TORCH_GAP;
  for (const gap of gaps) {
    const before = known.get(gap);
    const found =
      before?.torchGap === torchGap
        ? before.found
        : troubleOf(gap, byId.get(gap.tubes[0])!, byId.get(gap.tubes[1])!, torchGap);
    if (found !== before?.found) known.set(gap, { torchGap, found });
    if (found !== null) yield found;
  }
}

/** A gap stays the same record as long as both tubes are what they were. */
const known = new WeakMap<TubeGap, { readonly torchGap: number; readonly found: Finding | null }>();

function troubleOf(gap: TubeGap, earlier: SolvedTube, later: SolvedTube, torchGap: number): Finding | null {
  const base = { tube: later.id, other: earlier.id, at: gap.at, distance: gap.distance };
  if (gap.distance < -FILED_AWAY) {
    const move = moveApart(gap, earlier, later, torchGap);
    return { ...base, id: 'gap/runs-through', severity: 'error', source: 'practice', move };
  }
  if (torchGap === 0 || gap.distance >= torchGap || inOneCluster(earlier, later)) return null;
  const move = moveApart(gap, earlier, later, torchGap);
  return { ...base, id: 'gap/no-room-for-torch', severity: 'warning', source: 'torch-gap', torchGap, move };
}

/** Tubes that are meant to come together: they end at one place, or land on one run within two of its diameters of each other. */
const inOneCluster = (a: SolvedTube, b: SolvedTube): boolean =>
  a.ends.some((end) =>
    b.ends.some(
      (other) =>
        distance(end.position, other.position) <= MEETING_DISTANCE ||
        end.cuts.some((cut) =>
          other.cuts.some(
            ({ against, landing, sawDiameter }) =>
              against === cut.against && distance(landing, cut.landing) <= 2 * sawDiameter,
          ),
        ),
    ),
  );

/** Along the way between the nearest places; of tubes that run into each other square to both centrelines, by all that these lack. */
function moveApart({ distance: apart, on }: TubeGap, earlier: SolvedTube, later: SolvedTube, room: number): Vec3 {
  if (apart > 0) return scale(normalize(subtract(on[1], on[0])), room - apart);
  const { direction, lacking } = wayApart(outsideOf(earlier), outsideOf(later));
  return scale(direction, lacking + room);
}
