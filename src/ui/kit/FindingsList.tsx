/** What was found, each thing once, with its sign, word and colour; a press goes to its place in the bay. Below it what one edit would mend it. */
import { memo, type ReactNode } from 'react';
import type { Group } from '../../core/checks/grouped.ts';
import { canBeSeen, seenOf } from '../../core/checks/seen.ts';
import type { Finding, Severity } from '../../core/checks/types.ts';
import { markSeen, unmarkSeen } from '../../core/edit/seen.ts';
import { mended, mendsOf } from '../../core/mend/mends.ts';
import { findingInWords, sourceInWords } from '../../core/words/findings.ts';
import { alsoInWords } from '../../core/words/groups.ts';
import { mendInWords } from '../../core/words/mends.ts';
import { editor, useDocument, useEditor } from '../../store/page.ts';
import type { Selection } from '../../store/types.ts';
import { Command } from './Command.tsx';
import './findings.css';

const SIGNS: Readonly<Record<Severity, { sign: string; word: string }>> = {
  error: { sign: '×', word: 'Error' },
  warning: { sign: '!', word: 'Warning' },
  note: { sign: 'i', word: 'Note' },
};

export function FindingsList(props: {
  groups: readonly Group[];
  /** These were marked so, and can be taken up again. */
  seen?: boolean;
  /** What a press on one does besides. */
  onGo?: () => void;
}): ReactNode {
  const { groups, seen = false, onGo } = props;
  const derived = useDocument((state) => state.derived);
  const selection = useEditor((state) => state.selection);
  return (
    <ul className="findings">
      {groups.map((group) => {
        const { first, more } = group;
        const all = [first, ...more];
        const chosen = selection?.kind === 'tube' && all.some(({ tube }) => selection.id === tube);
        return (
          <li key={JSON.stringify(seenOf(first))}>
            <Found
              finding={first}
              message={findingInWords(first, derived)}
              also={alsoInWords(group, derived)}
              source={sourceInWords(first, derived)}
              chosen={chosen}
              onGo={onGo}
            />
            <div className="row finding-keys">
              {seen
                ? [
                    <Command
                      key="again"
                      quiet
                      step="Take a finding up again"
                      run={(job) => unmarkSeen(job, all.map(seenOf))}
                    >
                      Take it up again
                    </Command>,
                  ]
                : [
                    ...mendsOf(first, derived).map((mend) => {
                      const words = mendInWords(mend, derived);
                      return (
                        <Command key={words} step={words} run={(job) => mended(job, mend, first, derived)}>
                          {words}
                        </Command>
                      );
                    }),
                    canBeSeen(first) && (
                      <Command
                        key="leave"
                        quiet
                        step="Leave a finding as it is"
                        label={`Seen, leave it: ${findingInWords(first, derived)}`}
                        run={(job) => markSeen(job, all.map(seenOf))}
                      >
                        Seen, leave it
                      </Command>
                    ),
                  ]}
            </div>
          </li>
        );
      })}
    </ul>
  );
}

interface FoundProps {
  readonly finding: Finding;
  readonly message: string;
  readonly also: string | null;
  readonly source: string;
  readonly chosen: boolean;
  readonly onGo: (() => void) | undefined;
}

/** An edit leaves most findings as they were: those are not drawn again. */
const Found = memo(function Found(props: FoundProps): ReactNode {
  const { finding, chosen, onGo } = props;
  return (
    <button
      type="button"
      className={`finding finding-${finding.severity}${chosen ? ' chosen' : ''}`}
      aria-current={chosen || undefined}
      onClick={() => {
        editor.getState().goTo(finding.at, placeOf(finding));
        onGo?.();
      }}
    >
      <span className="finding-sign" aria-hidden="true">
        {SIGNS[finding.severity].sign}
      </span>
      <span className="finding-body">
        <span className="finding-head">
          <span className="finding-word">{SIGNS[finding.severity].word}</span>
          <span className="small">{props.source}</span>
        </span>
        <span className="finding-message">{props.message}</span>
        {props.also !== null && <span className="small">{props.also}</span>}
      </span>
    </button>
  );
});

const placeOf = ({ tube }: Finding): Selection => ({ kind: 'tube', id: tube });
