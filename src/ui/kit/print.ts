/** Paper, and what the printer makes of a length, as it is kept on this machine: for whatever is printed at full size. */
import { plainPrint, type PrintSettings } from '../../exports/shared/files.ts';
import { printedBy } from '../../exports/shared/paper.ts';
import { useDocument } from '../../store/page.ts';
import { useKept } from './kept.ts';

/** What the printed bars measured, mm for a bar of 100, on a print that was not corrected. */
export interface PrintChoice {
  readonly paper: PrintSettings['paper'];
  readonly across: number;
  readonly up: number;
}

/** mm: of the bar. */
export const HUNDRED = 100;

/** What was kept, as far as it can be used: A4 at first (Letter where people think in inches), and a printer that is true. */
export function readPrint(kept: unknown, inches: boolean): PrintChoice {
  const { paper, across, up } = (typeof kept === 'object' && kept !== null ? kept : {}) as Record<string, unknown>;
  const measured = (value: unknown): number =>
    typeof value === 'number' && printedBy(value) !== null ? value : HUNDRED;
  return {
    paper: paper === 'a4' || paper === 'letter' ? paper : inches ? 'letter' : plainPrint.paper,
    across: measured(across),
    up: measured(up),
  };
}

export const printSettings = ({ paper, across, up }: PrintChoice): PrintSettings => ({
  paper,
  printed: { x: printedBy(across) ?? 1, y: printedBy(up) ?? 1 },
});

/** As it is kept, and the way to change it. */
export function usePrint(): readonly [PrintChoice, (next: PrintChoice) => void] {
  const inches = useDocument((state) => state.job.lengthUnit === 'in');
  return useKept('print', inches ? readInches : readMetric);
}

const readInches = (kept: unknown): PrintChoice => readPrint(kept, true);
const readMetric = (kept: unknown): PrintChoice => readPrint(kept, false);
