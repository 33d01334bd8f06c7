/**
 * The tubes to make: the first page of a telephone at the machine. One key a tube, in build order, the next one large; what is done is folded under them.
 * A press leads to the tube, and nothing is ticked off here.
 */
import { useEffect, useMemo, useRef, type ReactNode } from 'react';
import { errorsOf, faultInWords } from '../../core/checks/faults.ts';
import { findRun } from '../../core/edit/bent.ts';
import { nextToMake, tubesToMake, type TubeToMake } from '../../core/run/next-tubes.ts';
import { bendsInWords, titleOf } from '../../core/words/run.ts';
import { editor, jobDocument, useDocument, useResults } from '../../store/page.ts';
import { usePairing } from '../../store/pairing-page.ts';
import { forgetRun, openRun, useOpenRun } from '../bending/open-run.ts';
import { leaveToMake } from '../bending/to-make.ts';
import { useFeed } from '../bending/useFeed.ts';
import { Length } from '../fields/Readings.tsx';
import { useReady } from './RunKey.tsx';
import '../kit/ui.css';
import '../bending/tube.css';
import './run.css';
import './to-make.css';

export default function ToMake(): ReactNode {
  const isComing = usePairing(({ standing }) => standing === 'joining');
  const heading = useRef<HTMLHeadingElement>(null);
  // The tube's key has it where one comes back from a tube.
  useEffect(() => {
    if (document.activeElement?.closest('.to-make') == null) heading.current?.focus();
  }, []);
  return (
    <div className="run to-make">
      <header className="run-head">
        <button type="button" className="press run-back" onClick={leaveToMake}>
          <span aria-hidden="true">‹ </span>Shop
        </button>
        <h2 ref={heading} tabIndex={-1}>
          Tubes to make
        </h2>
      </header>
      {isComing ? <Coming /> : <Lists />}
    </div>
  );
}

/** What stands in this browser meanwhile is another job, and nobody is to cut by it. */
const Coming = (): ReactNode => (
  <main className="run-step">
    <p className="run-said run-said-good" role="status">
      The job is on its way from the other device. If it does not come, look there: the program must be open and on the
      same network.
    </p>
  </main>
);

function Lists(): ReactNode {
  const derived = useDocument((state) => state.derived);
  const findings = useResults((state) => state.findings);
  const all = useMemo(() => tubesToMake(derived.job, derived.tubes), [derived]);
  const next = nextToMake(all, ({ id }) => errorsOf(findings, id).length > 0);
  const open = all.filter((one) => !one.isDone && one !== next);
  const done = all.filter(({ isDone }) => isDone);
  const left = useOpenRun();
  const list = useRef<HTMLElement>(null);
  // Whoever comes back from a tube stands at its key.
  useEffect(() => {
    if (left?.left !== true) return;
    const key = list.current?.querySelector<HTMLElement>(`[data-tube="${CSS.escape(left.tube)}"]`);
    if (key !== null && key?.closest('details:not([open])') == null) key?.focus();
    forgetRun();
  }, [left]);
  return (
    <main ref={list} className="run-step">
      <p className="to-make-count">{countInWords(all.length, done.length)}</p>
      {next !== undefined && (
        <section aria-label="Next">
          <TubeKey one={next} isNext />
        </section>
      )}
      {open.length > 0 && (
        <ol className="to-make-list" aria-label="After that">
          {open.map((one) => (
            <li key={one.tube.id}>
              <TubeKey one={one} />
            </li>
          ))}
        </ol>
      )}
      {done.length > 0 && (
        <details className="fold-more to-make-done">
          <summary>Done: {done.length}</summary>
          <ol className="to-make-list" aria-label="Done">
            {done.map((one) => (
              <li key={one.tube.id}>
                <TubeKey one={one} />
              </li>
            ))}
          </ol>
        </details>
      )}
    </main>
  );
}

function countInWords(all: number, done: number): string {
  if (all === 0) return 'No tube is drawn in this job.';
  if (done === all) return all === 1 ? 'The tube is made.' : `All ${all} tubes are made.`;
  return `${all - done} of ${all} ${all === 1 ? 'tube' : 'tubes'} to make`;
}

function TubeKey({ one, isNext = false }: { one: TubeToMake; isNext?: boolean }): ReactNode {
  const { tube } = one;
  const ready = useReady();
  const errors = useResults((state) => errorsOf(state.findings, tube.id));
  const fault = errors.length > 0 && !one.isDone ? faultInWords(errors) : null;
  return (
    <button
      type="button"
      className="to-make-key"
      data-tube={tube.id}
      data-next={isNext ? '' : undefined}
      aria-disabled={ready ? undefined : true}
      onClick={({ detail }) => {
        if (ready || detail === 0) show(one);
      }}
    >
      <span className="number-tag number-tag-large">{tube.number}</span>
      <span className="to-make-words">
        {isNext && <span className="to-make-next">{one.run === null ? 'Next' : 'Go on with'}</span>}
        <span className="to-make-name">{tube.name}</span>
        {fault !== null && (
          <span className="to-make-fault">
            <span aria-hidden="true">× </span>
            {fault}
          </span>
        )}
        <State one={one} isBarred={fault !== null} />
      </span>
      <span className="to-make-on" aria-hidden="true">
        ›
      </span>
    </button>
  );
}

/** How far it is, and what its person does next. */
function State({ one, isBarred }: { one: TubeToMake; isBarred: boolean }): ReactNode {
  const { tube, isCut, isDone, run } = one;
  const { cutLength } = useFeed(tube);
  const bends = tube.bends.length;
  if (run !== null) {
    return (
      <>
        <span className="to-make-state">
          <strong>
            {run.made} of {bendsInWords(run.bends)} made
          </strong>
        </span>
        <Pips made={run.made} bends={run.bends} />
        <span className="to-make-state">
          {run.next === null ? 'Drawn otherwise since it was begun' : titleOf(run.next)}
        </span>
      </>
    );
  }
  const kind = bends === 0 ? 'straight' : bendsInWords(bends);
  if (isDone) {
    return (
      <span className="to-make-state">
        <span aria-hidden="true">✓ </span>
        {bends === 0 ? 'Cut, straight' : `Bent, ${kind}`}
      </span>
    );
  }
  return (
    <span className="to-make-state">
      {isCut ? (
        <>
          <span aria-hidden="true">✓ </span>Cut, not bent, {kind}
        </>
      ) : (
        <>
          {!isBarred && (
            <>
              Cut <Length mm={cutLength} withUnit />,{' '}
            </>
          )}
          {kind}
        </>
      )}
    </span>
  );
}

/** A square for each bend, filled when it is made; the words beside it say the same. */
const Pips = (props: { made: number; bends: number }): ReactNode => (
  <span className="to-make-pips" aria-hidden="true">
    {Array.from({ length: props.bends }, (_, i) => (
      <span key={i} data-made={i < props.made ? '' : undefined} />
    ))}
  </span>
);

/** To its run or, where it is bent and was never bent by one, to its place in the Shop. */
function show({ tube, isDone }: TubeToMake): void {
  editor.getState().setStation('shop');
  editor.getState().select({ kind: 'tube', id: tube.id });
  const wasRun = findRun(jobDocument.getState().job, tube.id) !== undefined;
  if (isDone && tube.bends.length > 0 && !wasRun) leaveToMake();
  else openRun(tube.id);
}
