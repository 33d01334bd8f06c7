/** Deletes members; where others lean on them, or gussets go with them, it asks once. */
import { Suspense, useState, type ReactNode } from 'react';
import { removeSeveral } from '../../core/edit/several.ts';
import { leaningOn } from '../../core/shape/remove-bars.ts';
import { Command } from '../kit/Command.tsx';
import { AskDelete } from './later.ts';

/** `called`: "Main hoop", "3 members", as undo and the question name them. */
export function DeleteMembers(props: {
  ids: readonly string[];
  called: string;
  destroys: string;
  children: ReactNode;
}): ReactNode {
  const { ids, called } = props;
  const [asking, ask] = useState(false);
  return (
    <>
      <Command
        quiet
        destroys={props.destroys}
        step={`Delete ${called}`}
        run={(job) => {
          const removed = removeSeveral(job, 'members', ids);
          const isHeld = Array.isArray(removed) || leaningOn(job, new Set(ids)).gussets.length > 0;
          ask(isHeld);
          return isHeld ? job : removed;
        }}
      >
        {props.children}
      </Command>
      {asking && (
        <Suspense>
          <AskDelete ids={ids} called={called} close={() => ask(false)} />
        </Suspense>
      )}
    </>
  );
}
