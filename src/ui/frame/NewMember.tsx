/** A new member drawn from node to node. */
import { useState, type ReactNode } from 'react';
import { addMember } from '../../core/edit/members.ts';
import type { NodeRef } from '../../core/job/reference.ts';
import { editor, jobDocument, useDocument } from '../../store/page.ts';
import { ChainField } from '../fields/ChainField.tsx';
import { SelectField } from '../fields/Fields.tsx';
import { Command } from '../kit/Command.tsx';
import { withImages } from '../kit/names.ts';
import { sectionChoices } from './section-choices.ts';

export default function NewMember(): ReactNode {
  const job = useDocument((state) => state.job);
  const [path, setPath] = useState<readonly NodeRef[]>([]);
  const [section, setSection] = useState(job.sections[0]?.id ?? '');
  if (job.nodes.length < 2) return <p className="small">A member needs two nodes: add them under Nodes.</p>;
  if (job.sections.length === 0) return <p className="small">A member needs a tube: add one under Tube & dies.</p>;
  const name = `Member ${job.members.length + 1}`;

  function showAdded(): void {
    setPath([]);
    const added = jobDocument.getState().job.members.at(-1);
    if (added) editor.getState().select({ kind: 'tube', id: added.id });
  }

  return (
    <div className="fields">
      <ChainField first="From node" next="then to" chain={path} choices={withImages(job.nodes)} onChange={setPath} />
      <SelectField label="Section" value={section} choices={sectionChoices(job)} onChoose={setSection} />
      <div className="row">
        <Command
          step={`Add ${name}`}
          disabled={path.length < 2 || section === ''}
          run={(before) => addMember(before, { name, path, section })}
          onDone={showAdded}
        >
          Add the member
        </Command>
        {path.length > 0 && (
          <button type="button" className="press press-quiet" onClick={() => setPath((before) => before.slice(0, -1))}>
            Remove the last node
          </button>
        )}
      </div>
    </div>
  );
}
