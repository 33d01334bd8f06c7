/** A scan in the words of the shop: how it lies, whether it is of the right size, and that its data are not here. */
import type { Scan, ScanUnit } from '../job/kinds/scan.ts';
import type { PointRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { LEAST_PAIRS, type Aligned, type SizeHint } from '../scan/align.ts';
import { grouped } from '../scan/gather.ts';
import { pointName } from '../solve/names.ts';

export const UNIT_NAMES: Readonly<Record<ScanUnit, string>> = {
  mm: 'millimetres',
  cm: 'centimetres',
  m: 'metres',
  in: 'inches',
  ft: 'feet',
};

export const countInWords = ({ kind, count, every }: Pick<Scan, 'kind' | 'count' | 'every'>): string =>
  `${grouped(count)} ${kind}${every === undefined ? '' : `, one of ${every}`}`;

export function whyNotLaid(aligned: Extract<Aligned, { readonly ok: false }>, pairs: number): string {
  if (aligned.why === 'in-line') {
    return 'All pairs lie in one line, about which the scan could be turned any way: add one well beside it.';
  }
  const lacking = LEAST_PAIRS - pairs;
  return `${pairs === 0 ? 'It lies where it was put down' : `${pairs === 1 ? 'One pair' : 'Two pairs'} so far`}: ${lacking} ${pairs === 0 ? '' : 'more '}${lacking === 1 ? 'pair lays' : 'pairs lay'} it, not in a line and far apart.`;
}

export function sizeHintInWords({ ratio, unit }: SizeHint, said: ScanUnit): string {
  const times = ratio >= 1 ? `${shown(ratio)} times` : `1/${shown(1 / ratio)} of`;
  const cause =
    unit === null
      ? 'A pair is picked wrong, or the scan was stretched where it comes from.'
      : `Its unit is ${UNIT_NAMES[unit]}, not ${UNIT_NAMES[said]}.`;
  return `The scan measures ${times} what was measured on the car. ${cause}`;
}

/** Three figures, or whole where there are more. */
const shown = (ratio: number): string =>
  ratio >= 100 ? String(Math.round(ratio)) : String(Number(ratio.toPrecision(3)));

/** Names of steps. */
export const pairLabel = (job: Job, point: PointRef): string => `Place of ${pointName(job, point)} on the scan`;
export const pointLabel = (name: string): string => `Pick ${name}`;

export const NOT_HERE =
  'Its data are not in this browser: only the job came here, or the storage was cleared. All else of the job is here. Choose the file again to see the scan.';
export const OTHER_FILE = 'This is another file than the one that the scan was made from: its pairs may not lie on it.';
export const NOT_KEPT =
  'The browser has no room to keep the scan: it is here until the page is closed, then its file is asked for again.';
export const OFF_PAIRS =
  'It lies by older places of these points, or was moved by hand since: its pairs as they are now lay it elsewhere.';
