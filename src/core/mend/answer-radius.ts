/** Which radius the marks follow, said once: where it stays the die's own, that its pulls say another is marked as seen for the tube. */
import { seenOf } from '../checks/seen.ts';
import { derive, type Derived } from '../derive.ts';
import { updateDie } from '../edit/dies.ts';
import { markSeen } from '../edit/seen.ts';
import type { Die } from '../job/kinds/die.ts';
import type { DieId, TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';

/** `previous` is any derivation that the job came from. */
export function answerRadius(job: Job, tube: TubeRef, die: DieId, radius: Die['radius'], previous: Derived): Job {
  const answered = updateDie(job, die, { radius });
  if (radius === 'from-pulls') return answered;
  const derivation = derive(answered, previous);
  const opens = derivation.ok && derivation.value.findings.find((each) => each.id === OPENS && each.tube === tube);
  return opens ? markSeen(answered, [seenOf(opens)]) : answered;
}

/** The finding that asks. */
export const OPENS = 'bend/radius-opens';
