/** In one sentence what it comes to that points were measured again. */
import type { SurveyMoves } from '../checks/survey-moves.ts';
import type { Job } from '../job/types.ts';
import { pointName } from '../solve/names.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';

/** "2 points moved, Tower, left the farthest, 4.2 mm. 5 tubes follow, 1 stays as it was made. Paper of 2 tubes is waste." `waste`: tubes whose paper is waste by it. */
export function surveyMovesInWords(job: Job, { points, follow, held }: SurveyMoves, waste: number): string {
  const [farthest] = points;
  if (farthest === undefined) return '';
  const by = movedInWords(farthest.by, job.lengthUnit);
  const name = pointName(job, farthest.point);
  const moved =
    points.length === 1 ? `${name} moved ${by}.` : `${points.length} points moved, ${name} the farthest: ${by}.`;
  const made =
    held.length === 0 ? '' : `, ${held.length} ${held.length === 1 ? 'stays as it was' : 'stay as they were'} made`;
  const tubes =
    follow.length === 0 ? 'No tube follows' : follow.length === 1 ? '1 tube follows' : `${follow.length} tubes follow`;
  const paper = waste === 0 ? '' : ` Paper of ${waste} ${waste === 1 ? 'tube' : 'tubes'} is waste.`;
  return `${moved} ${tubes}${made}.${paper}`;
}

/** "3/16 in": how far a point moved, mm. */
export const movedInWords = (by: number, unit: LengthUnit): string => `${formatLength(by, unit).text} ${unit}`;
