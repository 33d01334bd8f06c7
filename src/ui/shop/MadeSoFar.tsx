/** How far a tube is made, to be marked; and of one that is made, whether it still fits the frame and what to do where it does not. */
import type { ReactNode } from 'react';
import type { Finding } from '../../core/checks/types.ts';
import { STAGES } from '../../core/job/kinds/made.ts';
import type { Job } from '../../core/job/types.ts';
import { holdAnew, setStage, stageOf } from '../../core/shape/made-stage.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { findingInWords } from '../../core/words/findings.ts';
import { jobDocument, useDocument, useResults } from '../../store/page.ts';
import { SelectField } from '../fields/Fields.tsx';
import { Command } from '../kit/Command.tsx';
import { choiceColumn, type Column } from '../table/columns.tsx';

const DRAWN = 'drawn';
const CHOICES = [DRAWN, ...STAGES].map((stage) => ({ value: stage, label: stage }));

/** The chosen tube's mark, to be set. */
export function MadeSoFar({ tube }: { tube: SolvedTube }): ReactNode {
  const stage = useDocument((state) => stageOf(state.job, tube.id));
  return (
    <div className="made-so-far">
      <SelectField
        label="Made so far"
        value={stage ?? DRAWN}
        choices={CHOICES}
        onChoose={(value) => jobDocument.getState().edit(`${tube.name}: ${value}`, (job) => marked(job, tube, value))}
      />
      <p className="small">
        {stage === null
          ? 'It follows the frame. Once it is cut it is held, however the frame moves.'
          : 'It is held as it was cut, however the frame moves.'}
      </p>
    </div>
  );
}

/** Of one that is made, in part or whole, or leads: what of it does not fit the frame as it is now. Nothing where all does. */
export function HeldNotes({ tube }: { tube: SolvedTube }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const findings = useResults((state) => state.findings);
  const found = findings.filter((finding) => finding.tube === tube.id && isOfMade(finding));
  if (found.length === 0) return null;
  return (
    <>
      {found.map((finding) => (
        <p key={`${finding.id} ${finding.end ?? finding.node ?? finding.bend ?? ''}`} className="notice-warning">
          <span aria-hidden="true">▲ </span>
          {findingInWords(finding, derived)}
        </p>
      ))}
      {tube.held !== null && (
        <Command
          quiet
          step={`${tube.name} held as drawn now`}
          run={(job) => holdAnew(job, jobDocument.getState().derived, tube.id)}
        >
          It was cut as it is drawn now
        </Command>
      )}
    </>
  );
}

/** Notes say what is as it should be: how far a hoop that leads came out off its nodes. */
const isOfMade = ({ id, severity }: Finding): boolean => id.startsWith('made/') && severity !== 'note';

const marked = (job: Job, tube: SolvedTube, word: string): Job =>
  setStage(job, jobDocument.getState().derived, tube.id, STAGES.find((stage) => stage === word) ?? null);

function StageOf({ tube }: { tube: SolvedTube }): ReactNode {
  return <span className="small">{useDocument((state) => stageOf(state.job, tube.id)) ?? DRAWN}</span>;
}

/** In the list of tubes. */
export const MADE_COLUMN: Column<SolvedTube> = {
  ...choiceColumn<SolvedTube>({
    header: 'Made',
    step: 'How far a tube is made',
    value: ({ id }) => stageOf(jobDocument.getState().job, id) ?? DRAWN,
    choices: () => CHOICES,
    change: marked,
  }),
  show: (tube) => <StageOf tube={tube} />,
};
