/** A tube without bends, as its run would have it: what to cut, whether it is cut, and the way to how its ends are marked. */
import { useEffect, useRef, type ReactNode } from 'react';
import { stageOf, tickRun, untickRun } from '../../core/shape/made-stage.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { endInWords, numbered } from '../../core/words/ends.ts';
import { capital } from '../../core/words/lists.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { leaveRun } from '../bending/open-run.ts';
import { forgetToMake, useToMake } from '../bending/to-make.ts';
import { useFeed } from '../bending/useFeed.ts';
import { keep } from '../kit/kept.ts';
import { useNarrow } from '../kit/useNarrow.ts';
import { ToCut } from './PrepareSteps.tsx';
import { RunKey } from './RunKey.tsx';

export function StraightTube({ tube }: { tube: SolvedTube }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const stage = useDocument((state) => stageOf(state.job, tube.id));
  const { cutLength, grip } = useFeed(tube);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const isFromList = useToMake() === 'open';
  const narrow = useNarrow();
  const isCut = stage !== null;
  const title = isCut ? 'Straight, and cut' : 'Straight: cut it';
  return (
    <main className="run-step">
      <h3 ref={heading} tabIndex={-1} className="run-title">
        {title}
      </h3>
      <ToCut tube={tube} blank={cutLength} grip={grip} />
      {!isCut && (
        <RunKey key="cut" live onPress={() => edit(`${tube.name}: cut`, tickRun, tube)}>
          Cut to length
        </RunKey>
      )}
      {isCut && isFromList && narrow && (
        <RunKey key="on" live onPress={() => leaveRun(tube.id)}>
          On to the next
        </RunKey>
      )}
      <dl className="run-ends">
        {tube.ends.map((end, which) => (
          <div key={which}>
            <dt>End {which === 0 ? 'A' : 'B'}</dt>
            <dd>{capital(endInWords(derived, end, numbered))}</dd>
          </div>
        ))}
      </dl>
      <RunKey key="ends" onPress={() => showEnds(tube)}>
        Marks and cuts of its ends
      </RunKey>
      {stage === 'cut' && (
        <RunKey key="back" quiet onPress={() => edit(`${tube.name}: not cut`, untickRun, tube)}>
          Not cut after all
        </RunKey>
      )}
    </main>
  );
}

const edit = (step: string, change: typeof tickRun, { id }: SolvedTube): void =>
  void jobDocument.getState().edit(step, (job) => change(job, jobDocument.getState().derived, id, 'cut'));

/** In the Shop, where the pictures of the ends stand. */
function showEnds({ id }: SolvedTube): void {
  keep('shop-part', 'ends');
  forgetToMake();
  leaveRun(id);
}
