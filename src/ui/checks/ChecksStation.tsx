/** Checks: what was found, how far every tube is from the driver, and what nobody has looked at. */
import { shownName } from '../../core/job/shown.ts';
import { useState, type ReactNode } from 'react';
import { NOT_CHECKED, WHO_DECIDES } from '../../core/words/cautions.ts';
import { FORECAST } from '../../core/words/forecast.ts';
import { bySeverity } from '../../core/checks/faults.ts';
import { placesInWords } from '../../core/words/groups.ts';
import { grouped } from '../../core/checks/grouped.ts';
import { isSeen, unseen } from '../../core/checks/seen.ts';
import type { Severity } from '../../core/checks/types.ts';
import { editor, useDocument, useEditor, useResults } from '../../store/page.ts';
import { keep } from '../kit/kept.ts';
import { Onward } from '../kit/Onward.tsx';
import { useOpenCount } from '../kit/useOpenCount.ts';
import { GapLength } from '../fields/Readings.tsx';
import { Section } from '../kit/Section.tsx';
import { AddRoom } from './AddRoom.tsx';
import { EnvelopeCard } from './EnvelopeCard.tsx';
import { FindingsList } from '../kit/FindingsList.tsx';
import { Forecast } from './Forecast.tsx';
import { GapsBetweenTubes } from './GapsBetweenTubes.tsx';
import { RuleBook } from './RuleBook.tsx';
import { SheetEditor, type OpenSheet } from './SheetEditor.tsx';
import { Unrehearsed } from './Unrehearsed.tsx';
import '../kit/ui.css';
import './checks.css';

export default function ChecksStation(): ReactNode {
  const findings = useResults((state) => state.findings);
  const derived = useDocument((state) => state.derived);
  const marks = useDocument((state) => state.job.seen);
  const envelopes = useDocument((state) => state.job.envelopes);
  const open = grouped(bySeverity(unseen(findings, marks)), derived);
  const seen = grouped(bySeverity(findings.filter((finding) => isSeen(finding, marks))), derived);
  const errors = useOpenCount()('error').things;
  /** Undefined until one is opened, null once it is left again. */
  const [openSheet, showSheet] = useState<OpenSheet | null | undefined>();
  if (openSheet) return <SheetEditor open={openSheet} show={showSheet} />;
  return (
    <div className="station">
      <p className="caution caution-first">{WHO_DECIDES}</p>
      <Tally />
      <RuleBook show={showSheet} isBack={openSheet === null} />
      <h2>Found</h2>
      {findings.length === 0 ? <NothingFound /> : <FindingsList groups={open} />}
      {seen.length > 0 && (
        <Section title={`Seen and left as they are (${seen.length})`}>
          <p className="small">Each comes back above as soon as its numbers change.</p>
          <FindingsList groups={seen} seen />
        </Section>
      )}
      <Unrehearsed />
      <h2>Room for the driver</h2>
      {envelopes.length === 0 && (
        <p className="empty">
          <strong>No driver yet.</strong> Measure the driver, belted in and helmet on, and put one in the car by these
          points. Every tube is then measured against the helmet.
        </p>
      )}
      {envelopes.map((envelope) => (
        <EnvelopeCard key={envelope.id} envelope={envelope} />
      ))}
      <AddRoom />
      <h2>Between tubes</h2>
      <GapsBetweenTubes />
      <h2>{FORECAST}</h2>
      <Section title="How the joints will fit" onlyOpen>
        <Forecast />
      </Section>
      <Section title="Not checked here" open>
        <ul className="not-checked">
          {NOT_CHECKED.map(([what, why]) => (
            <li key={what}>
              <strong>{what}</strong> {why}
            </li>
          ))}
        </ul>
      </Section>
      {derived.tubes.length > 0 && (
        <p className="row">
          <span className="small">What the inspector asks for, in one paper:</span>
          <button type="button" className="press press-quiet" onClick={toDossier}>
            Dossier, in the Shop’s files
          </button>
        </p>
      )}
      {derived.tubes.length > 0 && (
        <Onward to="shop" label="On to the Shop">
          {`${derived.tubes.length} ${derived.tubes.length === 1 ? 'tube' : 'tubes'} to make`}
          {errors > 0 && `; mend the ${errors === 1 ? 'error' : `${errors} errors`} before steel is cut`}.
        </Onward>
      )}
    </div>
  );
}

/** Where files are taken, with what the dossier wants beside the drawing. */
function toDossier(): void {
  keep('shop-part', 'files');
  editor.getState().setStation('shop');
}

/** The two figures that one comes for: how many things stand, and the shortest gap. */
function Tally(): ReactNode {
  const count = useOpenCount();
  const clearances = useDocument((state) => state.derived.clearances);
  const envelopes = useDocument((state) => state.job.envelopes);
  const goTo = useEditor((state) => state.goTo);
  const shortest = clearances.toSorted((a, b) => a.distance - b.distance)[0];
  return (
    <dl className="tally-row">
      {(['error', 'warning', 'note'] as const).map((severity) => {
        const { things, places } = count(severity);
        return (
          <div key={severity} className={things > 0 ? `tally-${severity}-word` : undefined}>
            <dt>{PLURALS[severity]}</dt>
            <dd className="figure">
              {things}
              {places > things && <span className="small"> {placesInWords(places)}</span>}
            </dd>
          </div>
        );
      })}
      {shortest && (
        <div className={shortest.ok ? undefined : 'tally-error-word'}>
          <dt>Shortest gap</dt>
          <dd>
            <button
              type="button"
              className="tally-gap"
              aria-label={`Go to the shortest gap, at ${shownName(envelopes.find(({ id }) => id === shortest.envelope)?.name ?? '')}`}
              onClick={() => goTo(shortest.at, { kind: 'envelope', id: shortest.envelope })}
            >
              <GapLength mm={shortest.distance} />
            </button>
          </dd>
        </div>
      )}
    </dl>
  );
}

const PLURALS: Readonly<Record<Severity, string>> = { error: '× Errors', warning: '! Warnings', note: 'i Notes' };

const NothingFound = (): ReactNode => (
  <p className="empty">
    <strong>Nothing found.</strong> That means only that these few checks found nothing: bends, dies, copes, joints near
    bends, head boxes. It is no approval.
  </p>
);
