/** What is wrong with gussets: those that cannot be made, and those that are not as gussets usually are. */
import { gussetsOf, isMade, type SetGusset } from '../gusset/gussets.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { tubeNearest } from '../solve/bar-tubes.ts';
import type { Frame } from '../solve/types.ts';
import type { GussetCannot, GussetFinding, GussetLegLength, GussetThin } from './gusset-types.ts';

/** mm of sheet: FIA Appendix J art. 253-8, as quoted from memory. */
const LEAST_SHEET = 1;
/** Diameters of the tube, along each leg. */
const LEG_RANGE = [2, 4] as const;

/** In the order of the job; of a mirror image only what its own has not. One that cannot be made is no error: its tubes can. */
export const gussetTrouble = (frame: Frame): readonly GussetFinding[] =>
  gussetsOf(frame).flatMap((set) => {
    const base = baseOf(frame, set);
    const { made, isImage } = set;
    const cannot = isMade(made)
      ? []
      : [{ ...base, id: 'gusset/cannot', severity: 'warning', isImage, no: made } as const];
    return isImage ? cannot : [...cannot, ...thin(set, base), ...legLengths(set, base)];
  });

type Base = Pick<GussetCannot, 'tube' | 'gusset' | 'at' | 'source' | 'node'>;

const baseOf = (frame: Frame, { gusset, node, ways, place }: SetGusset): Base => ({
  tube: tubeNearest(frame.byId, ways[0].bar, place).id,
  node,
  gusset: gusset.id,
  at: place,
  source: 'practice',
});

function thin({ gusset: { thickness }, ways }: SetGusset, base: Base): readonly GussetThin[] {
  const least = Math.max(LEAST_SHEET, ...ways.map(({ bar }) => bar.section.wall));
  return thickness >= least - ROUNDING ? [] : [{ ...base, id: 'gusset/thin', severity: 'warning', thickness, least }];
}

const legLengths = ({ gusset, ways }: SetGusset, base: Base): readonly GussetLegLength[] =>
  gusset.between.flatMap(({ leg }, i) => {
    const { bar } = ways[i]!;
    const [least, greatest] = LEG_RANGE.map((times) => times * bar.section.outerDiameter) as [number, number];
    if (leg >= least - ROUNDING && leg <= greatest + ROUNDING) return [];
    return [{ ...base, id: 'gusset/leg-length', severity: 'note', along: bar.id, leg, least, greatest }];
  });
