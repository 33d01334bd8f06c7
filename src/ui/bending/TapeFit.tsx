/** What a tape's figures say of a tube that is bent: its angles, how sure they are, what is not told; and the key that takes it over. */
import { useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import type { BentTube } from '../../core/job/kinds/bent.ts';
import type { Marking } from '../../core/job/kinds/marking.ts';
import type { CheckDimension } from '../../core/run/check-dimensions.ts';
import { drawnTube } from '../../core/run/drawn.ts';
import { fitTape, isSideOpen, onSide, type TapeFigure, type TapeFit as Fit } from '../../core/run/fit-tape.ts';
import { sawnZero, takenOver } from '../../core/run/fitted-bends.ts';
import { takeBent } from '../../core/shape/made-stage.ts';
import type { OnBlank } from '../../core/solve/as-built.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { checkInWords } from '../../core/words/run.ts';
import { fitInWords, startsCountFrom } from '../../core/words/tape-fit.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { Length } from '../fields/Readings.tsx';
import { Command } from '../kit/Command.tsx';
import { Picks } from '../kit/Picks.tsx';
import { useFeed } from './useFeed.ts';

interface FitProps {
  readonly tube: SolvedTube;
  /** Of a tube without a run the order that it is fed in, and nothing read. */
  readonly run: Pick<BentTube, 'order' | 'bends'>;
  /** As in BendRun. */
  readonly laid: SolvedTube;
  readonly blank: OnBlank;
  /** Those that were measured, with what the tape read. */
  readonly read: readonly { readonly check: CheckDimension; readonly measured: number }[];
  /** Called once the bends stand in the job. */
  readonly onTaken?: () => void;
}

export function TapeFit({ tube, run, laid, blank, read, onTaken }: FitProps): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const { from } = useFeed(tube);
  const [side, pick] = useState<Side>('unknown');
  const section = useRef<HTMLElement>(null);
  const given: readonly TapeFigure[] = read.map(({ check: { id, lies, kind }, measured }) => ({
    id,
    lies,
    kind,
    measured,
  }));
  const typed = useRested(JSON.stringify(given));
  const fit = useMemo(() => {
    const figures = JSON.parse(typed) as readonly TapeFigure[];
    return fitTape(
      laid,
      run,
      blank,
      side === 'unknown' ? figures : figures.map((each) => (isSideOpen(each) ? onSide(each, side) : each)),
    );
  }, [laid, run, blank, typed, side]);
  if (fit === null) return null;
  const bends = takenOver(fit.parts, run.bends);
  const { wrong, more } = fitInWords(fit, unit);
  return (
    <section ref={section} tabIndex={-1} className="tape-fit" aria-label="What the figures say">
      {given.some((figure) => isSideOpen(figure) && figure.measured > 0) && (
        <Picks<Side>
          legend="With the place that stands off up, bend 1 turns, seen from end A"
          value={side}
          choices={SIDES}
          onPick={pick}
        />
      )}
      {fit.no === null && <Parts fit={fit} laid={laid} length={blank.length} from={from} />}
      <div role="status">
        {wrong.map((words) => (
          <p key={words} className="notice-warning">
            <span aria-hidden="true">▲ </span>
            {words}
          </p>
        ))}
        {more.map((words) => (
          <p key={words} className="small">
            {words}
          </p>
        ))}
      </div>
      {fit.no === null && <Figures fit={fit} />}
      {fit.no === null &&
        (standsSo(run.bends, bends) ? (
          <p className="small">The bends stand in the job by these figures.</p>
        ) : (
          <Command
            step={`${tube.name} bent as the tape reads`}
            run={(job) =>
              takeBent(job, jobDocument.getState().derived, {
                tube: tube.id,
                order: run.order,
                bends,
                checks: read.map(({ check, measured }) => ({ check: check.id, measured })),
                drawn: drawnTube(tube),
              })
            }
            // The key goes with what it did.
            onDone={() => {
              section.current?.focus();
              onTaken?.();
            }}
          >
            Fit the bends to these figures
          </Command>
        ))}
    </section>
  );
}

/** The text, once it has stood for a moment: a figure half typed is another figure, and far off it takes long to try what could be wrong. */
function useRested(text: string): string {
  const [rested, rest] = useState(text);
  useEffect(() => {
    const timer = setTimeout(() => rest(text), REST);
    return () => clearTimeout(timer);
  }, [text]);
  return rested;
}

/** ms */
const REST = 300;

type Side = 'left' | 'right' | 'unknown';
const SIDES: readonly { readonly value: Side; readonly label: string }[] = [
  { value: 'left', label: 'to the left' },
  { value: 'right', label: 'to the right' },
  { value: 'unknown', label: 'not looked' },
];

/** Degrees, or mm: what is seen of neither. */
const UNSEEN = 0.02;

const standsSo = (made: BentTube['bends'], bends: BentTube['bends']): boolean =>
  bends.every((bend) =>
    made.some(
      (before) =>
        before.fitted === true &&
        before.bend === bend.bend &&
        Math.abs(before.net - bend.net) < UNSEEN &&
        Math.abs((before.rotation ?? 0) - (bend.rotation ?? 0)) < UNSEEN &&
        Math.abs((before.start ?? 0) - (bend.start ?? 0)) < UNSEEN,
    ),
  );

/** Of a normal deviate, 95 of 100. */
const SURE = 1.96;

interface PartsProps {
  readonly fit: Fit;
  readonly laid: SolvedTube;
  /** From node to node, mm. */
  readonly length: number;
  readonly from: Marking['from'];
}

function Parts({ fit, laid, length, from }: PartsProps): ReactNode {
  const zero = sawnZero(laid, length, from);
  return (
    <table className="table table-plain">
      <caption className="small">By the tape; 95 of 100 lie within ±. {startsCountFrom(from)}</caption>
      <thead>
        <tr>
          <th scope="col">Bend</th>
          <th scope="col" className="number">
            {fit.parts.some(({ isRead }) => isRead) ? 'Planned or read' : 'Planned'}
          </th>
          <th scope="col" className="number">
            By the tape
          </th>
          <th scope="col" className="number">
            ±
          </th>
        </tr>
      </thead>
      <tbody>
        {fit.parts.map((part) => {
          const isStart = part.what === 'middle';
          const shown = isStart ? fit.marks[part.bend - 1]! : part;
          const value = (of: number): ReactNode =>
            isStart ? <Length mm={Math.abs(of - zero)} /> : <span className="figure">{`${formatAngle(of, 1)}°`}</span>;
          const sure = SURE * shown.deviation;
          return (
            <tr key={`${part.bend} ${part.what}`}>
              <th scope="row">
                {part.bend}
                {part.what !== 'angle' && <span className="small"> {isStart ? 'start' : part.what}</span>}
              </th>
              <td className="number">{value(shown.expected)}</td>
              <td className="number">{part.told ? value(shown.value) : <span className="small">not told</span>}</td>
              <td className="number">
                {part.told &&
                  (isStart ? <Length mm={sure} /> : <span className="figure">{`${formatAngle(sure, 1)}°`}</span>)}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** What each figure reads, beside what the tube so bent would. */
function Figures({ fit }: { fit: Fit }): ReactNode {
  return (
    <table className="table table-plain">
      <caption className="spoken-only">Figures of the tape and of the bends by it</caption>
      <thead>
        <tr>
          <th scope="col">Figure</th>
          <th scope="col" className="number">
            Reads
          </th>
          <th scope="col" className="number">
            Bent so
          </th>
        </tr>
      </thead>
      <tbody>
        {fit.figures.map((figure) => (
          <tr key={figure.id}>
            <th scope="row">{checkInWords(figure)}</th>
            <td className="number">
              <Length mm={figure.measured} stored />
            </td>
            <td className="number">
              <Length mm={figure.reckoned} />
              {figure.others !== null && <span className="small under">left out</span>}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
