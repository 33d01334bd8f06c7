/** How many things were found: one way of counting for the screen, the command line and whoever else says a number. */
import type { Seen } from '../job/kinds/seen.ts';
import type { Frame } from '../solve/types.ts';
import { grouped } from './grouped.ts';
import { unseen } from './seen.ts';
import type { Finding, Severity } from './types.ts';

export interface Counted {
  /** Each once, however many places it is named at. */
  readonly things: number;
  /** Where they are: a tube, one of its ends or bends. At least as many. */
  readonly places: number;
}

/** Of each severity, without what was seen and left as it is. */
export function counted(
  findings: readonly Finding[],
  seen: readonly Seen[],
  frame: Pick<Frame, 'byId'>,
): (severity: Severity) => Counted {
  const groups = grouped(unseen(findings, seen), frame);
  return (severity) => {
    const own = groups.filter(({ first }) => first.severity === severity);
    return { things: own.length, places: own.reduce((sum, { more }) => sum + 1 + more.length, 0) };
  };
}
