/** What is wrong with gussets: those that cannot be made, and those that are not as gussets usually are. */
import { distanceToPath } from '../geometry/path.ts';
import { inCar } from '../gusset/corner.ts';
import { gussetsOf, isMade, type MadeGusset, type SetGusset } from '../gusset/gussets.ts';
import { MEETING_DISTANCE, ROUNDING } from '../geometry/tolerance.ts';
import { distance, type Vec3 } from '../geometry/vector.ts';
import { depthInSheet } from '../gusset/in-the-way.ts';
import { alongAxes } from '../gusset/sheet.ts';
import { tubeNearest } from '../solve/bar-tubes.ts';
import { partOf } from '../solve/part-of.ts';
import type { Bar, Frame } from '../solve/types.ts';
import type {
  GussetCannot,
  GussetFinding,
  GussetInTheWay,
  GussetInTube,
  GussetLegBefore,
  GussetLegLength,
  GussetThin,
  GussetTwice,
} from './gusset-types.ts';

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
    const inPlace = isMade(made) ? inThePlace(frame, set, made, base) : [];
    return isImage ? [...cannot, ...inPlace] : [...cannot, ...thin(set, base), ...legLengths(set, base), ...inPlace];
  });

/** What is found where it stands. */
function inThePlace(frame: Frame, set: SetGusset, made: MadeGusset, base: Base): readonly GussetFinding[] {
  const corner = inOthers(frame, set, made, base);
  const others = [...frame.bars.values()].filter(
    (bar) => !isOwn(set, bar) && corner.every(({ into }) => into !== bar.id),
  );
  return [
    ...corner,
    ...others.flatMap((bar) => inTheWay(set, made, bar, base)),
    ...legsBefore(set, made, base),
    ...twice(frame, set, base),
  ];
}

const isOwn = ({ ways }: SetGusset, bar: Bar): boolean => ways.some((way) => way.bar === bar);

type Base = Pick<GussetCannot, 'tube' | 'gusset' | 'at' | 'source' | 'node'>;

const baseOf = (frame: Frame, { gusset, node, ways, place }: SetGusset): Base => ({
  tube: tubeNearest(frame.byId, ways[0].bar, place).id,
  node,
  gusset: gusset.id,
  at: place,
  source: 'practice',
});

/** Radii of a tube from where the axes meet to where a leg of the sharpest sheet begins: 1 / tan of half of 20 degrees, and over. */
const SPREAD = 6;
/** mm. Less than this is filed off. */
const DEEP = 0.2;

/** Where its legs begin, beside the joint, in another bar: the deepest. */
function inOthers({ bars }: Frame, set: SetGusset, made: MadeGusset, base: Base): readonly GussetInTube[] {
  const places = legStarts(made);
  const depths = [...bars.values()]
    .filter((bar) => !isOwn(set, bar))
    .map(({ id, path, section }) => ({
      into: id,
      depth: section.outerDiameter / 2 - Math.min(...places.map((place) => distanceToPath(path, place))),
    }));
  return depths
    .filter(({ depth }) => depth > DEEP)
    .map((each) => ({ ...base, id: 'gusset/in-tube', severity: 'warning', ...each }));
}

/** Anywhere in the sheet, the tube's axis taken from tip to tip. */
function inTheWay({ gusset }: SetGusset, made: MadeGusset, bar: Bar, base: Base): readonly GussetInTheWay[] {
  const radius = bar.section.outerDiameter / 2;
  const reach =
    Math.max(...gusset.between.map(({ leg }) => leg)) +
    SPREAD * Math.max(...made.corner.sides.map((side) => side.radius));
  if (distanceToPath(bar.path, made.corner.place) > reach + radius) return [];
  const [a, b] = bar.ends.map(({ tip }) => Math.max(0, tip ?? 0)) as [number, number];
  if (a + b >= bar.path.length) return [];
  const { path } = partOf(bar, a, bar.path.length - b);
  const depth = depthInSheet(made, gusset.thickness, path, radius);
  return depth > DEEP ? [{ ...base, id: 'gusset/runs-into', severity: 'warning', into: bar.id, depth }] : [];
}

function legsBefore({ ways }: SetGusset, made: MadeGusset, base: Base): readonly GussetLegBefore[] {
  const { corner, sheet } = made;
  const faces = sheet.shape.kind === 'flat' ? [sheet.shape.face] : sheet.shape.fold.faces;
  const starts = faces.map(({ begins }) => alongAxes(corner, begins));
  return ways.flatMap(({ bar }, i) => {
    const before = -Math.min(...starts.map((start) => start[i]!)) - corner.sides[i]!.behind;
    if (before <= DEEP) return [];
    return [{ ...base, id: 'gusset/leg-before-tube', severity: 'warning', along: bar.id, before }];
  });
}

/** Of two the later in the job says so. */
function twice(frame: Frame, set: SetGusset, base: Base): readonly GussetTwice[] {
  const all = gussetsOf(frame);
  const other = all
    .slice(0, all.indexOf(set))
    .find(
      (each) =>
        each.gusset !== set.gusset &&
        distance(each.place, set.place) <= MEETING_DISTANCE &&
        each.ways.every(({ bar, towards }) => set.ways.some((way) => way.bar === bar && way.towards === towards)),
    );
  return other === undefined ? [] : [{ ...base, id: 'gusset/twice', severity: 'warning', beside: other.gusset.id }];
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
