/** A choice that is stored in the job: one undo step, refused in words when the job cannot take it. */
import { useState, type ReactNode } from 'react';
import type { Job } from '../../core/job/types.ts';
import { useWorkspace } from '../../store/workspace.ts';
import { SelectField, type Choice } from './Fields.tsx';

export function JobSelect(props: {
  label: string;
  labelUnseen?: boolean;
  value: string;
  choices: readonly Choice[];
  /** Names the step in undo. */
  step: string;
  change: (job: Job, value: string) => Job;
}): ReactNode {
  const edit = useWorkspace((state) => state.edit);
  const [refusal, setRefusal] = useState<string | null>(null);
  return (
    <SelectField
      label={props.label}
      labelUnseen={props.labelUnseen ?? false}
      value={props.value}
      choices={props.choices}
      refusal={refusal}
      onChoose={(value) => {
        const faults = edit(props.step, (job) => props.change(job, value));
        setRefusal(faults.length === 0 ? null : faults.map((fault) => fault.message).join('; '));
      }}
    />
  );
}
