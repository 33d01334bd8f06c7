/** Primes: a reference with a trailing ' is the mirror image, in y = 0, of what the bare id names. */

export const isPrimed = (reference: string): boolean => reference.endsWith("'");

export const bareId = (reference: string): string => (isPrimed(reference) ? reference.slice(0, -1) : reference);

/** The reference to the mirror image: adds the prime, or takes it away. */
export const primed = (reference: string): string => (isPrimed(reference) ? bareId(reference) : `${reference}'`);
