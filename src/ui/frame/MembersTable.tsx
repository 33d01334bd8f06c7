/** The members in build order; with none, what a frame begins with. */
import { Suspense, useMemo, type ReactNode } from 'react';
import { updateMember } from '../../core/edit/members.ts';
import { memberOfTube, tubesOfMember } from '../../core/job/member-of-tube.ts';
import { tubesOfBar } from '../../core/solve/bar-tubes.ts';
import { primed, type TubeRef } from '../../core/job/reference.ts';
import type { Member } from '../../core/job/kinds/member.ts';
import { useDocument, useEditor } from '../../store/page.ts';
import { Section } from '../kit/Section.tsx';
import { choiceColumn, textColumn, type Column } from '../table/columns.tsx';
import { EditTable } from '../table/EditTable.tsx';
import { MarkSwitch } from '../table/MarkSwitch.tsx';
import { useMarks } from '../table/marks.ts';
import { FIT_SHORT } from './choices.ts';
import { sectionChoices } from './section-choices.ts';
import { BuildOrder, Fitting, NewMember, Numbers, SeveralMembers, StartChoice } from './later.ts';

const NUMBER: Column<Member> = { header: 'No.', numeric: true, show: ({ id }) => <TubeNumbers id={id} /> };

/** Of all that is made of it: pieces from end A, then the mirror image. */
function TubeNumbers({ id }: { id: TubeRef }): ReactNode {
  const byId = useDocument((state) => state.derived.byId);
  return (
    <span className="number-tags">
      {[id, primed(id)]
        .flatMap((bar) => tubesOfBar(byId, bar))
        .map(({ number }) => (
          <span className="number-tag" key={number}>
            {number}
          </span>
        ))}
    </span>
  );
}

export function MembersTable(): ReactNode {
  const job = useDocument((state) => state.job);
  const selection = useEditor((state) => state.selection);
  const select = useEditor((state) => state.select);
  const { sections, lengthUnit } = job;
  const draw = useEditor((state) => state.beginDrawing);
  const marks = useMarks(useMemo(() => job.members.map(({ id }) => id), [job.members]));
  const columns = useMemo((): Column<Member>[] => {
    const choices = sectionChoices({ sections, lengthUnit });
    return [
      NUMBER,
      textColumn<Member>({
        header: 'Member',
        step: 'Rename a member',
        value: (member) => member.name,
        change: (before, { id }, name) => updateMember(before, id, { name }),
      }),
      choiceColumn<Member>({
        header: 'Section',
        small: true,
        step: 'Change a section',
        value: (member) => member.section,
        choices: () => choices,
        change: (before, { id }, section) => updateMember(before, id, { section }),
      }),
      { header: 'Ends', small: true, show: (member) => member.ends.map((end) => FIT_SHORT[end.fit]).join(' · ') },
    ];
  }, [sections, lengthUnit]);
  return (
    <>
      {job.members.length === 0 ? (
        <>
          {job.nodes.length === 0 && (
            <Suspense>
              <StartChoice />
            </Suspense>
          )}
          <p className="empty">
            <strong>No members yet.</strong> Put nodes where the main hoop stands, then draw the hoop from node to node:
            its ends first and last, its sharp corners between. What is built first is listed first.
          </p>
        </>
      ) : (
        <>
          <MarkSwitch marks={marks} noun="member" />
          <EditTable
            caption="Members in build order"
            marks={marks}
            rows={job.members}
            columns={columns}
            rowId={(member) => member.id}
            rowName={(member) => member.name}
            selected={selection?.kind === 'tube' ? (memberOfTube(job.members, selection.id)?.id ?? null) : null}
            onSelect={(member) => select({ kind: 'tube', id: tubesOfMember(member)[0]! })}
          />
          {marks.marked.size > 0 && (
            <Suspense>
              <SeveralMembers marks={marks} />
            </Suspense>
          )}
        </>
      )}
      <p className="row">
        <button type="button" className="press press-live" aria-keyshortcuts="T" title="Draw a tube (T)" onClick={draw}>
          Draw a tube
        </button>
        <span className="small">In the bay, from place to place.</span>
      </p>
      <Section title="Member by its nodes" open={job.members.length === 0}>
        <Suspense>
          <NewMember />
        </Suspense>
      </Section>
      {job.members.length > 0 && (
        <>
          <Section title="Build order" onlyOpen>
            <Suspense>
              <BuildOrder />
            </Suspense>
          </Section>
          <Section title="Fitting" onlyOpen>
            <Suspense>
              <Fitting />
            </Suspense>
          </Section>
          <Section title="Numbers">
            <Suspense>
              <Numbers />
            </Suspense>
          </Section>
        </>
      )}
    </>
  );
}
