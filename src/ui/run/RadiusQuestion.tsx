/** Which radius the marks follow, asked where the log of pulls says that bends come out wider than the die, with what either does to the tube. */
import type { ReactNode } from 'react';
import { isSeen } from '../../core/checks/seen.ts';
import type { BentTube } from '../../core/job/kinds/bent.ts';
import type { Die } from '../../core/job/kinds/die.ts';
import { answerRadius, OPENS } from '../../core/mend/answer-radius.ts';
import type { RadiusAnswer } from '../../core/run/radius-answers.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { answerInWords, ASK_RADIUS, ofWhichDie } from '../../core/words/radius.ts';
import { RADIUS_BY } from '../../core/words/shop.ts';
import { capital } from '../../core/words/lists.ts';
import { jobDocument, useDocument, useResults } from '../../store/page.ts';
import { Picks } from '../kit/Picks.tsx';

export function RadiusQuestion(props: {
  tube: SolvedTube;
  answers: readonly RadiusAnswer[];
  answered: Die['radius'] | null;
  /** While it is not answered. */
  children: ReactNode;
}): ReactNode {
  const { tube, answers, answered } = props;
  const derived = useDocument((state) => state.derived);
  const die = tube.die!;
  const others = derived.tubes.filter(
    (each) => each.die?.id === die.id && each.bends.length > 0 && each.id !== tube.id,
  );
  return (
    <section className="run-radius" aria-label={ASK_RADIUS}>
      {answered === null && (
        <p className="notice-warning">
          <span aria-hidden="true">▲ </span>
          {props.children}
        </p>
      )}
      <Picks<Die['radius'] | ''>
        legend={ASK_RADIUS}
        value={answered ?? ''}
        choices={answers.map(({ radius }) => ({ value: radius, label: capital(RADIUS_BY[radius]) }))}
        onPick={(radius) => radius !== '' && answer(tube, radius)}
      />
      <ul>
        {answers.map((each) => (
          <li key={each.radius}>{answerInWords(each, derived.job.lengthUnit)}</li>
        ))}
      </ul>
      <p className="small">{ofWhichDie(die.name, others.length)}</p>
    </section>
  );
}

function answer({ id, die }: SolvedTube, radius: Die['radius']): void {
  const { derived, edit } = jobDocument.getState();
  edit(`${ASK_RADIUS}: ${RADIUS_BY[radius]}`, (job) => answerRadius(job, id, die!.id, radius, derived));
}

/** What the job says: null while its die goes by its own radius and nobody has said, by the pulls of today, that it is to. */
export function useAnswered(tube: SolvedTube): Die['radius'] | null {
  const seen = useDocument((state) => state.job.seen);
  const asks = useResults((state) => state.findings.find(({ id, tube: of }) => id === OPENS && of === tube.id));
  if (tube.die?.radius === 'from-pulls') return 'from-pulls';
  return asks === undefined || isSeen(asks, seen) ? 'nominal' : null;
}

/** The same in a run that has begun: said once, it is not asked again at every pull. */
export function useAnsweredOnce(tube: SolvedTube, run: BentTube): Die['radius'] | null {
  const said = useDocument((state) =>
    state.job.seen.some(({ finding, tube: of }) => finding === OPENS && of === run.tube),
  );
  const answered = useAnswered(tube);
  return answered === null && said ? 'nominal' : answered;
}
