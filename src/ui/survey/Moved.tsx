/** What has moved since the Survey was opened, in one line, and below it point by point and tube by tube. */
import { useMemo, type ReactNode } from 'react';
import { surveyMoves } from '../../core/checks/survey-moves.ts';
import type { TubeChange } from '../../core/checks/changed-tubes.ts';
import type { Derived } from '../../core/derive.ts';
import { shownName } from '../../core/job/shown.ts';
import { wastePaper } from '../../core/shape/printed.ts';
import { pointName, tubeName } from '../../core/solve/names.ts';
import { tubeChangeInWords } from '../../core/words/changes.ts';
import { wasteInWords } from '../../core/words/revision.ts';
import { movedInWords, surveyMovesInWords } from '../../core/words/survey-moves.ts';
import { useDocument, useEditor } from '../../store/page.ts';

export default function Moved({ before, onSeen }: { before: Derived; onSeen: (now: Derived) => void }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const select = useEditor((state) => state.select);
  const moves = useMemo(
    () => (before.job.points === derived.job.points ? null : surveyMoves(before, derived)),
    [before, derived],
  );
  if (moves === null || moves.points.length === 0) return null;
  const known = new Set(wastePaper(before).map(({ printed }) => printed));
  const waste = wastePaper(derived).filter(({ printed }) => !known.has(printed));
  const { job } = derived;
  const tubes = (changes: readonly TubeChange[], after: string): ReactNode =>
    changes.map((change) => (
      <li key={change.tube}>
        <button type="button" className="link" onClick={() => select({ kind: 'tube', id: change.tube })}>
          {tubeName(derived, change.tube)}
        </button>
        {after}
        {tubeChangeInWords(change, job.lengthUnit) || 'by less than a tape reads'}
      </li>
    ));
  return (
    <details className="moved">
      <summary>
        <span role="status">{surveyMovesInWords(job, moves, waste.length)}</span>
      </summary>
      <ul>
        {moves.points.map(({ point, by }) => (
          <li key={point}>
            <button type="button" className="link" onClick={() => select({ kind: 'point', id: point })}>
              {shownName(pointName(job, point))}
            </button>{' '}
            {movedInWords(by, job.lengthUnit)}
          </li>
        ))}
        {tubes(moves.follow, ': ')}
        {tubes(moves.held, ' stays as it was made; drawn it would be otherwise: ')}
        {waste.map(({ printed, tube, revision, longer }) => (
          <li key={printed.tube}>
            {tube?.name ?? printed.tube}: {wasteInWords(printed, revision, longer, job.lengthUnit)}
          </li>
        ))}
      </ul>
      <button type="button" className="press press-quiet" onClick={() => onSeen(derived)}>
        Seen: begin anew
      </button>
    </details>
  );
}
