/** What is done to a whole member in one step, each with what comes of it: counted from its other end, a corner put in, split, joined with another. */
import { useDeferredValue, useMemo, useState, type ReactNode } from 'react';
import type { Derived } from '../../core/derive.ts';
import type { Edited } from '../../core/edit/records.ts';
import type { Fault } from '../../core/job/fault.ts';
import type { Member } from '../../core/job/kinds/member.ts';
import { bareId, type MemberId, type NodeRef } from '../../core/job/reference.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Job } from '../../core/job/types.ts';
import { insertBend } from '../../core/shape/insert-bend.ts';
import { joinMembers, jointsOf } from '../../core/shape/join.ts';
import { namedPlaces, type NamedPlace } from '../../core/shape/places-along.ts';
import { reverseMember } from '../../core/shape/reverse.ts';
import { splitMember } from '../../core/shape/split.ts';
import { nodeName, tubeName } from '../../core/solve/names.ts';
import { listed } from '../../core/words/lists.ts';
import { editor, jobDocument, useDocument } from '../../store/page.ts';
import { LengthField, SelectField } from '../fields/Fields.tsx';
import { Command } from '../kit/Command.tsx';

export function MemberChanges({ member }: { member: Member }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const [typed, setTyped] = useState<number | null>(null);
  const { id, name } = member;
  const bar = derived.bars.get(id);
  if (bar === undefined) return null;
  const places = namedPlaces(derived, bar);
  const along = typed ?? places[0]?.at ?? bar.developedLength / 2;
  const chosen = places.findIndex(({ at }) => at === along);
  const bendsBefore = bar.bends.filter(({ end }) => end <= along).length;
  const later = countedAfter(derived.job, id, bendsBefore);
  const frame = () => jobDocument.getState().derived;

  function showNode(): void {
    const added = jobDocument.getState().job.nodes.at(-1);
    if (added) editor.getState().select({ kind: 'node', id: added.id });
  }

  return (
    <>
      <div className="switch">
        <Command step={`Reverse ${name}`} run={(before) => reverseMember(before, frame(), id)}>
          Reverse: end B becomes end A
        </Command>
        <span className="small">
          The steel stays, and numbers of tubes. Bends, distances, marks and the letters of the ends count from the new
          end A: print its sheet and wraps anew.
        </span>
      </div>
      <div className="fields">
        <SelectField
          label="Place on it"
          value={chosen === -1 ? '' : String(chosen)}
          choices={places.map((place, i) => ({ value: String(i), label: placeInWords(derived, place) }))}
          onChoose={(index) => setTyped(places[Number(index)]?.at ?? null)}
        />
        <LengthField
          label="So far along it from end A"
          value={along}
          commit={(value) => {
            setTyped(value);
            return [];
          }}
        />
      </div>
      <div className="switch">
        <Command
          step={`New corner in ${name}`}
          run={(before) => insertBend(before, frame(), id, along)}
          onDone={showNode}
        >
          Put a corner in there
        </Command>
        <span className="small">
          In line at first, so nothing moves. To bend it there, choose “at fixed figures” under Placed on the new node’s
          card, and move the node.
          {later.length > 0 &&
            ` Then the bends after it have new numbers, and ${listed(later)} ${later.length === 1 ? 'is' : 'are'} counted from them.`}
        </span>
      </div>
      <div className="switch">
        <Command
          step={`Split ${name}`}
          run={(before) => splitMember(before, frame(), id, along)}
          onDone={() => setTyped(null)}
        >
          Split it there
        </Command>
        <span className="small">
          {member.cutBy === undefined
            ? 'Two members in line, the steel where it was. End A’s part keeps its number, the other takes a new one; how it was fed is asked anew.'
            : 'Its pieces become members of their own there; they stay as they are made, numbers too. At another place it cannot be split.'}
        </span>
      </div>
      <Joints member={member} />
    </>
  );
}

/** The names of nodes that are placed from a bend of the member after so many. */
const countedAfter = ({ nodes }: Job, id: MemberId, bends: number): readonly string[] =>
  nodes.flatMap(({ name, at }) =>
    at.kind === 'on' && bareId(at.member) === id && (at.bend ?? 0) > bends ? [shownName(name)] : [],
  );

function placeInWords(derived: Derived, { node, straight, by }: NamedPlace): string {
  if (by !== null) return `where ${tubeName(derived, by)} runs through`;
  return node === null ? `middle of straight ${straight}` : `at ${nodeName(derived.job, node)}`;
}

/** Every member that ends where this one does: what joins them, or why nothing can. */
function Joints({ member }: { member: Member }): ReactNode {
  // What a press would do is worked out after what was typed is shown.
  const derived = useDeferredValue(useDocument((state) => state.derived));
  const { id, name } = member;
  const joints = useMemo(
    () =>
      jointsOf(derived.job, id)
        .map((joint) => ({ joint, ...whatComesOf(joinMembers(derived.job, derived, id, joint), id) }))
        .toSorted((a, b) => Number(a.refused !== null) - Number(b.refused !== null)),
    [derived, id],
  );
  return joints.map(({ joint, refused, inPieces }) => {
    const other = memberName(derived.job, joint.other.member);
    const end = joint.own === 0 ? 'A' : 'B';
    const key = `${joint.own} ${joint.other.member} ${joint.other.which}`;
    if (refused !== null) {
      return <p className="small" key={key}>{`Not to be joined with ${other} at end ${end}: ${refused}.`}</p>;
    }
    return (
      <div className="switch" key={key}>
        <Command
          step={`Join ${name} and ${other}`}
          run={(before) => joinMembers(before, jobDocument.getState().derived, id, joint)}
        >
          {`Join with ${other} at end ${end}`}
        </Command>
        <span className="small">
          {inPieces
            ? `One bar in pieces, cut where they meet. They stay as they are made, numbers too; ${other} goes as a member.`
            : `One tube through ${nodeName(derived.job, nodeOf(member, joint.own))}, straight on or bent there. ${other} goes, and its number with it.`}
        </span>
      </div>
    );
  });
}

const whatComesOf = (edited: Edited, id: MemberId) =>
  isFaults(edited)
    ? { refused: edited.map(({ message }) => message).join('; '), inPieces: false }
    : { refused: null, inPieces: edited.members.find((each) => each.id === id)?.cutBy !== undefined };

const isFaults = (edited: Edited): edited is readonly Fault[] => Array.isArray(edited);

const memberName = ({ members }: Job, id: MemberId): string =>
  shownName(members.find((member) => member.id === id)?.name ?? id);

const nodeOf = ({ path }: Member, end: 0 | 1): NodeRef => path.at(end === 0 ? 0 : -1)!;
