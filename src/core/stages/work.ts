/** The work of the slow stages, and all that they find at once: for the command line, for files, and for the worker beside the page. */
import { fitTrouble } from '../checks/fit-findings.ts';
import { gussetTrouble } from '../checks/gusset-findings.ts';
import type { Finding } from '../checks/types.ts';
import { rehearse } from '../rehearse/rehearse.ts';
import type { Frame } from '../solve/types.ts';
import { forecastFit } from '../forecast/forecast.ts';
import { fitting } from './fitting.ts';
import { forecast } from './forecast.ts';
import { gussets } from './gussets.ts';
import { planSection } from '../stock/of-job.ts';
import { rehearsals } from './rehearsals.ts';
import { withFindings } from './slow.ts';
import type { SlowWork } from './slow-stage.ts';
import { stock } from './stock.ts';

/** Those that find something, in the order in which they are gone through. */
const FINDING: readonly SlowWork<object, unknown>[] = [
  { ...rehearsals, run: rehearse },
  { ...fitting, run: fitTrouble },
  { ...gussets, run: gussetTrouble },
  { ...stock, run: planSection },
];

/** What can be asked for, item by item: these, and what finds nothing and is done only while somebody looks. */
export const WORK: readonly SlowWork<object, unknown>[] = [...FINDING, { ...forecast, run: forecastFit }];

/** The same result with what all the slow stages find, in its place by severity; itself where that is nothing. */
export const withSlowFindings = <D extends Frame & { readonly findings: readonly Finding[] }>(derived: D): D =>
  withFindings(
    derived,
    FINDING.flatMap((stage) => stage.items(derived).flatMap((item) => stage.findings(derived, item, stage.run(item)))),
  );
