/** What can be set on all marked members at once. */
import type { ReactNode } from 'react';
import { setDie, updateMember } from '../../core/edit/members.ts';
import { setBatch } from '../../core/edit/pulls.ts';
import type { Job } from '../../core/job/types.ts';
import type { Member } from '../../core/job/kinds/member.ts';
import { useDocument } from '../../store/page.ts';
import { TextField } from '../fields/Fields.tsx';
import { JobSelect } from '../fields/JobSelect.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import Marked from '../table/Marked.tsx';
import type { Marks } from '../table/marks.ts';
import { DeleteMembers } from './DeleteMembers.tsx';
import { batchesIn, choicesOf } from './choices.ts';
import { sectionChoices } from './section-choices.ts';

export default function SeveralMembers({ marks }: { marks: Marks }): ReactNode {
  const job = useDocument((state) => state.job);
  const members = job.members.filter(({ id }) => marks.marked.has(id));
  const these = `${members.length} ${members.length === 1 ? 'member' : 'members'}`;
  const each = (before: Job, change: (job: Job, id: Member['id']) => Job): Job =>
    members.reduce((done, { id }) => change(done, id), before);
  const dies = [{ value: STRAIGHT, label: 'none: straight' }, ...choicesOf(job.dies)];
  return (
    <Marked
      marks={marks}
      noun="members"
      removal={
        <DeleteMembers ids={members.map(({ id }) => id)} called={these} destroys="marked">
          Delete the marked {these}
        </DeleteMembers>
      }
    >
      <div className="fields fields-two">
        <JobSelect
          label="Section of all marked"
          value={alike(members, ({ section }) => section)}
          choices={sectionChoices(job)}
          step={`Section of ${these}`}
          change={(before, section) => each(before, (done, id) => updateMember(done, id, { section }))}
        />
        <JobSelect
          label="Die of all marked"
          value={alike(members, ({ die }) => die ?? STRAIGHT)}
          choices={dies}
          step={`Die of ${these}`}
          change={(before, die) => each(before, (done, id) => setDie(done, id, die === STRAIGHT ? null : die))}
        />
        <TextField
          label="Batch of all marked"
          mayBeEmpty
          suggestions={batchesIn(job)}
          value={alike(members, ({ batch }) => batch ?? '')}
          {...jobEdit<string>(`Batch of ${these}`, (before, batch) =>
            each(before, (done, id) => setBatch(done, id, batch)),
          )}
        />
      </div>
    </Marked>
  );
}

/** Stands for none where '' means that they are not alike. */
const STRAIGHT = ' ';

/** What they all have, or '' where they differ. */
function alike(members: readonly Member[], of: (member: Member) => string): string {
  const [first, ...others] = members.map(of);
  return first !== undefined && others.every((other) => other === first) ? first : '';
}
