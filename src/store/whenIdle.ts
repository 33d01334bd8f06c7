/** What can wait until the page has nothing else to do. */

/** How long the page is left alone first, ms, in a browser that does not say when it is idle. */
const SPARE = 200;

/** Runs the task once, when the page has nothing else to do, and answers how to drop it. */
export function whenIdle(task: () => void): () => void {
  if (typeof requestIdleCallback === 'function') {
    const asked = requestIdleCallback(task);
    return () => cancelIdleCallback(asked);
  }
  const asked = setTimeout(task, SPARE);
  return () => clearTimeout(asked);
}
