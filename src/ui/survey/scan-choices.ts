/** What a person chooses among of a scan's file: its unit, and which of its axes points up. */
import type { Scan } from '../../core/job/kinds/scan.ts';
import { MM_PER } from '../../core/scan/place.ts';
import { UNIT_NAMES } from '../../core/words/scan.ts';

export const UNIT_LABEL = 'Unit of the file';
export const UNITS = (Object.keys(MM_PER) as Scan['unit'][]).map((value) => ({ value, label: UNIT_NAMES[value] }));

export const UP_LABEL = 'Points up';
export const UPS = (['z', 'y', 'x', '-z', '-y', '-x'] as const).map((value) => ({
  value,
  label: `${value.replace('-', '−')} of the file`,
}));
