/** All that a page knows of pairing before it is fetched. What stands there is looked at by invitation.ts. */

/** What is remembered of being paired stands under it in the browser's settings. */
export const PAIRING_KEY = 'cagewright.pairing';

/** The page was opened by an invitation. */
export const isInvited = (): boolean => location.hash.startsWith('#pair=');

/** Whether this page is paired, or is to be. */
export function isPairedHere(): boolean {
  try {
    return isInvited() || localStorage.getItem(PAIRING_KEY) !== null;
  } catch {
    return false; // nothing is kept here, so nothing is remembered
  }
}
