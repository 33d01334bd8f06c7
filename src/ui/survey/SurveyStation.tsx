/** Survey: the measured points of the car, what hangs on them, and the body lines drawn through them. */
import { lazy, Suspense, useRef, type ReactNode } from 'react';
import { useDocument, useEditor } from '../../store/page.ts';
import { pairsOfPoints } from '../../core/survey/point-pairs.ts';
import { pointsOfCar } from '../../core/survey/points-of-car.ts';
import { tooFewHeld } from '../../core/survey/datum.ts';
import { measuredPoints } from '../../core/survey/measured-points.ts';
import { notLaidInWords } from '../../core/words/datum.ts';
import { LEVEL_FIRST, SET_UP, SIGNS } from '../../core/words/measuring.ts';
import { bareId } from '../../core/job/reference.ts';
import { Onward } from '../kit/Onward.tsx';
import { Section } from '../kit/Section.tsx';
import { AddPoint } from './AddPoint.tsx';
import { BodyLines } from './BodyLines.tsx';
import { LeftAndRight } from './LeftAndRight.tsx';
import { Measurements } from './Measurements.tsx';
import { MovedSince } from './MovedSince.tsx';
import { PastePoints } from './PastePoints.tsx';
import { PointCard } from './PointCard.tsx';
import { Guesses } from './Guesses.tsx';
import { PointsTable } from './PointsTable.tsx';
import { StandIns } from './StandIns.tsx';
import { useTrim } from './useTrim.ts';
import '../kit/ui.css';
import './survey.css';

const AtTheCar = lazy(() => import('./AtTheCar.tsx'));
const Scans = lazy(() => import('./Scans.tsx'));
const Datum = lazy(() => import('./Datum.tsx'));
const HoopSections = lazy(() => import('./HoopSections.tsx'));
const SampleBends = lazy(() => import('./SampleBends.tsx'));

export default function SurveyStation(): ReactNode {
  const written = useDocument((state) => state.job.points.length);
  const survey = useDocument((state) => state.derived.survey);
  const points = useDocument((state) => measuredPoints(state.job));
  const envelopes = useDocument((state) => state.job.envelopes);
  const readings = useDocument((state) => state.job.measurements.length);
  const nodes = useDocument((state) => state.job.nodes);
  const bodyLines = useDocument((state) => state.job.bodyLines);
  const scans = useDocument((state) => state.job.scans.length);
  const isBare = useDocument((state) => state.job.members.length + state.job.nodes.length === 0);
  const selection = useEditor((state) => state.selection);
  const setStation = useEditor((state) => state.setStation);
  const chosen = selection?.kind === 'point' ? points.find((point) => point.id === bareId(selection.id)) : undefined;
  const samples = useDocument((state) => state.job.survey?.samples?.length ?? 0);
  const opened = useDocument((state) => state.opened);
  const held = useDocument((state) => tooFewHeld(state.job));
  const axes = useRef<HTMLDivElement>(null);
  const trimOf = useTrim();
  const ofCar = pointsOfCar({ envelopes, nodes, bodyLines }, points);
  const guessed = points.filter((point) => point.guessed === true).length;
  return (
    <div className="station">
      {points.length === 0 && <FirstMeasurements />}
      <Suspense fallback={null}>
        <AtTheCar />
      </Suspense>
      <Section title="Measurements" count={readings} open={readings > 0 || written === 0} onlyOpen>
        <Measurements />
      </Section>
      {held !== null && <NotLaid held={held} onGo={() => openIn(axes.current)} />}
      <MovedSince key={opened} />
      {points.length > 0 && (
        <>
          <h2>
            Measured points <span className="section-count">{points.length}</span>
          </h2>
          <PointsTable points={points} survey={survey} chosen={chosen?.id ?? null} trimOf={trimOf} />
          {chosen ? (
            <PointCard key={chosen.id} point={chosen} survey={survey} trimOf={trimOf} />
          ) : (
            <p className="lead">Choose a point, here or in the bay, to see which nodes and tubes follow it.</p>
          )}
        </>
      )}
      {isBare && (
        <button type="button" className="press press-live" onClick={() => setStation('frame')}>
          {points.length === 0 ? 'Or begin with the tape: what do you build?' : 'Begin the cage: what do you build?'}
        </button>
      )}
      <Guesses points={points} nodes={nodes} />
      <StandIns points={points} />
      <div className="sections">
        {points.length > 0 && (
          <Section title="Left and right" count={pairsOfPoints(ofCar).pairs.length} onlyOpen>
            <LeftAndRight points={ofCar} />
          </Section>
        )}
        <Section title="Add a point" open={points.length === 0}>
          <AddPoint />
        </Section>
        <Section title="Paste many points">
          <PastePoints />
        </Section>
        <div ref={axes}>
          <Section title="Where the car’s axes are" onlyOpen>
            <Suspense fallback={null}>
              <Datum />
            </Suspense>
          </Section>
        </div>
        <Section title="Sample bends" count={samples} onlyOpen>
          <Suspense fallback={null}>
            <SampleBends />
          </Suspense>
        </Section>
        <Section title="Body lines" count={bodyLines.length}>
          <BodyLines trimOf={trimOf} />
        </Section>
        {bodyLines.length > 0 && !isBare && (
          <Section title="Car in the hoop’s plane" onlyOpen>
            <Suspense fallback={null}>
              <HoopSections />
            </Suspense>
          </Section>
        )}
        <Section title="Scans of the car" count={scans} onlyOpen>
          <Suspense fallback={null}>
            <Scans />
          </Suspense>
        </Section>
      </div>
      {!isBare && (
        <Onward to="frame" label="On to the Frame">
          {guessed === 0
            ? 'The frame follows these points.'
            : `The frame follows these points; ${guessed} of them ${guessed === 1 ? 'is' : 'are'} still a guess.`}
        </Onward>
      )}
    </div>
  );
}

const NotLaid = ({ held, onGo }: { held: number; onGo: () => void }): ReactNode => (
  <div className="notice-warning">
    <p role="status">
      <span aria-hidden="true">▲ </span>
      {notLaidInWords(held)}
    </p>
    <button type="button" className="press" onClick={onGo}>
      To where the car’s axes are
    </button>
  </div>
);

/** Unfolds the part of the station that is in there, and leads to it. */
function openIn(place: HTMLElement | null): void {
  const part = place?.querySelector('details');
  if (!part) return;
  part.open = true;
  part.scrollIntoView();
  part.querySelector('summary')?.focus();
}

const FirstMeasurements = (): ReactNode => (
  <div className="empty">
    <p>
      <strong>Nothing measured yet.</strong> {LEVEL_FIRST}
    </p>
    <ol>
      {SET_UP.map((words) => (
        <li key={words}>{words}</li>
      ))}
    </ol>
    <p>{SIGNS}</p>
  </div>
);
