/** What was measured at the car, and what it comes to: the line for the next reading, every reading, and what they say of one another. */
import { lazy, Suspense, useMemo, useState, type ReactNode } from 'react';
import { shownName } from '../../core/job/shown.ts';
import type { Adjusted } from '../../core/survey/adjust.ts';
import { useDocument } from '../../store/page.ts';
import { withImages } from '../kit/names.ts';
import { Section } from '../kit/Section.tsx';
import { Advice } from './Advice.tsx';
import type { Line } from './line.ts';
import { NewReading } from './NewReading.tsx';
import type { PointChoice } from './pointChoice.ts';
import { ReadingCard } from './ReadingCard.tsx';
import { ReadingsTable } from './ReadingsTable.tsx';
import './measurements.css';

const Figures = lazy(() => import('./Figures.tsx'));
const PasteReadings = lazy(() => import('./PasteReadings.tsx'));

export function Measurements(): ReactNode {
  const job = useDocument((state) => state.job);
  const survey = useDocument((state) => state.derived.survey);
  const [begun, setBegun] = useState<{ readonly line: Line; readonly count: number } | null>(null);
  const points = useMemo(
    (): readonly PointChoice[] => [
      ...job.points.map(({ id, name }) => ({ ref: id, label: shownName(name) || id })),
      ...withImages(job.points).flatMap(({ value, label }) => (value.endsWith("'") ? [{ ref: value, label }] : [])),
    ],
    [job.points],
  );
  return (
    <div className="measurements">
      <NewReading key={begun?.count} points={points} begun={begun?.line ?? null} />
      {survey === null || job.measurements.length === 0 ? (
        <WhatFirst />
      ) : (
        <Read survey={survey} onBegin={(line) => setBegun((before) => ({ line, count: (before?.count ?? 0) + 1 }))} />
      )}
      <Section title="Paste many readings" onlyOpen>
        <Suspense fallback={null}>
          <PasteReadings />
        </Suspense>
      </Section>
    </div>
  );
}

function Read({ survey, onBegin }: { survey: Adjusted; onBegin: (line: Line) => void }): ReactNode {
  const job = useDocument((state) => state.job);
  const [chosen, setChosen] = useState<string | null>(null);
  const [again, setAgain] = useState<number | null>(null);
  const reading = job.measurements.find(({ id }) => id === chosen);
  return (
    <>
      <Advice
        job={job}
        survey={survey}
        onBegin={onBegin}
        onAgain={(id) => {
          setChosen(id);
          setAgain((before) => (before ?? 0) + 1);
        }}
      />
      <ReadingsTable
        job={job}
        survey={survey}
        chosen={reading?.id ?? null}
        onChoose={(id) => {
          setAgain(null);
          setChosen(id);
        }}
      />
      {reading !== undefined && <ReadingCard key={reading.id} job={job} reading={reading} again={again} />}
      <Section title="For who wants the figures" onlyOpen>
        <Suspense fallback={null}>
          <Figures job={job} survey={survey} />
        </Suspense>
      </Section>
    </>
  );
}

const WhatFirst = (): ReactNode => (
  <div className="empty">
    <p>
      <strong>What to measure first.</strong> Type a point’s name, what the rule reads, and press Enter after each.
    </p>
    <ol>
      <li>Three points that are easy to reach: station, offset and height of each.</li>
      <li>Every other point by tape from these, and its height. A tape more than is needed shows a slip.</li>
      <li>The width over pillars, rails and towers: it checks both sides at once.</li>
    </ol>
    <p>A name that is not there yet makes the point: say left or right in it.</p>
  </div>
);
