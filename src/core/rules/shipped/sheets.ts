/** The rule sheets that come with the program: copies to begin from, not anyone's rules. Each figure says how sure it is. */
import type { RuleSheet } from '../../job/kinds/rule-sheet.ts';
import { FIA } from './fia.ts';
import { FORMULA_SAE } from './formula-sae.ts';
import { MOTORSPORT_UK, MOTORSPORT_UK_SINGLE_SEATERS } from './motorsport-uk.ts';

/** In the order in which they are offered. */
export const SHIPPED: readonly RuleSheet[] = [FIA, MOTORSPORT_UK, MOTORSPORT_UK_SINGLE_SEATERS, FORMULA_SAE];
