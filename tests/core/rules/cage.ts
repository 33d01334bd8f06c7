/**
 * A small cage for rules, each of whose figures can be set: upright hoop at x = 0 with its feet at y = +-half, stays from its top, a diagonal in its plane,
 * door bars, and what else a check wants. mm, degrees. All by coordinates written here, so that what a check measures is known beforehand.
 */
import type { Foot } from '../../../src/core/job/kinds/foot.ts';
import type { Gusset } from '../../../src/core/job/kinds/gusset.ts';
import type { BentTube } from '../../../src/core/job/kinds/bent.ts';
import type { EndFit } from '../../../src/core/job/kinds/end.ts';
import type { Member } from '../../../src/core/job/kinds/member.ts';
import type { RuleCheck } from '../../../src/core/job/kinds/rule-check.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { judge } from '../../../src/core/rules/judge.ts';
import type { Verdict } from '../../../src/core/rules/types.ts';
import { AUTO, dieOf, fixed, frameOf, jobOf, member, SQUARE, tubing } from '../../reference/jobs.ts';
import type { Triple } from '../../reference/oracles/space.ts';

export const [HALF, TOP, OD] = [600, 1100, 45];
export const RADIUS = 150;

/** One bar by its corners. */
export interface BarOf {
  readonly role: string;
  readonly at: readonly Triple[];
  readonly ends?: readonly [EndFit, EndFit];
  readonly section?: string;
  readonly cutBy?: readonly string[];
}

export interface CageOf {
  readonly bars?: Readonly<Record<string, BarOf>>;
  /** Of every bar that names no other. */
  readonly outerDiameter?: number;
  readonly wall?: number;
  readonly radius?: number;
  readonly points?: Readonly<Record<string, Triple>>;
  readonly feet?: readonly Foot[];
  readonly gussets?: readonly Gusset[];
  readonly bent?: readonly BentTube[];
  readonly carMass?: number;
}

const PLATED: EndFit = { fit: 'plate', normal: [0, 0, 1], allowance: 0 };

/** The hoop, leaning so many degrees rearward, with its legs so far apart from axis to axis. */
export function hoop(lean = 0, half = HALF, ends: EndFit = PLATED, top = TOP): BarOf {
  const [s, c] = [Math.sin((lean * Math.PI) / 180), Math.cos((lean * Math.PI) / 180)];
  const up = (y: number): Triple => [-top * s, y, top * c];
  return { role: 'main-hoop', at: [[0, half, 0], up(half), up(-half), [0, -half, 0]], ends: [ends, ends] };
}

/** A stay from a place of the hoop, `long` mm towards there. */
export const stay = (from: Triple, way: Triple, long = 700): BarOf => ({
  role: 'rear-stay',
  at: [from, [from[0] + long * way[0], from[1] + long * way[1], from[2] + long * way[2]]],
  ends: [AUTO, SQUARE],
});

/** The job with these bars; each corner has a node of its own. */
export function cageOf({ bars = {}, outerDiameter = OD, wall = 2.5, radius = RADIUS, ...more }: CageOf): Job {
  const members = Object.entries(bars).map(([id, bar]): Member => {
    const path = bar.at.map((_, i) => `${id}-${i}`);
    const { role, ends = [AUTO, AUTO], section = 'main', cutBy } = bar;
    return member(id, path, section, { role, ends, die: 'd', ...(cutBy && { cutBy }) });
  });
  const { points = {}, feet = [], gussets = [], bent = [], carMass } = more;
  return jobOf({
    sections: [tubing('main', outerDiameter, wall), tubing('other', OD, 2.5)],
    dies: [dieOf('d', outerDiameter, radius)],
    points: Object.entries(points).map(([name, position], i) => ({ id: `p${i}`, name, position })),
    nodes: Object.entries(bars).flatMap(([id, { at }]) => at.map((place, i) => fixed(`${id}-${i}`, place))),
    members,
    feet,
    gussets,
    bent,
    ...(carMass !== undefined && { carMass }),
  });
}

/** What comes of that one article on that cage. */
export function verdictOn(cage: CageOf | Job, check: RuleCheck): Verdict {
  const job = 'format' in cage ? cage : cageOf(cage);
  return judge(frameAnd({ ...job, rules: [{ sheet: 's', body: 'b', edition: 'e', on: '', checks: [check] }] }))[0]!;
}

const frameAnd = (job: Job) => frameOf(job) as Parameters<typeof judge>[0];
