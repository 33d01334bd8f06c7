/** What was found, each with its sign, word and colour; a press goes to its place in the bay. */
import { memo, type ReactNode } from 'react';
import type { Finding, Severity } from '../../core/checks/types.ts';
import { findingInWords, sourceInWords } from '../../core/words/findings.ts';
import { editor, useDocument, useEditor } from '../../store/page.ts';
import type { Selection } from '../../store/types.ts';

const SIGNS: Readonly<Record<Severity, { sign: string; word: string }>> = {
  error: { sign: '×', word: 'Error' },
  warning: { sign: '!', word: 'Warning' },
  note: { sign: 'i', word: 'Note' },
};

export function FindingsList({ findings }: { findings: readonly Finding[] }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const selection = useEditor((state) => state.selection);
  return (
    <ul className="findings">
      {findings.map((finding, index) => {
        const chosen = selection?.kind === 'tube' && selection.id === finding.tube;
        return (
          <Found
            key={index}
            finding={finding}
            message={findingInWords(finding, derived)}
            source={sourceInWords(finding, derived)}
            chosen={chosen}
          />
        );
      })}
    </ul>
  );
}

interface FoundProps {
  readonly finding: Finding;
  readonly message: string;
  readonly source: string;
  readonly chosen: boolean;
}

/** An edit leaves most findings as they were: those are not drawn again. */
const Found = memo(function Found(props: FoundProps): ReactNode {
  const { finding, chosen } = props;
  return (
    <li>
      <button
        type="button"
        className={`finding finding-${finding.severity}${chosen ? ' chosen' : ''}`}
        aria-current={chosen || undefined}
        onClick={() => editor.getState().goTo(finding.at, placeOf(finding))}
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
        </span>
      </button>
    </li>
  );
});

const placeOf = ({ tube }: Finding): Selection => ({ kind: 'tube', id: tube });
