/** The selected member: what it is made of, the corners it runs through, how its ends fit, where it stands in the order. */
import { shownName } from '../../core/job/shown.ts';
import type { ReactNode } from 'react';
import { moveMember, setDie, updateMember } from '../../core/edit/members.ts';
import { setBatch } from '../../core/edit/pulls.ts';
import { primed } from '../../core/job/reference.ts';
import type { Member } from '../../core/job/kinds/member.ts';
import { tubesOfBar } from '../../core/solve/bar-tubes.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { levelBy, levelMember } from '../../core/shape/level.ts';
import { feedOf } from '../../core/solve/feed.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { TextField } from '../fields/Fields.tsx';
import { JobSelect } from '../fields/JobSelect.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { RoleField } from '../fields/RoleField.tsx';
import { Length } from '../fields/Readings.tsx';
import { batchesIn, choicesOf } from './choices.ts';
import { sectionChoices } from './section-choices.ts';
import { BendsEditor } from './BendsEditor.tsx';
import { DeleteMembers } from './DeleteMembers.tsx';
import { EndEditor } from './EndEditor.tsx';
import { MemberChanges } from './MemberChanges.tsx';
import { OneForBoth } from './OneForBoth.tsx';
import { MoveBar } from './MoveBar.tsx';
import { PathEditor } from './PathEditor.tsx';
import { PiecesEditor } from './PiecesEditor.tsx';
import { SidesEditor } from './SidesEditor.tsx';

export function MemberCard({ member }: { member: Member }): ReactNode {
  const job = useDocument((state) => state.job);
  const byId = useDocument((state) => state.derived.byId);
  const tubes = tubesOfBar(byId, member.id);
  const twins = member.mirror ? tubesOfBar(byId, primed(member.id)) : [];
  const place = job.members.findIndex(({ id }) => id === member.id);
  const { id, name } = member;
  return (
    <article className="card chosen-card" aria-label={`Member ${shownName(name)}`}>
      <header className="card-head">
        <h2>
          <span className="number-tag number-tag-large">{numbersOf(tubes)}</span>
          {shownName(name)}
        </h2>
        {tubes.map((tube) => (
          <p className="card-sum" key={tube.id}>
            {tube.piece !== null && `Piece ${tube.piece.number}: `}
            <Length mm={feedOf(job, tube).cutLength} withUnit /> to cut · {tube.bends.length}{' '}
            {tube.bends.length === 1 ? 'bend' : 'bends'}
          </p>
        ))}
        {twins.length > 0 && <p className="card-sum">mirror image is {numbersOf(twins)}</p>}
      </header>
      <div className="fields fields-two">
        <TextField
          label="Name"
          value={name}
          {...jobEdit<string>('Rename a member', (before, value) => updateMember(before, id, { name: value }))}
        />
        <RoleField
          key={id}
          label="Role"
          role={member.role}
          commit={jobEdit<string>(`Role of ${name}`, (before, role) => updateMember(before, id, { role })).commit}
        />
        <JobSelect
          label="Section"
          value={member.section}
          choices={sectionChoices(job)}
          step={`Section of ${name}`}
          change={(before, section) => updateMember(before, id, { section })}
        />
        <JobSelect
          label="Die"
          value={member.die ?? ''}
          choices={[{ value: '', label: 'none: straight' }, ...choicesOf(job.dies)]}
          step={`Die of ${name}`}
          change={(before, die) => setDie(before, id, die === '' ? null : die)}
        />
        <TextField
          label="Batch of the tube"
          mayBeEmpty
          suggestions={batchesIn(job)}
          value={member.batch ?? ''}
          {...jobEdit<string>(`Batch of ${name}`, (before, batch) => setBatch(before, id, batch))}
        />
      </div>
      <MirrorSwitch member={member} />
      {member.mirror ? <SidesEditor member={member} /> : <OneForBoth member={member} />}
      <LevelSwitch member={member} />
      <MoveBar member={member} />
      <h3>Path</h3>
      <PathEditor member={member} />
      <h3>Bends</h3>
      <BendsEditor member={member} />
      <h3>Pieces</h3>
      <PiecesEditor member={member} />
      <h3>Ends</h3>
      <EndEditor member={member} which={0} />
      <EndEditor member={member} which={1} />
      <h3>Change it in one step</h3>
      <MemberChanges member={member} />
      <h3>Build order</h3>
      <p className="small">
        {place + 1} of {job.members.length}. An end copes to what was built before it.
      </p>
      <div className="row">
        <Command
          step={`Build ${name} earlier`}
          disabled={place === 0}
          run={(before) => moveMember(before, id, place - 1)}
        >
          Earlier
        </Command>
        <Command
          step={`Build ${name} later`}
          disabled={place === job.members.length - 1}
          run={(before) => moveMember(before, id, place + 1)}
        >
          Later
        </Command>
        <DeleteMembers ids={[id]} called={name} destroys={id}>
          Delete the member
        </DeleteMembers>
      </div>
    </article>
  );
}

/** "7", of a bar in pieces "7 · 8". */
const numbersOf = (tubes: readonly SolvedTube[]): string => tubes.map(({ number }) => number).join(' · ');

function MirrorSwitch({ member }: { member: Member }): ReactNode {
  return (
    <div className="switch">
      <Command
        step={member.mirror ? `No mirror image of ${member.name}` : `Mirror ${member.name}`}
        run={(before) => updateMember(before, member.id, { mirror: !member.mirror })}
      >
        {member.mirror ? 'Take the mirror image away' : 'Mirror to the other side'}
      </Command>
      <span className="small">
        {member.mirror ? 'On both sides of the car: its mirror image is made too.' : 'On this side only.'}
      </span>
    </div>
  );
}

function LevelSwitch({ member }: { member: Member }): ReactNode {
  const end = useDocument((state) => levelBy(state.job, member.id));
  return (
    <div className="switch">
      <Command
        step={`Level ${member.name}`}
        run={(before) => levelMember(before, jobDocument.getState().derived, member.id)}
      >
        Level
      </Command>
      <span className="small">
        {end === null
          ? 'One end takes the height of the other, and keeps it.'
          : `Level: end ${end} goes with the height of end ${end === 'A' ? 'B' : 'A'}.`}
      </span>
    </div>
  );
}
