/**
 * What it costs to lay a tube out with the die's own radius when its bends open to a larger one. The marks and angles are
 * followed as printed, so every bend begins at its mark and turns as far as it should, but takes more tube to do it: the
 * straight after it is that much shorter.
 */
import { distance } from '../geometry/vector.ts';
import { effectiveRadius } from '../springback/opened-radius.ts';
import { endDirections } from './centreline.ts';
import { rollOut, type RolledBend } from './roll-out.ts';
import type { SolvedTube } from './types.ts';

/** How far end B comes to lie from its place, end A held, mm; 0 where the opened radius is laid out already, or not known. */
export function costOfIgnoringRadius({ bends, corners, straights, die, pullLaw }: SolvedTube): number {
  const first = bends[0];
  if (die === null || pullLaw === null || first === undefined || die.radius === 'from-pulls') return 0;
  const start = { position: corners[0]!, direction: endDirections(corners)[0], normal: first.normal };
  const opened: RolledBend[] = [];
  let late = 0; // how far the bend before ended beyond its planned end
  for (const [i, { rotation, angle, radius }] of bends.entries()) {
    const real = effectiveRadius(pullLaw, die.centrelineRadius, angle);
    opened.push({ straight: straights[i]! - late, rotation, angle, radius: real });
    late = (real - radius) * angle;
  }
  return distance(rollOut(start, opened, straights.at(-1)! - late).at(-1)!.position, corners.at(-1)!);
}
