/** While the kept work is looked for, in the band and in the place of bay and station. */
export const WAITING = 'Bringing the job out';
