/** A choice that is stored in the job: one undo step, refused in words when the job cannot take it. */
import { useState, type ReactNode } from 'react';
import type { Edited } from '../../core/edit/records.ts';
import type { Fault } from '../../core/job/fault.ts';
import type { Job } from '../../core/job/types.ts';
import { jobDocument } from '../../store/page.ts';
import { SelectField, type Choice } from './Fields.tsx';

export function JobSelect(props: {
  label: string;
  labelUnseen?: boolean;
  value: string;
  choices: readonly Choice[];
  /** Names the step in undo. */
  step: string;
  /** Answers the changed job, or why it cannot be changed. */
  change: (job: Job, value: string) => Edited;
}): ReactNode {
  const [refusal, setRefusal] = useState<string | null>(null);
  return (
    <SelectField
      label={props.label}
      labelUnseen={props.labelUnseen ?? false}
      value={props.value}
      choices={props.choices}
      refusal={refusal}
      onChoose={(value) => {
        const { edit, job } = jobDocument.getState();
        const answer = props.change(job, value);
        const faults = isFaults(answer) ? answer : edit(props.step, () => answer);
        setRefusal(faults.length === 0 ? null : faults.map((fault) => fault.message).join('; '));
      }}
    />
  );
}

const isFaults = (answer: Edited): answer is readonly Fault[] => Array.isArray(answer);
