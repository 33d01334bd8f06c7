/** Somebody has opened the page by the code on a printed sheet: its tube is shown in the Shop, and whether the paper still goes for it. */
import { useEffect, type ReactNode } from 'react';
import { readSheetHash } from '../core/job/sheet-address.ts';
import { shownName } from '../core/job/shown.ts';
import { revisionOf } from '../core/solve/revision.ts';
import { isOfJob, otherJobInWords, sheetInWords } from '../core/words/sheet.ts';
import { editor, useDocument } from '../store/page.ts';
import { forgetToMake } from '../ui/bending/to-make.ts';

export default function OfSheet({ hash }: { readonly hash: string }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const opened = useDocument((state) => state.opened);
  const { job, byId } = derived;
  const sheet = readSheetHash(hash);
  const isOwn = sheet !== null && isOfJob(sheet, job.name);
  const first = isOwn ? sheet.tubes.find(({ id }) => byId.has(id))?.id : undefined;
  // Once for each job that is opened: what is chosen afterwards stays chosen.
  useEffect(() => {
    if (first !== undefined) show(first);
  }, [hash, opened, first]);
  if (sheet === null) return null;
  return (
    <>
      {!isOwn && <p>{otherJobInWords(sheet, job.name)}</p>}
      {isOwn &&
        sheet.tubes.map(({ id, revision }) => {
          const tube = byId.get(id);
          const now = tube === undefined ? null : revisionOf(job, tube);
          const said = sheetInWords(revision, now);
          return (
            <p key={id}>
              <strong>{tube === undefined ? `Tube “${shownName(id)}”.` : `Tube ${tube.number}, ${tube.name}.`}</strong>{' '}
              {now === revision ? (
                said
              ) : (
                <strong>
                  <span aria-hidden="true">▲ </span>
                  {said}
                </strong>
              )}{' '}
              {tube !== undefined && sheet.tubes.length > 1 && (
                <button type="button" className="press press-quiet" onClick={() => show(id)}>
                  Show tube {tube.number}
                </button>
              )}
            </p>
          );
        })}
    </>
  );
}

function show(id: string): void {
  forgetToMake();
  editor.getState().setStation('shop');
  editor.getState().select({ kind: 'tube', id });
}
