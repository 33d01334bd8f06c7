/** What is said of a printed sheet that somebody opens the page by. */
import { jobInAddress, type SheetAddress } from '../job/sheet-address.ts';
import { shownName } from '../job/shown.ts';

/** Whether the open job's name is the one that stands on the sheet. */
export const isOfJob = ({ job }: SheetAddress, name: string): boolean => jobInAddress(name) === job;

/** Of a sheet of another job than the open one. */
export const otherJobInWords = ({ job }: SheetAddress, open: string): string =>
  `This sheet is of the job “${shownName(job)}”; open here is “${shownName(open)}”. Open the sheet’s job first.`;

/** Whether the paper still goes for its tube, whose revision is `now`; null where the job has no such tube. */
export function sheetInWords(printed: string, now: string | null): string {
  if (now === null) return 'This job has no such tube: the sheet is waste paper.';
  if (now === printed) return `The sheet is of revision ${printed}, and so is the tube.`;
  return `The sheet is of revision ${shownName(printed)}; the tube is ${now} now: the sheet is waste paper, print it again.`;
}
