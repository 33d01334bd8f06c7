/** How long work lets others in between its pieces. */

/**
 * Called between pieces of work: how many of how many are done. What it returns is awaited, which is where a page comes to
 * breathe; if it rejects, the export ends there and rejects with the same.
 */
export type Going = (done: number, total: number) => Promise<void>;

/** For work that nobody waits on. */
export const unwatched: Going = () => Promise.resolve();
