/** The blank with its marks, the drawing that the tube's sheet has, and over it where the nodes lie and what to cut. */
import { useMemo, type ReactNode } from 'react';
import { tapeList } from '../../core/marks/tape.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { spokenReading, tapeReading } from '../../core/units/tape.ts';
import { sideOf } from '../../core/words/marks.ts';
import { blankDrawing } from '../../drawing/blank/blank.ts';
import { fromZero, type Measured } from '../../drawing/blank/measured.ts';
import { formatLength, type LengthUnit } from '../../core/units/length.ts';
import { useDocument } from '../../store/page.ts';
import { useFeed } from '../bending/useFeed.ts';
import { Length } from '../fields/Readings.tsx';
import { Drawn } from '../kit/Drawn.tsx';
import { screenLetters } from '../kit/letters.ts';
import { scaleOn } from '../kit/scale.ts';

interface BlankDrawingProps {
  readonly tube: SolvedTube;
  /** Pixels. */
  readonly width: number;
  /** Why it is not to be cut, else null. */
  readonly fault: string | null;
}

export function BlankDrawing({ tube, width, fault }: BlankDrawingProps): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const feed = useFeed(tube);
  const measured = useMemo((): Measured => ({ feed, tape: tapeList(tube, feed)! }), [tube, feed]);
  const scale = scaleOn(width);
  const picture = useMemo(
    () => blankDrawing(screenLetters, tube, measured, unit, width / scale),
    [tube, measured, unit, width, scale],
  );
  const [nodeA, nodeB] = fromZero(tube, measured);
  return (
    <figure>
      <figcaption>
        <strong>Blank</strong>
        <span className="small">
          {' '}
          · from {zeroName(measured)}: node A <Length mm={nodeA} />, node B <Length mm={nodeB} />,{' '}
        </span>
        {fault === null ? (
          <>
            cut to <Length mm={feed.cutLength} withUnit />
          </>
        ) : (
          <span className="sign-error">{`× ${fault}`}</span>
        )}
      </figcaption>
      <Drawn {...picture} scale={scale} label={describe(tube, measured, unit, fault)} />
    </figure>
  );
}

const zeroName = ({ feed }: Measured): string => (feed.from === 'middle' ? 'the middle' : `end ${feed.from}`);

/** What is sawn off after bending; nothing where no grip is left. */
function gripInWords({ tape }: Measured, unit: LengthUnit): string {
  const ends = tape.grip.flatMap((length, i) =>
    length > 0 ? [`${formatLength(length, unit).text} ${unit} at end ${i === 0 ? 'A' : 'B'}`] : [],
  );
  return ends.length === 0 ? '' : `, of which ${ends.join(' and ')} is scrap to hold it by`;
}

/** The drawing in words: every mark with its place, and where its bend lies. */
function describe(tube: SolvedTube, measured: Measured, unit: LengthUnit, fault: string | null): string {
  const { tape, feed } = measured;
  const marks = tape.steps.flatMap((step) =>
    step.marks.map((mark) => {
      const reading = spokenReading(tapeReading(mark.exact, unit, feed.fine), unit);
      const where = feed.from === 'middle' ? `${reading} towards end ${step.towards}` : reading;
      return `${step.bend} ${mark.kind} ${where}, the bend lies ${sideOf(mark, step).words}`;
    }),
  );
  const cut = fault ?? `cut to ${formatLength(tape.blank, unit).text} ${unit}${gripInWords(measured, unit)}`;
  const whole = `The blank of ${tube.name}, ${cut}, measured from ${zeroName(measured)}`;
  return marks.length === 0 ? whole : `${whole}: ${marks.join('; ')}`;
}
