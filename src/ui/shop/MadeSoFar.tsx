/** How far a tube is made, to be marked; and of one that is cut, whether it still fits the frame and what to do where it does not. */
import type { ReactNode } from 'react';
import type { Finding } from '../../core/checks/types.ts';
import { STAGES, type MadeStage } from '../../core/job/kinds/made.ts';
import { holdAnew, setStage, stageOf } from '../../core/shape/made-stage.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { findingInWords } from '../../core/words/findings.ts';
import { jobDocument, useDocument, useResults } from '../../store/page.ts';
import { SelectField } from '../fields/Fields.tsx';
import { Command } from '../kit/Command.tsx';

const DRAWN = 'drawn';
const CHOICES = [DRAWN, ...STAGES].map((stage) => ({ value: stage, label: stage }));

export function MadeSoFar({ tube }: { tube: SolvedTube }): ReactNode {
  const stage = useDocument((state) => stageOf(state.job, tube.id));
  const derived = useDocument((state) => state.derived);
  const findings = useResults((state) => state.findings);
  const found = findings.filter((finding) => finding.tube === tube.id && isOfMade(finding));
  const mark = (to: MadeStage | null): void => {
    const { edit, derived: frame } = jobDocument.getState();
    edit(`${tube.name}: ${to ?? DRAWN}`, (job) => setStage(job, frame, tube.id, to));
  };
  return (
    <div className="made-so-far">
      <SelectField
        label="Made so far"
        value={stage ?? DRAWN}
        choices={CHOICES}
        onChoose={(value) => mark(STAGES.find((each) => each === value) ?? null)}
      />
      <p className="small">
        {stage === null ? 'It follows the frame.' : 'It is held as it was cut, however the frame moves.'}
      </p>
      {found.map((finding) => (
        <p key={`${finding.id} ${finding.end ?? finding.node ?? ''}`} className="notice-warning">
          <span aria-hidden="true">▲ </span>
          {findingInWords(finding, derived)}
        </p>
      ))}
      {tube.held !== null && found.length > 0 && (
        <Command
          quiet
          step={`${tube.name} held as drawn now`}
          run={(job) => holdAnew(job, jobDocument.getState().derived, tube.id)}
        >
          It was cut as it is drawn now
        </Command>
      )}
    </div>
  );
}

const isOfMade = ({ id }: Finding): boolean => id.startsWith('made/');

/** In the list of tubes: nothing of one that is no more than drawn. */
export function StageOf({ tube }: { tube: SolvedTube }): ReactNode {
  const stage = useDocument((state) => stageOf(state.job, tube.id));
  return stage === null ? null : <span className="small under made-stage">{stage}</span>;
}
