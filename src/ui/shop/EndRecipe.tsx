/** One end of a tube: what it is cut to, what is left long there, and for each cut what is done at the notcher, in its order. */
import type { ReactNode } from 'react';
import { deepSide, longSide, type EndMark } from '../../core/cope/end-mark.ts';
import { middleOf } from '../../core/cope/landing.ts';
import { notchingOf, type Notching } from '../../core/cope/notching.ts';
import { plateOffSquare } from '../../core/cope/end-cut.ts';
import { leaveLong } from '../../core/edit/members.ts';
import { endNodeName } from '../../core/solve/names.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { lineInWords, longSideOf, lookInWords, markInWords, ROUND } from '../../core/words/cope-mark.ts';
import { endInWords, numbered, placesInWords } from '../../core/words/ends.ts';
import { landingInShort } from '../../core/words/landing.ts';
import { capital } from '../../core/words/lists.ts';
import {
  benchSawInWords,
  betweenInWords,
  recipeRows,
  saidOfCut,
  seenInWords,
  wayInWords,
  type RecipeFigure,
} from '../../core/words/notching.ts';
import { scribedInWords } from '../../core/words/turns.ts';
import { landedOn } from '../../core/solve/bar-tubes.ts';
import { atNotcher, endAtNotcher } from '../../drawing/at-notcher.ts';
import { endPicture } from '../../drawing/end-on/cope.ts';
import { useDocument } from '../../store/page.ts';
import { LengthField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { Angle, Length } from '../fields/Readings.tsx';
import { Drawn } from '../kit/Drawn.tsx';
import { useFeed } from '../bending/useFeed.ts';

/** Pixels a millimetre of the pictures: the letters of the second are larger. */
const SCALE = { endOn: 4.4, above: 3.6 };

export function EndRecipe({ tube, which }: { tube: SolvedTube; which: 0 | 1 }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const { order } = useFeed(tube);
  const end = tube.ends[which];
  const long = longSide(tube, which);
  const notching = notchingOf(end, derived.job.tools);
  const unit = derived.job.lengthUnit;
  const scribed = scribedInWords(tube, order, which, unit);
  const places = placesInWords(end, unit);
  const letter = which === 0 ? 'A' : 'B';
  return (
    <section className="end" aria-label={`End ${letter}`}>
      <h3>
        <span className="end-letter">{letter}</span>
        {capital(endInWords(derived, end, numbered))}
      </h3>
      {(long !== null || notching !== null) && (
        <p>
          {lineInWords(tube, which)} <strong>{lookInWords(which)}</strong>
          {scribed !== null && ` ${scribed}`}
        </p>
      )}
      {end.plateNormal !== null && (
        <div className="recipe">
          <p className="recipe-line">
            Saw set over, off square: <Angle radians={plateOffSquare(end)} />
          </p>
          <Warned words={benchSawInWords(plateOffSquare(end), derived.job.tools)} />
          {long !== null && (
            <>
              <EndOn mark={long} tube={tube} which={which} />
              <dl className="facts">
                <MarkFacts what={longSideOf(tube)} mark={long} />
              </dl>
            </>
          )}
        </div>
      )}
      {notching !== null && <Cuts tube={tube} which={which} notching={notching} />}
      <LeftLong tube={tube} which={which} />
      <p className="small">{`Node: ${endNodeName(derived.job, end.node)}.${places === null ? '' : ` ${places}`}`}</p>
    </section>
  );
}

/** What is left on beyond the tip; none where the bar is cut in two, and at the ends of a standing tube, which are as they are. */
function LeftLong({ tube, which }: { tube: SolvedTube; which: 0 | 1 }): ReactNode {
  const { member, ends } = tube;
  const end = ends[which];
  if (end.node === null) return null;
  const step = `Left long, end ${which === 0 ? 'A' : 'B'} of ${tube.name}`;
  return (
    <LengthField
      label="Left long, past the tip"
      value={end.allowance}
      {...jobEdit<number>(step, (job, mm) => leaveLong(job, member.id, which, mm))}
    />
  );
}

function Cuts({ tube, which, notching }: { tube: SolvedTube; which: 0 | 1; notching: Notching }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const { lengthUnit: unit } = derived.job;
  const end = tube.ends[which];
  const { notches } = notching;
  const marks = notches.map(({ cut }) => deepSide(tube, cut));
  return (
    <>
      {notches.map((notch, i) => {
        const { cut, way } = notch;
        const rows = recipeRows(tube, notch, notching, unit);
        const said = saidOfCut(tube, which, notching, i, unit);
        return (
          <div className="recipe" key={cut.against}>
            <h4>{`Cut ${notches.length > 1 ? `${i + 1} ` : ''}to ${landedOn(derived.byId, cut).name}`}</h4>
            <p className={way === 'wrap' ? 'recipe-instead' : ''}>
              <strong>{wayInWords(notch, notching, unit)}</strong> {betweenInWords(cut)}
            </p>
            <div className="recipe-pictures">
              <Drawn
                {...endAtNotcher(tube, notching, i)}
                scale={SCALE.endOn}
                label={`${lookInWords(which)} The mark: ${markInWords(marks[i]!)}.`}
              />
              <Drawn
                {...atNotcher(tube, which, notching, i)}
                scale={SCALE.above}
                label={seenInWords(notch, notching)}
              />
            </div>
            <ol className="recipe-steps">
              {rows.map(({ label, figure }) => (
                <li key={label}>
                  <span>{label}</span> <strong className="figure">{figureOf(figure)}</strong>
                </li>
              ))}
            </ol>
            {said.map((words) => (
              <p key={words}>{words}</p>
            ))}
            <p className="small">{`Middle on ${landingInShort(middleOf(derived, end, cut), unit)}.`}</p>
          </div>
        );
      })}
    </>
  );
}

function figureOf(figure: RecipeFigure): ReactNode {
  switch (figure.kind) {
    case 'length':
      return <Length mm={figure.mm} withUnit />;
    case 'round':
      return <Length mm={figure.mm} parts={64} withUnit />;
    case 'words':
      return figure.words;
  }
}

const EndOn = ({ mark, tube, which }: { mark: EndMark; tube: SolvedTube; which: 0 | 1 }): ReactNode => (
  <Drawn
    {...endPicture(mark, tube.bends.length > 0)}
    scale={SCALE.endOn}
    label={`${lookInWords(which)} The mark: ${markInWords(mark)}.`}
  />
);

const Warned = ({ words }: { words: string | null }): ReactNode =>
  words !== null && (
    <p className="notice-warning">
      <span aria-hidden="true">! </span>
      {words}
    </p>
  );

/** Where a mark is put: how far from the line, and the same round the tube's surface. */
const MarkFacts = ({ what, mark }: { what: string; mark: EndMark }): ReactNode => (
  <>
    <div>
      <dt>{what}</dt>
      <dd className="figure">{markInWords(mark)}</dd>
    </div>
    <div>
      <dt>{ROUND}</dt>
      <dd>
        <Length mm={mark.round} parts={64} withUnit />
      </dd>
    </div>
  </>
);
