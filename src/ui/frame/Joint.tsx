/** The joint at the chosen node: what runs through, what ends there in the order of fitting, and one key that has two change places. */
import { useMemo, type ReactNode } from 'react';
import type { NodeRef } from '../../core/job/reference.ts';
import { fitBefore, whyNotBefore } from '../../core/shape/fit-before.ts';
import { isEnd, jointAt, type AtJoint, type EndAtJoint } from '../../core/shape/joint-order.ts';
import { tubeName } from '../../core/solve/names.ts';
import { tubesOfBar } from '../../core/solve/bar-tubes.ts';
import { endInWords } from '../../core/words/ends.ts';
import { useDocument, useEditor } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';

export function Joint({ node }: { readonly node: NodeRef }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const apart = useEditor((state) => state.apart);
  const drawApart = useEditor((state) => state.drawApart);
  const joint = useMemo(() => jointAt(derived, node), [derived, node]);
  if (joint.length < 2) return null;
  const called = ({ bar }: AtJoint): string => tubeName(derived, bar.id);
  return (
    <>
      <h4>Joint</h4>
      <p className="small">In the order of fitting: an end is coped to what is there before it.</p>
      <ol className="joint">
        {joint.map((one, place) => {
          const other = lastBefore(joint, place);
          return (
            <li key={one.bar.id}>
              <div className="joint-row">
                <span>
                  <span className="joint-nth">{place + 1}.</span>
                  <span className="number-tags">
                    {tubesAt(one, tubesOfBar(derived.byId, one.bar.id)).map(({ number }) => (
                      <span className="number-tag" key={number}>
                        {number}
                      </span>
                    ))}
                  </span>
                  {called(one)}
                  <span className="small">
                    ,{' '}
                    {isEnd(one)
                      ? `end ${'AB'[one.which]} ${endInWords(derived, one.bar.ends[one.which])}`
                      : 'runs through'}
                  </span>
                </span>
                {isEnd(one) && other !== null && (
                  <Command
                    quiet
                    step={`Fit ${called(one)} before ${called(other)}`}
                    label={`Fit ${called(one)} before ${called(other)}`}
                    run={(job) => fitBefore(job, derived, one, other)}
                  >
                    {`before ${joint.indexOf(other) + 1}`}
                  </Command>
                )}
              </div>
            </li>
          );
        })}
      </ol>
      <button type="button" className="press press-quiet" onClick={() => drawApart(!apart)}>
        {apart ? 'Draw the joint together' : 'Draw the joint apart'}
      </button>
    </>
  );
}

/** The nearest before it in the list that it can change places with. */
function lastBefore(joint: readonly AtJoint[], place: number): EndAtJoint | null {
  const other = joint.slice(0, place).findLast((each) => whyNotBefore(joint[place]!, each) === null);
  return other !== undefined && isEnd(other) ? other : null;
}

/** Of a bar in pieces that ends there, the piece that does. */
const tubesAt = <T,>(one: AtJoint, tubes: readonly T[]): readonly T[] =>
  isEnd(one) ? tubes.slice(one.which === 0 ? 0 : -1).slice(0, 1) : tubes;
