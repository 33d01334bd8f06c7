/** What is done to a whole member in one step, each with what comes of it: counted from its other end, a bend put in. */
import { useState, type ReactNode } from 'react';
import type { Member } from '../../core/job/kinds/member.ts';
import { insertBend } from '../../core/shape/insert-bend.ts';
import { namedPlaces } from '../../core/shape/places-along.ts';
import { reverseMember } from '../../core/shape/reverse.ts';
import { nodeName } from '../../core/solve/names.ts';
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
          The steel stays. Bends, distances and marks count from the new end A; numbers of tubes stay.
        </span>
      </div>
      <div className="fields">
        <SelectField
          label="Place on it"
          value={chosen === -1 ? '' : String(chosen)}
          choices={places.map(({ node, straight }, i) => ({
            value: String(i),
            label: node === null ? `middle of straight ${straight}` : `at ${nodeName(derived.job, node)}`,
          }))}
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
          In line at first, so nothing moves: the tube bends there once its node is placed another way and moved.
        </span>
      </div>
    </>
  );
}
