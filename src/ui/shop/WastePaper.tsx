/** Which printed sheets and wraps are of tubes as they were: to be thrown away before somebody cuts by them. Nothing where none is. */
import type { ReactNode } from 'react';
import { wastePaper } from '../../core/shape/printed.ts';
import { wasteInWords } from '../../core/words/revision.ts';
import { useDocument } from '../../store/page.ts';

export function WastePaper(): ReactNode {
  const derived = useDocument((state) => state.derived);
  const waste = wastePaper(derived);
  if (waste.length === 0) return null;
  return (
    <details className="notice-warning">
      <summary>
        <span aria-hidden="true">▲ </span>
        Paper of {waste.length === 1 ? '1 tube is waste' : `${waste.length} tubes is waste`}
      </summary>
      <ul>
        {waste.map(({ printed, tube, revision, longer }) => (
          <li key={printed.tube}>
            {tube === null ? printed.tube : <span className="number-tag">{tube.number}</span>} {tube?.name}:{' '}
            {wasteInWords(printed, revision, longer, derived.job.lengthUnit)}
          </li>
        ))}
      </ul>
    </details>
  );
}
