/** What other tubes come out as when a tube leads: those that could not be made first, then what changes, the greatest first. */
import type { ReactNode } from 'react';
import type { LeadChanges as Changes } from '../../core/checks/lead-changes.ts';
import type { Group } from '../../core/checks/grouped.ts';
import type { Derived } from '../../core/derive.ts';
import { tubeChangeInWords } from '../../core/words/changes.ts';
import { findingInWords } from '../../core/words/findings.ts';
import { alsoInWords } from '../../core/words/groups.ts';
import { listed } from '../../core/words/lists.ts';

/** `built` is the frame in which the tube leads. */
export function NotMade({
  groups,
  built,
  leads,
}: {
  groups: readonly Group[];
  built: Derived;
  leads: boolean;
}): ReactNode {
  if (groups.length === 0) return null;
  const tubes = new Set(groups.flatMap(({ first, more }) => [first, ...more].map(({ tube }) => tube)));
  const named = [...tubes].map((tube) => built.byId.get(tube)!).toSorted((a, b) => a.number - b.number);
  return (
    <div role="status">
      <p>
        <strong>
          {leads ? 'As it leads ' : 'If it leads '}
          {tubes.size === 1 ? '1 tube' : `${tubes.size} tubes`} cannot be made as drawn:
        </strong>{' '}
        {listed(named.map(({ number, name }) => `${number} ${name}`))}.
      </p>
      <ul>
        {groups.map((group) => (
          <li key={[group.first.id, group.first.tube, group.first.end, group.first.bend].join(' ')}>
            {findingInWords(group.first, built)} {alsoInWords(group, built)}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Folded: of a tube and its mirror image one line where both come out alike. */
export function WhatChanges({ changes: { pairs, less }, derived }: { changes: Changes; derived: Derived }): ReactNode {
  const unit = derived.job.lengthUnit;
  const more = pairs.length > 0 ? ' more' : '';
  const lesser = less > 0 && (
    <p className="small">{less === 1 ? `1${more} changes` : `${less}${more} change`} by less than a tape reads.</p>
  );
  if (pairs.length === 0) return lesser;
  return (
    <details>
      <summary>What changes</summary>
      <ul>
        {pairs.map((pair) => {
          const words = pair.map((change) => tubeChangeInWords(change, unit));
          const tubes = pair.map(({ tube }) => derived.byId.get(tube)!);
          const lines = words[0] === words[1] ? words.slice(0, 1) : words;
          return (
            <li key={pair[0]!.tube}>
              {lines.map((line, i) => (
                <p key={tubes[i]!.id}>
                  {(lines.length < tubes.length ? tubes : [tubes[i]!]).map(({ id, number, name }) => (
                    <span key={id}>
                      <span className="number-tag">{number}</span> {name}
                      {lines.length < tubes.length && id === tubes[0]!.id ? ', ' : ': '}
                    </span>
                  ))}
                  {line}
                </p>
              ))}
            </li>
          );
        })}
      </ul>
      {lesser}
    </details>
  );
}
