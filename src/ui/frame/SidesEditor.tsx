/** Which measured points a mirrored member follows, and how it comes to follow others: with how far that takes which nodes. */
import { useDeferredValue, useMemo, type ReactNode } from 'react';
import type { Derived } from '../../core/derive.ts';
import type { Edited } from '../../core/edit/records.ts';
import type { Fault } from '../../core/job/fault.ts';
import type { Member } from '../../core/job/kinds/member.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Job } from '../../core/job/types.ts';
import { eachSideItsOwn } from '../../core/shape/each-side.ts';
import { follow } from '../../core/shape/follow.ts';
import { followedBy, type Followed, type Following, type Guide } from '../../core/shape/followed.ts';
import { listed } from '../../core/words/lists.ts';
import { FOLLOWED_WORDS } from '../../core/words/sides.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { movesInWords, whyOf } from './moves-in-words.ts';

const FOLLOWS: Readonly<Record<Following['side'], string>> = {
  ...FOLLOWED_WORDS,
  mixed: 'left and right points, mixed',
  none: 'no measured point',
};

export function SidesEditor({ member }: { member: Member }): ReactNode {
  // What a press would do is worked out after what was typed is shown.
  const derived = useDeferredValue(useDocument((state) => state.derived));
  const { id } = member;
  const following = useMemo(() => followedBy(derived.job, id), [derived, id]);
  return (
    <section className="end" aria-label="Left and right">
      <p className="small">
        <strong>Follows {FOLLOWS[following.side]}.</strong> {linesOf(derived, following).join(' ')}
      </p>
      <FollowKeys member={member} derived={derived} />
      <TwoMembersKey member={member} derived={derived} />
    </section>
  );
}

/** "By the left points: Floor, left. Through Main hoop the left points." */
function linesOf({ job }: Derived, { own, through }: Following): readonly string[] {
  const by = (Object.keys(FOLLOWED_WORDS) as Followed[]).flatMap((side) => {
    const points = new Set(own.filter((guide) => guide.side === side).map(nameOf));
    return points.size === 0 ? [] : [`Placed by ${FOLLOWED_WORDS[side]}: ${[...points].join('; ')}.`];
  });
  const under = [...through].map(([host, guides]) => {
    const sides = [...new Set(guides.map(({ side }) => FOLLOWED_WORDS[side]))];
    const name = job.members.find((member) => member.id === host)?.name ?? host;
    return `Through ${shownName(name)} by ${listed(sides)}.`;
  });
  return [...by, ...under];
}

const nameOf = ({ side, point, pair }: Guide): string =>
  side === 'mean' && pair !== null
    ? `${shownName(pair.left.name)} and ${shownName(pair.right.name)}`
    : shownName(point.name);

function FollowKeys({ member: { id, name }, derived }: { member: Member; derived: Derived }): ReactNode {
  const { job } = derived;
  const keys = useMemo(
    () =>
      (Object.keys(FOLLOWED_WORDS) as Followed[]).map((side) => {
        const edited = follow(derived.job, id, side);
        return { side, edited, effect: isRefused(edited) ? whyOf(edited) : movesInWords(derived, edited) };
      }),
    [derived, id],
  );
  const [first] = keys;
  if (keys.every(({ edited, effect }) => isRefused(edited) && effect === first!.effect)) {
    return <p className="small">It cannot follow the other side: {first!.effect}.</p>;
  }
  return keys.map(({ side, edited, effect }) =>
    edited === job ? null : (
      <div className="switch" key={side}>
        <Command
          step={`${name} follows ${FOLLOWED_WORDS[side]}`}
          disabled={isRefused(edited)}
          run={(before) => follow(before, id, side)}
        >
          {`Follow ${FOLLOWED_WORDS[side]}`}
        </Command>
        <span className="small">{effect}</span>
      </div>
    ),
  );
}

function TwoMembersKey({ member: { id, name }, derived }: { member: Member; derived: Derived }): ReactNode {
  const effect = useMemo(() => {
    const two = eachSideItsOwn(derived.job, derived, id);
    if (two === null) return '';
    if (isFaults(two)) return whyOf(two);
    const others = two.members.filter((each) => each !== id);
    const names = others.map((each) =>
      shownName(derived.job.members.find((member) => member.id === each)?.name ?? each),
    );
    const also = names.length === 0 ? '' : ` Made two with it: ${names.join('; ')}.`;
    return `Made two members, each on the points of its side; tubes keep their numbers.${also} ${movesInWords(derived, two.job, two.became)}`;
  }, [derived, id]);
  return (
    <div className="switch">
      <Command step={`Each side of ${name} its own`} run={(before) => twoMembers(before, id)}>
        Each side its own
      </Command>
      <span className="small">{effect}</span>
    </div>
  );
}

function twoMembers(job: Job, id: string): Edited {
  const two = eachSideItsOwn(job, jobDocument.getState().derived, id);
  return two === null ? job : isFaults(two) ? two : two.job;
}

const isRefused = (edited: Edited): edited is readonly Fault[] => Array.isArray(edited);
const isFaults = (answer: object): answer is readonly Fault[] => Array.isArray(answer);
