/** The end of the walk: whether what was read agrees, what does not, and what was left out. */
import { useEffect, useRef, type ReactNode } from 'react';
import { readingOf, type Step } from '../../core/survey/to-measure.ts';
import { agreementInWords, suspectInWords } from '../../core/words/survey-advice.ts';
import { useDocument } from '../../store/page.ts';

interface Props {
  readonly steps: readonly Step[];
  goTo(step: number): void;
  close(): void;
}

export function WalkEnd({ steps, goTo, close }: Props): ReactNode {
  const job = useDocument((state) => state.job);
  const survey = useDocument((state) => state.derived.survey);
  const done = useRef<HTMLButtonElement>(null);
  useEffect(() => done.current?.focus(), []);
  const read = steps.map((step) => readingOf(job, step)?.id);
  const open = read.filter((id) => id === undefined).length;
  const suspects = survey?.suspects ?? [];
  return (
    <div className="walk-end">
      <p className={suspects.length > 0 ? 'agreement agreement-not' : 'agreement'} role="status">
        {survey !== null && agreementInWords(job, survey)}
      </p>
      <ul className="lines">
        {suspects.map((suspect) => {
          const step = read.indexOf(job.measurements[suspect.index]!.id);
          return (
            <li key={suspect.index} className="advice-item advice-off">
              <p>
                <span aria-hidden="true">▲ </span>
                {suspectInWords(job, suspect)}
              </p>
              {step >= 0 && (
                <button type="button" className="press press-quiet" onClick={() => goTo(step)}>
                  Read it again
                </button>
              )}
            </li>
          );
        })}
      </ul>
      <p>{open === 0 ? 'Every figure was read.' : `${open} of ${steps.length} figures were not read.`}</p>
      <div className="row">
        {open > 0 && (
          <button type="button" className="press press-quiet" onClick={() => goTo(read.indexOf(undefined))}>
            To the first of them
          </button>
        )}
        <button type="button" className="press press-quiet" onClick={() => goTo(0)}>
          From the start
        </button>
        <button ref={done} type="button" className="press press-live" onClick={close}>
          Done
        </button>
      </div>
    </div>
  );
}
