/**
 * How marks are taken: edits of the job. What is picked holds for every tube; the end that the tape is hooked over may be another on
 * one tube alone. The last choice goes into the shop record too, for jobs that are begun from it.
 */
import type { ReactNode } from 'react';
import { findRun } from '../../core/edit/bent.ts';
import { findFeed, setMarking, setTubeFrom } from '../../core/edit/feeds.ts';
import { FIRST_MARKING } from '../../core/job/kinds/marking.ts';
import type { Job } from '../../core/job/types.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import type { Marking } from '../../core/job/kinds/marking.ts';
import { FROM, MARKED } from '../../core/words/marks.ts';
import { isSymmetricHoop } from '../../core/solve/symmetric.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { tapeReading, tapesOf } from '../../core/units/tape.ts';
import { jobDocument, shopRecord, useDocument, useShop } from '../../store/page.ts';
import { Rounded } from '../fields/Readings.tsx';
import { Picks } from '../kit/Picks.tsx';
import { useFeed } from './useFeed.ts';
import './marks.css';

export function TapePicks({ tube }: { tube: SolvedTube }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const own = useDocument((state) => findFeed(state.job, tube.id)?.from);
  const others = useDocument((state) => state.job.marking ?? FIRST_MARKING);
  const { from, mark, fine } = useFeed(tube);
  const hoop = isSymmetricHoop(tube);
  return (
    <>
      <Picks
        legend="From"
        value={from}
        choices={FROM}
        barred={hoop ? null : { value: 'middle', why: 'The middle is for hoops that read the same from both ends.' }}
        onPick={(next) =>
          own === undefined
            ? forAll(`Mark from ${FROM_WORDS[next]}`, { from: next })
            : edit(`Mark ${tube.name} from ${FROM_WORDS[next]}`, (job) => setTubeFrom(job, tube.id, next))
        }
      />
      <Picks
        legend="That end is for"
        value={own !== undefined}
        choices={FOR_WHICH}
        onPick={(alone) =>
          edit(
            alone ? `An end of its own for ${tube.name}` : `Mark ${tube.name} from the same end as the others`,
            (job) => setTubeFrom(job, tube.id, alone ? from : null),
          )
        }
      />
      {own !== undefined && own !== others.from && (
        <p className="small" role="status">
          {`The other tubes of this job are marked from ${FROM_WORDS[others.from]}.`}
        </p>
      )}
      <Picks
        legend="Mark each bend’s"
        value={mark}
        choices={MARKED}
        onPick={(next) => forAll(`Mark each bend’s ${MARK_WORDS[next]}`, { mark: next })}
      />
      <Picks
        legend="Tape in"
        value={fine}
        choices={tapesOf(unit).map((step, i) => ({ value: i === 1, label: <Division step={step} fine={i === 1} /> }))}
        onPick={(next) => forAll(`Mark on a tape in ${divisionText(unit, next)}`, { fine: next })}
      />
      <AsLastTime unit={unit} />
    </>
  );
}

const FOR_WHICH = [
  { value: false, label: 'Every tube' },
  { value: true, label: 'This tube alone' },
] as const;

const FROM_WORDS: Readonly<Record<Marking['from'], string>> = {
  A: 'end A',
  B: 'end B',
  middle: 'the middle outwards',
};

const MARK_WORDS: Readonly<Record<Marking['mark'], string>> = {
  start: 'start',
  clamp: 'clamp',
  middle: 'middle',
  tangents: 'two tangents',
};

const edit = (step: string, change: (job: Job) => Job): void => void jobDocument.getState().edit(step, change);

function forAll(step: string, fields: Partial<Marking>): void {
  edit(step, (job) => setMarking(job, fields));
  const { marking } = jobDocument.getState().job;
  if (marking !== undefined) shopRecord.getState().change((shop) => ({ ...shop, marking }));
}

/** A job that says nothing of its marks, in a browser where they were last taken in another way than at first. */
function AsLastTime({ unit }: { unit: LengthUnit }): ReactNode {
  const said = useDocument((state) => state.job.marking !== undefined);
  const last = useShop((state) => state.shop.marking);
  if (said || last === undefined) return null;
  const { from, mark, fine } = last;
  if (from === FIRST_MARKING.from && mark === FIRST_MARKING.mark && fine === FIRST_MARKING.fine) return null;
  return (
    <div className="marks-asked">
      <p className="small">
        {`This job does not say how it is marked. Last time here: from ${FROM_WORDS[from]}, each bend’s ${MARK_WORDS[mark]}, tape in ${divisionText(unit, fine)}.`}
      </p>
      <span className="row">
        <button type="button" className="press press-quiet" onClick={() => forAll('Mark as last time', last)}>
          Mark as last time
        </button>
        <button type="button" className="press press-quiet" onClick={() => forAll('Mark as it is', FIRST_MARKING)}>
          Leave it
        </button>
      </span>
    </div>
  );
}

/**
 * A symmetric hoop of a job where nobody has said how tubes are marked: its middle as one press. It stays from end A until then, since
 * that is what such a file means.
 */
export function FromTheMiddle({ tube }: { tube: SolvedTube }): ReactNode {
  const said = useDocument((state) => state.job.marking !== undefined || findFeed(state.job, tube.id) !== undefined);
  const begun = useDocument((state) => findRun(state.job, tube.id) !== undefined);
  const saidHere = useShop((state) => state.shop.marking !== undefined);
  if (said || begun || saidHere || tube.bends.length < 2 || !isSymmetricHoop(tube)) return null;
  return (
    <div className="marks-asked">
      <p className="small">
        This tube reads the same from both ends: marked from a line round its middle, both halves have the same figures.
      </p>
      <button
        type="button"
        className="press press-quiet"
        onClick={() => forAll(`Mark from ${FROM_WORDS.middle}`, { from: 'middle' })}
      >
        Mark hoops from the middle outwards
      </button>
    </div>
  );
}

const divisionText = (unit: LengthUnit, fine: boolean): string =>
  `${tapeReading(tapesOf(unit)[fine ? 1 : 0], unit, fine).text} ${unit}`;

/** A tape's division, as the tape's name. */
function Division({ step, fine }: { step: number; fine: boolean }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
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
