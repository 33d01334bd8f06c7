/** What a person is told of the kept work, in words. */
import type { Damaged } from './persistence.ts';
import type { Notice } from './types.ts';

const said = (message: string): Notice => ({ message, damaged: [] });

export const demoNotice = said('The demo job could not be fetched.');

export const laterNotice = said(
  'The work kept in this browser can be reached again. It stands under Earlier versions.',
);

export const unreachedNotice = said(
  'The work kept in this browser cannot be reached, so the demo is shown. Nothing of it is changed: load the page again to look for it once more.',
);

export const historyNotice = said(
  'Some of the steps kept with this job are damaged, so Undo or Redo reaches less far. The job itself is whole.',
);

export const stepNotice = said('The kept history is damaged: that step cannot be taken.');

export function damagedNotice(damaged: readonly Damaged[], isAnotherShown: boolean): Notice {
  const [what, them] = damaged.length === 1 ? ['A job', 'it'] : [`${damaged.length} jobs`, 'them'];
  const shown = isAnotherShown ? 'The next good copy is shown.' : 'The demo is shown.';
  const message = `${what} kept in this browser could not be read. What is left of ${them} is set aside, under Earlier versions. ${shown}`;
  return { message, damaged };
}
