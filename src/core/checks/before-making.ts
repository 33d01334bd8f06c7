/**
 * What was found on a tube and is to be known before it is cut, worst first; what was marked as seen is left out. What sheet metal on it lacks is no
 * matter of the tube, and what an order of bending runs into is said with the orders.
 */
import type { Job } from '../job/types.ts';
import type { SolvedTube } from '../solve/types.ts';
import { bySeverity } from './faults.ts';
import { goesByGuess } from './guess-findings.ts';
import { unseen } from './seen.ts';
import type { Finding } from './types.ts';

/** Findings that name this tube, that name it as the other of two, and guesses that it goes by though another tube is named. */
export function beforeMaking(findings: readonly Finding[], job: Job, tube: SolvedTube): readonly Finding[] {
  const concern = findings.filter((finding) => isOfMaking(finding) && concerns(finding, job, tube));
  return bySeverity(unseen(concern, job.seen));
}

const isOfMaking = ({ id, severity }: Finding): boolean =>
  severity === 'error' || !(ELSEWHERE.has(id) || id.startsWith('gusset/') || id.startsWith('foot/'));

const ELSEWHERE: ReadonlySet<string> = new Set([
  'bend/order-matters',
  'bend/no-free-order',
  'bend/plain-order-touches',
]);

const concerns = (finding: Finding, job: Job, { id, member }: SolvedTube): boolean =>
  finding.tube === id ||
  ('other' in finding && finding.other === id) ||
  ((finding.id === 'point/guessed' || finding.id === 'node/guessed') && goesByGuess(job, finding, member.id));
