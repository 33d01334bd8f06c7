/** A member that has its like on the other side of the car: the two made one that is mirrored, with what comes of it. */
import { useDeferredValue, useMemo, type ReactNode } from 'react';
import type { Derived } from '../../core/derive.ts';
import type { Edited } from '../../core/edit/records.ts';
import type { Fault } from '../../core/job/fault.ts';
import type { Member } from '../../core/job/kinds/member.ts';
import type { MemberId } from '../../core/job/reference.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Job } from '../../core/job/types.ts';
import { oneForBothSides } from '../../core/shape/one-for-both.ts';
import { listed } from '../../core/words/lists.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { movesInWords, whyOf } from './moves-in-words.ts';

export function OneForBoth({ member: { id, name } }: { member: Member }): ReactNode {
  // What a press would do is worked out after what was typed is shown.
  const derived = useDeferredValue(useDocument((state) => state.derived));
  const effect = useMemo(() => effectOf(derived, id), [derived, id]);
  if (effect === null) return null;
  return (
    <div className="switch">
      <Command step={`${name} for both sides`} run={(before) => oneMember(before, id)}>
        One for both sides
      </Command>
      <span className="small">{effect}</span>
    </div>
  );
}

/** Null where no member stands on the other side as this one does. */
function effectOf(derived: Derived, id: MemberId): string | null {
  const one = oneForBothSides(derived.job, derived, id);
  if (one === null) return null;
  if (isFaults(one)) return `Not as they are: ${whyOf(one)}.`;
  const [own, ...others] = [...one.pairs.values()].map((each) =>
    shownName(derived.job.members.find((member) => member.id === each)?.name ?? each),
  );
  const also = others.length === 0 ? '' : ` So for ${listed(others)}.`;
  return `The mirror image of this one takes the place of ${own}, and its number.${also} ${movesInWords(derived, one.job, one.became)}`;
}

function oneMember(job: Job, id: MemberId): Edited {
  const one = oneForBothSides(job, jobDocument.getState().derived, id);
  return one === null ? job : isFaults(one) ? one : one.job;
}

const isFaults = (answer: object): answer is readonly Fault[] => Array.isArray(answer);
