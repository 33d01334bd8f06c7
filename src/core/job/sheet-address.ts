/**
 * What the code on a tube's sheet says, behind the address of the page: which tubes stand on it, of what revision, and of which job. Nothing of it is
 * sent anywhere: what stands behind # stays in the browser. docs/file-formats.md has it key by key.
 */

export interface SheetAddress {
  /** The job's name, cut short as `jobInAddress`. */
  readonly job: string;
  /** One, or two where they share the sheet; each with the revision that was printed. */
  readonly tubes: readonly { readonly id: string; readonly revision: string }[];
}

/** Of where no page is: on the command line. */
export const NO_PAGE = 'cagewright:';

/** Characters of a job's name in a code: enough to tell two jobs of a shop apart, and the squares stay large. */
const LONGEST_JOB = 24;
/** More than a sheet holds, longer than an id may be: whatever comes by an address is looked at no further. */
const MOST_TUBES = 8;
const LONGEST = 2000;

/** As much of a job's name as an address has. */
export const jobInAddress = (name: string): string => Array.from(name).slice(0, LONGEST_JOB).join('').trim();

/** "#tube=hoop&revision=7K2F&job=Saloon". */
export function sheetHash({ job, tubes }: SheetAddress): string {
  const words = new URLSearchParams(
    tubes.flatMap(({ id, revision }) => [
      ['tube', id],
      ['revision', revision],
    ]),
  );
  words.append('job', jobInAddress(job));
  return `#${words.toString()}`;
}

/** What such a hash says; null of any other. */
export function readSheetHash(hash: string): SheetAddress | null {
  if (hash.length > LONGEST || !hash.startsWith('#')) return null;
  const words = new URLSearchParams(hash.slice(1));
  const [ids, revisions] = [words.getAll('tube'), words.getAll('revision')];
  if (ids.length === 0 || ids.length > MOST_TUBES || revisions.length !== ids.length) return null;
  return { job: words.get('job') ?? '', tubes: ids.map((id, i) => ({ id, revision: revisions[i]! })) };
}
