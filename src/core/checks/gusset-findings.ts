/** What is wrong with gussets: those that cannot be made, and those that are not as gussets usually are. */
import { distanceToPath } from '../geometry/path.ts';
import { inCar } from '../gusset/corner.ts';
import { gussetsOf, isMade, type MadeGusset, type SetGusset } from '../gusset/gussets.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { tubeNearest } from '../solve/bar-tubes.ts';
import type { Frame } from '../solve/types.ts';
import type { GussetCannot, GussetFinding, GussetInTube, GussetLegLength, GussetThin } from './gusset-types.ts';

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
    const inTube = isMade(made) ? inOthers(frame, set, made, base) : [];
    return isImage ? [...cannot, ...inTube] : [...cannot, ...thin(set, base), ...legLengths(set, base), ...inTube];
  });

type Base = Pick<GussetCannot, 'tube' | 'gusset' | 'at' | 'source' | 'node'>;

const baseOf = (frame: Frame, { gusset, node, ways, place }: SetGusset): Base => ({
  tube: tubeNearest(frame.byId, ways[0].bar, place).id,
  node,
  gusset: gusset.id,
  at: place,
  source: 'practice',
});

/** mm. Less than this is filed off. */
const DEEP = 0.2;

/** Where its legs begin, beside the joint, in another bar: the deepest. */
function inOthers({ bars }: Frame, { ways }: SetGusset, made: MadeGusset, base: Base): readonly GussetInTube[] {
  const places = legStarts(made);
  const depths = [...bars.values()]
    .filter((bar) => ways.every((way) => way.bar !== bar))
    .map(({ id, path, section }) => ({
      into: id,
      depth: section.outerDiameter / 2 - Math.min(...places.map((place) => distanceToPath(path, place))),
    }));
  return depths
    .filter(({ depth }) => depth > DEEP)
    .map((each) => ({ ...base, id: 'gusset/in-tube', severity: 'warning', ...each }));
}

/** In car axes, on the middle of the sheet; of a bent one on both faces. */
function legStarts({ corner, sheet: { shape } }: MadeGusset): readonly Vec3[] {
  if (shape.kind === 'flat') return shape.face.begins.map((place) => inCar(corner, place, 0));
  const { faces, stations } = shape.fold;
  return faces.flatMap(({ begins }, i) =>
    begins.map((place) => inCar(corner, place, stations.at(i === 0 ? 0 : -1)!.z)),
  );
}

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
