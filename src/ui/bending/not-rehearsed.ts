/** What is said of a tube that has no rehearsal and will have none: that is no reason to wait, and no sign that it keeps clear. */
export const notRehearsedInWords = (why: string): string =>
  `This tube could not be rehearsed, which is a fault of the program: ${why}.`;
