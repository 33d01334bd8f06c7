/** The work of the slow stages, and all of it at once: for the command line, for files, and for the worker beside the page. */
import { fitTrouble } from '../checks/fit-findings.ts';
import { gussetTrouble } from '../checks/gusset-findings.ts';
import type { Finding } from '../checks/types.ts';
import { rehearse } from '../rehearse/rehearse.ts';
import type { Frame } from '../solve/types.ts';
import { fitting } from './fitting.ts';
import { gussets } from './gussets.ts';
import { rehearsals } from './rehearsals.ts';
import { withFindings } from './slow.ts';
import type { SlowWork } from './slow-stage.ts';

/** In the order in which they are gone through. */
export const WORK: readonly SlowWork<object, unknown>[] = [
  { ...rehearsals, run: rehearse },
  { ...fitting, run: fitTrouble },
  { ...gussets, run: gussetTrouble },
];

/** The same result with what all the slow stages find, in its place by severity; itself where that is nothing. */
export const withSlowFindings = <D extends Frame & { readonly findings: readonly Finding[] }>(derived: D): D =>
  withFindings(
    derived,
    WORK.flatMap((stage) => stage.items(derived).flatMap((item) => stage.findings(derived, item, stage.run(item)))),
  );
