/** The nodes a member runs through, from end A to end B; every one between them is a sharp corner that the die rounds. */
import { useState, type ReactNode } from 'react';
import { insertPathNode, removePathNode, updateMember } from '../../core/edit/members.ts';
import type { Edited } from '../../core/edit/records.ts';
import type { Member } from '../../core/job/kinds/member.ts';
import type { Job } from '../../core/job/types.ts';
import { useDocument, useEditor } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { SelectField, type Choice } from '../fields/Fields.tsx';
import { JobSelect } from '../fields/JobSelect.tsx';
import { withImages } from '../kit/names.ts';

export function PathEditor({ member }: { member: Member }): ReactNode {
  const nodes = useDocument((state) => state.job.nodes);
  const select = useEditor((state) => state.select);
  const [insertAt, setInsertAt] = useState<number | null>(null);
  const choices = withImages(nodes);
  const last = member.path.length - 1;

  return (
    <ol className="path">
      {member.path.map((reference, index) => {
        const name = index === 0 ? 'End A' : index === last ? 'End B' : `Corner ${index}`;
        return (
          <li key={index}>
            <div className="path-row">
              <JobSelect
                label={name}
                value={reference}
                choices={choices}
                step={`Path of ${member.name}`}
                change={(job, chosen) => updateMember(job, member.id, { path: member.path.with(index, chosen) })}
              />
              <button
                type="button"
                className="press press-small"
                aria-label={`Show the node of ${name}`}
                onClick={() => select({ kind: 'node', id: reference })}
              >
                Node
              </button>
              <Command
                quiet
                step={`Take a corner out of ${member.name}`}
                label={`Take ${name} out of the path`}
                destroys={`corner ${index}`}
                disabled={member.path.length <= 2}
                run={(job) => removePathNode(job, member.id, index)}
              >
                ×
              </Command>
            </div>
            {index < last &&
              (insertAt === index + 1 ? (
                <NewCorner
                  label={`New corner after ${name}`}
                  step={`Put a corner into ${member.name}`}
                  choices={choices}
                  insert={(job, node) => insertPathNode(job, member.id, index + 1, node)}
                  onDone={() => setInsertAt(null)}
                />
              ) : (
                <button
                  type="button"
                  className="insert"
                  aria-label={`Put a corner in after ${name}`}
                  onClick={() => setInsertAt(index + 1)}
                >
                  + corner
                </button>
              ))}
          </li>
        );
      })}
    </ol>
  );
}

/** The node is chosen first and then put in: the arrow keys choose at every step, and one that is refused stays to be seen. */
function NewCorner(props: {
  label: string;
  step: string;
  choices: readonly Choice[];
  insert: (job: Job, node: string) => Edited;
  onDone: () => void;
}): ReactNode {
  const [chosen, setChosen] = useState('');
  return (
    <div className="path-row">
      <SelectField label={props.label} value={chosen} takesFocus choices={props.choices} onChoose={setChosen} />
      <Command
        step={props.step}
        disabled={chosen === ''}
        run={(job) => props.insert(job, chosen)}
        onDone={props.onDone}
      >
        Put it in
      </Command>
    </div>
  );
}
