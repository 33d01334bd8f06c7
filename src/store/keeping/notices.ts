/** What a person reads of the kept work: the words of the strip. */
import type { Loss } from '../../core/session/kept.ts';
import type { Found } from './findKept.ts';
import type { Notice, Version } from '../types.ts';

const plain = (message: string): Notice => ({ message, damaged: [] });

export const demoNotice = plain('The demo job could not be fetched.');

export const unreachedNotice = plain(
  'The work kept in this browser cannot be reached, so the demo is shown. Nothing of it is changed. It is looked for again by itself.',
);

const LOST: Readonly<Record<Loss, string>> = {
  damaged: 'Some of the steps kept with this job are damaged',
  'other version':
    'Steps kept with this job were made with another version of Cagewright and cannot all be carried over',
};

/** Steps that cannot be used. */
export const historyNotice = (why: Loss, steps: Version): Notice => ({
  message: `${LOST[why]}, so Undo or Redo reaches less far. The job itself is whole. The steps are set aside, under Earlier versions.`,
  damaged: [steps],
});

export const stepNotice = plain('The kept history is damaged: that step cannot be taken.');

export const overwrittenNotice = plain(
  'Nothing was taken back: all of that step was written over on another device since. Undo goes on with the step before it.',
);

export const builtOnNotice = plain(
  'That step stays: something was done on another device since that needs it. Take that back there first.',
);

export const notTakenNotice = plain(
  "The other tab's work could not be taken: this browser's storage did not answer as it should. This job stays as it is; try again.",
);

const LATER = 'The work kept in this browser can be reached again. It stands under Earlier versions.';
const GONE = "The other tab's work is no longer there.";
const STAYS = 'This job stays, and is kept in a place of its own.';
const NEWER =
  'A job kept in this browser was made by a newer Cagewright. It stays where it is, untouched: load this page again to work with the newer one.';

/** What was found when the page started; `isAnotherOpen` where a person has opened or begun another job since. */
export function startNotice(found: Found, isAnotherOpen: boolean): Notice | null {
  const wrong = wrongWords(found);
  if (isAnotherOpen) return noticeOf(found, [...wrong, ...(found.opened === null ? [] : [LATER])]);
  if (wrong.length === 0) return null;
  return noticeOf(found, [...wrong, found.opened === null ? 'The demo is shown.' : 'The next good copy is shown.']);
}

/** What was found where the other tab's work should be. */
export function takenNotice(found: Found): Notice | null {
  const wrong = wrongWords(found);
  if (found.opened !== null) return noticeOf(found, wrong);
  return noticeOf(found, [...(wrong.length === 0 ? [GONE] : wrong), STAYS]);
}

const noticeOf = ({ damaged }: Found, words: readonly string[]): Notice | null =>
  words.length === 0 ? null : { message: words.join(' '), damaged };

function wrongWords({ damaged, isNewerThere }: Found): readonly string[] {
  const [what, them] = damaged.length === 1 ? ['A job', 'it'] : [`${damaged.length} jobs`, 'them'];
  const unread = `${what} kept in this browser could not be read. What is left of ${them} is set aside, under Earlier versions.`;
  return [...(damaged.length > 0 ? [unread] : []), ...(isNewerThere ? [NEWER] : [])];
}
