/**
 * What gap an end leaves that is notched otherwise than its profile asks: at a setting that the machine's scale has, with a saw that
 * is on the shelf. Slid along its own axis until it first touches, it stands off by the greatest difference of the two profiles.
 */
import { toRadians, type Radians } from '../geometry/angle.ts';
import type { Sleeve } from '../geometry/met-sleeve.ts';
import { trimLine, trimOn } from '../solve/end-cutter.ts';
import type { TubeEnd } from '../solve/types.ts';
import { greatestBetween } from '../numerics/greatest-between.ts';

/** mm. Places at whole degrees that come this near to the extreme are closed in on: between two of them a curve rises no farther. */
const NEARLY = 0.2;
/** Radians. */
const CLOSED_IN = 1e-7;

/**
 * mm along the branch on its outer surface; `made` cuts instead of the end's own sleeves. Null where no line is reached by both, or
 * where one of the two is open on a line that the other cuts: such a cut leaves more than a gap.
 */
export function fitGap({ cutter }: TubeEnd, made: readonly Sleeve[]): number | null {
  const rho = cutter.section.outerDiameter / 2;
  const instead = { ...cutter, sleeves: made };
  const [asked, comes] = [trimOn(cutter, rho), trimOn(instead, rho)];
  const off = comes.map((s, k) => s - asked[k]!);
  const shared = [...off].filter((each) => !Number.isNaN(each));
  const apart = off.some((_, k) => Number.isNaN(comes[k]!) !== Number.isNaN(asked[k]!));
  if (shared.length === 0 || apart) return null;
  const [lineAsked, lineMade] = [trimLine(cutter, rho), trimLine(instead, rho)];
  const at = (phi: Radians): number => lineMade(phi) - lineAsked(phi);
  const most = (sense: 1 | -1): number => {
    const best = shared.reduce((greatest, each) => Math.max(greatest, sense * each), -Infinity);
    const height = (phi: Radians): number => {
      const here = sense * at(phi);
      return Number.isNaN(here) ? -Infinity : here;
    };
    return [...off.keys()]
      .filter((k) => {
        const here = sense * off[k]!;
        return here > best - NEARLY && !(here < sense * off[(k + 1) % 360]!) && !(here < sense * off[(k + 359) % 360]!);
      })
      .reduce(
        (greatest, k) => Math.max(greatest, greatestBetween(height, toRadians(k - 1), toRadians(k + 1), CLOSED_IN)),
        best,
      );
  };
  return most(1) + most(-1);
}
