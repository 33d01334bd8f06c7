/** Where the member is cut by a bar that runs through it, and which of the two does. */
import type { ReactNode } from 'react';
import { cutWhere, joinWhere, swapThrough } from '../../core/edit/pieces.ts';
import type { Member } from '../../core/job/kinds/member.ts';
import { crossedBy } from '../../core/shape/crossed.ts';
import { tubeName } from '../../core/solve/names.ts';
import { useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { JobSelect } from '../fields/JobSelect.tsx';
import { tubeChoices } from './choices.ts';

export function PiecesEditor({ member }: { member: Member }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const { id, name, cutBy = [] } = member;
  const crossed = crossedBy(derived, id);
  const left = tubeChoices(derived.job, id).filter(({ value }) => crossed.includes(value) && !cutBy.includes(value));
  return (
    <>
      <p className="small">
        {cutBy.length === 0
          ? crossed.length === 0
            ? 'Made of one tube. Between its ends it crosses no other bar: there is nothing to cut it at.'
            : 'Made of one tube. Where it crosses a bar that runs through, cut it there: its halves are coped to that bar and stay in line.'
          : `Drawn as one bar, made of ${cutBy.length + 1} tubes in line, each coped to what runs through:`}
      </p>
      {cutBy.map((by) => {
        const cutter = tubeName(derived, by);
        return (
          <div className="row" key={by}>
            <span>{cutter}</span>
            <Command
              step={`${name} runs through ${cutter}`}
              label={`Cut ${cutter} instead, let ${name} run through`}
              run={(job) => swapThrough(job, id, by)}
            >
              Swap: this one runs through
            </Command>
            <Command
              quiet
              step={`${name} not cut at ${cutter}`}
              label={`Do not cut it at ${cutter}`}
              run={(job) => joinWhere(job, id, by)}
            >
              Do not cut
            </Command>
          </div>
        );
      })}
      {left.length > 0 && (
        <JobSelect
          label="Cut it where this runs through"
          value=""
          choices={left}
          step={`${name} in pieces`}
          change={(job, by) => cutWhere(job, id, by)}
        />
      )}
    </>
  );
}
