/** How one end of a member is cut: to what it meets, to chosen tubes, flat on a plate, or square; and what is left on. */
import type { ReactNode } from 'react';
import { onFoot, standOnNew } from '../../core/edit/feet.ts';
import { leaveLong, setEnd } from '../../core/edit/members.ts';
import type { EndFit } from '../../core/job/kinds/end.ts';
import type { Member } from '../../core/job/kinds/member.ts';
import type { FootId, TubeRef } from '../../core/job/reference.ts';
import type { Job } from '../../core/job/types.ts';
import { useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { LengthField } from '../fields/Fields.tsx';
import { JobSelect } from '../fields/JobSelect.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { tubeName } from '../../core/solve/names.ts';
import { endInWords, whyUnmitred } from '../../core/words/ends.ts';
import { fitChoices, tubeChoices } from './choices.ts';
import { footTrimOf } from './foot-trim.ts';
import { PlaneOfEnd } from './PlaneOfEnd.tsx';

export function EndEditor({ member, which }: { member: Member; which: 0 | 1 }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const end = member.ends[which];
  const solved = derived.bars.get(member.id)?.ends[which];
  const letter = which === 0 ? 'A' : 'B';
  const step = `End ${letter} of ${member.name}`;
  const change = (job: Job, fit: EndFit): Job => setEnd(job, member.id, which, fit);
  const met = solved?.cuts.map((cut) => cut.against) ?? [];
  return (
    <section className="end" aria-label={`End ${letter}`}>
      <h4>
        <span className="end-letter">{letter}</span>
        {solved && <span className="small">now {endInWords(derived, solved)}</span>}
      </h4>
      <div className="fields fields-two">
        <JobSelect
          label="Cut"
          value={end.fit}
          choices={fitChoices(derived.job)}
          step={step}
          change={(job, fit) => {
            if (fit === 'new-plate') return standOnNew(job, member.id, which, 'plate', end, footTrimOf(job));
            if (fit === 'new-box') return standOnNew(job, member.id, which, 'box', end, footTrimOf(job));
            return change(
              job,
              asFit(
                fit as EndFit['fit'],
                end,
                met,
                tubeChoices(job, member.id)[0]?.value,
                job.feet[0]?.id,
                footTrimOf(job),
              ),
            );
          }}
        />
        <LengthField
          label="Left long"
          value={end.allowance}
          {...jobEdit<number>(`Left long, ${step}`, (job, mm) => leaveLong(job, member.id, which, mm))}
        />
      </div>
      {end.fit === 'cope' && <Against member={member} end={end} step={step} change={change} />}
      {end.fit === 'mitre' && solved?.unmitred && (
        <p className="entry-note entry-note-refused" role="status">
          <span aria-hidden="true">▲ </span>
          {`No mitre comes of it, it is cut square: ${whyUnmitred(solved.unmitred, tubeName(derived, end.with))}.`}
        </p>
      )}
      {end.fit === 'mitre' && (
        <JobSelect
          label="Mitred with"
          value={end.with}
          choices={tubeChoices(derived.job, member.id)}
          step={step}
          change={(job, mate) => change(job, { ...end, with: mate })}
        />
      )}
      {(end.fit === 'plate' || end.fit === 'foot') && (
        <PlaneOfEnd member={member} which={which} end={end} step={step} change={change} />
      )}
    </section>
  );
}

/** The same end with another fit; an explicit cope starts from what the end meets now. */
function asFit(
  fit: EndFit['fit'],
  end: EndFit,
  met: readonly TubeRef[],
  other: TubeRef | undefined,
  foot: FootId | undefined,
  footTrim: number,
): EndFit {
  const { allowance } = end;
  const normal = 'normal' in end ? end.normal : ([0, 0, 1] as const);
  if (fit === 'cope') return { fit, against: met.length > 0 ? met : other === undefined ? [] : [other], allowance };
  if (fit === 'plate') return { fit, normal, allowance };
  if (fit === 'foot' && foot !== undefined) return onFoot(end, foot, footTrim);
  if (fit === 'mitre' && other !== undefined) return { fit, with: met[0] ?? other, allowance };
  return { fit: fit === 'square' ? 'square' : 'auto', allowance };
}

function Against(props: {
  member: Member;
  end: Extract<EndFit, { fit: 'cope' }>;
  step: string;
  change: (job: Job, fit: EndFit) => Job;
}): ReactNode {
  const { member, end, step, change } = props;
  const derived = useDocument((state) => state.derived);
  const left = tubeChoices(derived.job, member.id).filter((choice) => !end.against.includes(choice.value));
  return (
    <>
      <ul className="chips" aria-label="Coped to">
        {end.against.map((tube) => (
          <li key={tube}>
            <Command
              quiet
              step={step}
              label={`Do not cope to ${tubeName(derived, tube)}`}
              disabled={end.against.length === 1}
              run={(job) => change(job, { ...end, against: end.against.filter((other) => other !== tube) })}
            >
              {tubeName(derived, tube)} ×
            </Command>
          </li>
        ))}
      </ul>
      <JobSelect
        label="Cope to one more"
        value=""
        choices={left}
        step={step}
        change={(job, tube) => change(job, { ...end, against: [...end.against, tube] })}
      />
    </>
  );
}
