/** The steps in their order, side by side: each leads to its place in the rehearsal. */
import type { ReactNode } from 'react';
import type { Stage } from '../../view/rehearsal/rehearsed.ts';
import { barredInWords, setUpInWords } from '../../core/words/rehearsal.ts';
import { angleInWords } from './moment-words.ts';
import { useScrollIntoView } from '../kit/useScrollIntoView.ts';

interface Props {
  readonly stages: readonly Stage[];
  readonly current: number;
  go(step: number): void;
}

export function StepList({ stages, current, go }: Props): ReactNode {
  return (
    <ol className="rehearsal-steps" aria-label="Steps">
      {stages.map((stage, i) => (
        <StepKey key={i} stage={stage} number={i + 1} isCurrent={i === current} go={() => go(i)} />
      ))}
    </ol>
  );
}

interface StepKeyProps {
  readonly stage: Stage;
  readonly number: number;
  readonly isCurrent: boolean;
  go(): void;
}

function StepKey({ stage, number, isCurrent, go }: StepKeyProps): ReactNode {
  const item = useScrollIntoView<HTMLLIElement>(isCurrent);
  const trouble = barredInWords(stage.step);
  return (
    <li ref={item}>
      <button type="button" className="rehearsal-step" aria-current={isCurrent ? 'step' : undefined} onClick={go}>
        <span className="rehearsal-step-head">
          <span className="spoken-only">Step </span>
          <span className="rehearsal-step-count">{number}</span>
          <strong>Bend {stage.step.bend}</strong>
          <span className="rehearsal-step-pull">
            <span className="small">pull to </span>
            <span className="figure">{angleInWords(stage.step.pullTo)}</span>
          </span>
        </span>
        <span className="rehearsal-step-set">{setUpInWords(stage)}</span>
        {trouble === null ? (
          <span className="rehearsal-step-free">
            <span aria-hidden="true">✓ </span>free
          </span>
        ) : (
          <span className="sign-error">
            <span aria-hidden="true">× </span>
            {trouble}
          </span>
        )}
      </button>
    </li>
  );
}
