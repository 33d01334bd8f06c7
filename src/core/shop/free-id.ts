/** Ids for records that come into a list from elsewhere. */

/** The wanted id where it is not taken, else the letter with the first free number beyond as many as are taken. */
export function freeId(taken: ReadonlySet<string>, wanted: string, letter: string): string {
  if (!taken.has(wanted)) return wanted;
  let number = taken.size + 1;
  while (taken.has(`${letter}${number}`)) number += 1;
  return `${letter}${number}`;
}
