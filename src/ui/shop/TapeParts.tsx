/** What every list of tape marks is made of: how they are taken, where the zero is, each mark with its side, the scrap. */
import { Fragment, type ReactNode } from 'react';
import {
  FROM,
  readTapeView,
  sideOf,
  STYLES,
  leansInWords,
  troubleOf,
  type TapeView,
} from '../../core/shop/mark-words.ts';
import {
  isSymmetricHoop,
  type TapeMark,
  type TapeSetting,
  type TapeSheet,
  type TapeStep,
} from '../../core/shop/tape.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { spokenReading, tapeReading, tapesOf } from '../../core/units/tape.ts';
import { useWorkspace } from '../../store/workspace.ts';
import { Length, Reading, Rounded } from '../fields/Readings.tsx';
import { Picks } from './Picks.tsx';
import { useKept } from '../kept.ts';
import { runOrder } from './useFeed.ts';
import './marks.css';

export interface TapeChoice {
  /** As it can be used on this tube. */
  readonly view: TapeView;
  readonly setting: TapeSetting;
  change(change: Partial<TapeView>): void;
}

/** How the person takes marks on this machine; a tube with a bend run is bent in its order. */
export function useTape(tube: SolvedTube): TapeChoice {
  const unit = useWorkspace((state) => state.job.lengthUnit);
  const [kept, keep] = useKept('tape', readTapeView);
  // The choice is kept for the next hoop.
  const view: TapeView = kept.from === 'middle' && !isSymmetricHoop(tube) ? { ...kept, from: 'A' } : kept;
  const order = runOrder(
    tube,
    useWorkspace((state) => state.job.bent),
  );
  return {
    view,
    setting: { from: view.from, style: view.style, step: tapesOf(unit)[view.fine ? 1 : 0], ...(order && { order }) },
    change: (change) => keep({ ...kept, ...change }),
  };
}

/** Which end the tape is hooked over, what is marked of a bend, and how fine the tape is. */
export function TapePicks({ tube, tape: { view, change } }: { tube: SolvedTube; tape: TapeChoice }): ReactNode {
  const unit = useWorkspace((state) => state.job.lengthUnit);
  const hoop = isSymmetricHoop(tube);
  return (
    <>
      <Picks
        legend="From"
        value={view.from}
        choices={FROM}
        barred={hoop ? null : { value: 'middle', why: 'The middle is for hoops that read the same from both ends.' }}
        onPick={(from) => change({ from })}
      />
      <Picks legend="Mark each bend’s" value={view.style} choices={STYLES} onPick={(style) => change({ style })} />
      <Picks
        legend="Tape in"
        value={view.fine}
        choices={tapesOf(unit).map((step, i) => ({ value: i === 1, label: <Division step={step} fine={i === 1} /> }))}
        onPick={(fine) => change({ fine })}
      />
    </>
  );
}

/** The mark's place on the tape, and the side that its bend lies on. */
export function MarkPlace(props: { mark: TapeMark; step: TapeStep; view: TapeView; withUnit?: boolean }): ReactNode {
  const { mark, step, view } = props;
  const unit = useWorkspace((state) => state.job.lengthUnit);
  const reading = tapeReading(mark.exact, unit, view.fine);
  const side = sideOf(mark, step);
  const trouble = troubleOf(mark);
  return (
    <>
      {view.style === 'tangents' && <span className="small">{mark.kind === 'start' ? 'starts ' : 'ends '}</span>}
      <span className="figure marks-figure">
        <span className="spoken-only">{`${spokenReading(reading, unit)}, the bend lies `}</span>
        <span aria-hidden="true">
          <Reading reading={reading} />
          {props.withUnit && <span className="figure-unit"> {unit}</span>}
        </span>
      </span>
      <span className="small under">
        <span className="marks-arrow" aria-hidden="true">
          {side.arrow}
        </span>
        {side.words}
      </span>
      {trouble !== null && (
        <span className={mark.onBlank ? 'under marks-note' : 'sign-error under marks-note'}>
          {!mark.onBlank && <span aria-hidden="true">▲ </span>}
          {trouble}
        </span>
      )}
    </>
  );
}

/** What the signs after the marks mean, where any has one. */
export function Leans({ steps, view }: { steps: readonly TapeStep[]; view: TapeView }): ReactNode {
  const unit = useWorkspace((state) => state.job.lengthUnit);
  const words = leansInWords(steps, unit, view.fine);
  return words === null ? null : <p className="small">{words}</p>;
}

/** A tape's division, as the tape's name. */
function Division({ step, fine }: { step: number; fine: boolean }): ReactNode {
  const unit = useWorkspace((state) => state.job.lengthUnit);
  const shown = tapeReading(step, unit, fine);
  return (
    <span>
      <span className="spoken-only">{`${shown.text} ${unit}`}</span>
      <span aria-hidden="true">
        <Rounded shown={shown} /> {unit}
      </span>
    </span>
  );
}

/** Where the tape's zero is. */
export const Zero = ({ sheet, from }: { sheet: TapeSheet; from: TapeView['from'] }): ReactNode =>
  from === 'middle' ? (
    <>
      Draw a line round the tube <Length mm={sheet.zero} parts={32} withUnit /> from the blank’s end A, and measure both
      ways from it.
    </>
  ) : (
    `Hook the tape over the blank’s end ${from}.`
  );

/** What the blank has to be longer by; nothing where the clamp has enough to hold. */
export function Grip({ sheet: { grip, blank } }: { sheet: TapeSheet }): ReactNode {
  const ends = grip.flatMap((length, i) => (length > 0 ? [{ end: i === 0 ? 'A' : 'B', length }] : []));
  if (ends.length === 0) return null;
  return (
    <p className="advice">
      <strong>
        Cut the blank to <Length mm={blank} parts={32} withUnit /> for the grip.
      </strong>{' '}
      {ends.map(({ end, length }, i) => (
        <Fragment key={end}>
          {i > 0 && ' and '}
          <Length mm={length} parts={32} withUnit /> at end {end}
        </Fragment>
      ))}{' '}
      {ends.length > 1 ? 'are' : 'is'} scrap for the clamp to hold: saw it off after bending.
    </p>
  );
}
