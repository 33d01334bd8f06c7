/**
 * A tube's two ends: what cuts them, the reference that angles about the tube are counted from, and the trim profile.
 *
 * The trim s(phi) is the distance along the tube, from the end's node, at which the wall begins. Every cutter removes
 * material, so of several the largest s counts; a plate or a square end is a plane. Frame: u = direction, into the tube;
 * phi = 0 at `reference`, right-hand about u.
 */
import { STRAIGHT_THROUGH } from '../geometry/tolerance.ts';
import { cross, length, normalize, rejectFrom, X_AXIS, Z_AXIS, type Vec3 } from '../geometry/vector.ts';
import type { Section } from '../job/kinds/section.ts';
import { withLater } from '../remembered.ts';
import { wallCentroid } from './amount.ts';
import { endDirections, type Centreline } from './centreline.ts';
import { clockedCut, cutBy, type CutGeometry } from './cut.ts';
import { cutCurve, meanTrimOn, sleeveOf, trimOn } from './end-cutter.ts';
import type { EndSetting } from './meet-tubes.ts';
import type { EndCutter, TubeEnd } from './types.ts';

/** Both ends of a tube, or of a member's twin, cut to what they meet: profiles, tips, throats and notcher settings. */
export function solveEnds(
  centreline: Centreline,
  section: Section,
  settings: readonly [EndSetting, EndSetting],
  twin: boolean,
): readonly [TubeEnd, TubeEnd] {
  const cutsOf = ({ position, direction, meeting }: EndSetting) =>
    meeting.cutters.map((runTube) => cutBy(runTube, position, direction, section.outerDiameter, twin));
  const cuts = [cutsOf(settings[0]), cutsOf(settings[1])] as const;
  const references =
    centreline.bends.length > 0 ? insideOfBends(centreline) : straightReferences(cuts, settings[0].direction);
  return [
    solveEnd(settings[0], cuts[0], references[0], section),
    solveEnd(settings[1], cuts[1], references[1], section),
  ];
}

/** A straight tube has one reference for both ends. */
function straightReferences(
  [a, b]: readonly [readonly CutGeometry[], readonly CutGeometry[]],
  direction: Vec3,
): readonly [Vec3, Vec3] {
  const reference = firstAcuteSide(a) ?? firstAcuteSide(b) ?? upwards(direction);
  return [reference, reference];
}

const firstAcuteSide = (cuts: readonly CutGeometry[]): Vec3 | undefined =>
  cuts.find((each) => each.acuteSide !== null)?.acuteSide ?? undefined;

/** The direction nearest +z square to the tube; of an upright tube, nearest +x. */
function upwards(direction: Vec3): Vec3 {
  const up = rejectFrom(Z_AXIS, direction);
  return normalize(length(up) > STRAIGHT_THROUGH ? up : rejectFrom(X_AXIS, direction));
}

/** From the tube towards the centre of its first bend, and of its last: the bend's normal turned on from the direction of travel. */
function insideOfBends({ bends, corners }: Centreline): readonly [Vec3, Vec3] {
  const [first, last] = endDirections(corners);
  return [normalize(cross(bends[0]!.normal, first)), normalize(cross(last, bends.at(-1)!.normal))];
}

function solveEnd(setting: EndSetting, cuts: readonly CutGeometry[], reference: Vec3, section: Section): TubeEnd {
  const { node, position, direction, spec, plane, meeting } = setting;
  const plateNormal = plane.normal;
  const radius = section.outerDiameter / 2;
  const cutter: EndCutter = {
    bundle: { origin: position, direction, reference },
    section,
    plateNormal,
    rise: plane.rise,
    sleeves: meeting.cutters.map((runTube, i) => sleeveOf(runTube, cuts[i]!.cut, position, radius)),
  };
  const { trim: outer, reached, lows, high, passedBy } = cutCurve(cutter, [radius]);
  return withSeldomAsked({
    node,
    position,
    spec,
    fit: plane.fit ?? (cuts.length > 0 ? 'cope' : 'square'),
    direction,
    reference,
    cuts: cuts.map((geometry, i) => clockedCut(geometry, reference, direction, reached[i]!)),
    butted: meeting.butted.map(({ id }) => id),
    plateNormal,
    foot: plane.foot,
    unmitred: plane.unmitred,
    cutter,
    outer,
    tip: lows[0]?.s ?? null,
    throat: high?.s ?? null,
    lows,
    high,
    passedBy,
    allowance: spec.allowance,
  });
}

/** Only drawings look at the bore, and only the mass at the mean. */
const withSeldomAsked = withLater<Omit<TubeEnd, 'inner' | 'meanTrim'>, Pick<TubeEnd, 'inner' | 'meanTrim'>>({
  inner: ({ cutter }) => trimOn(cutter, cutter.section.outerDiameter / 2 - cutter.section.wall),
  meanTrim: ({ cutter, cuts, tip }) =>
    cuts.length === 0 ? cutter.rise : meanTrimOn(cutter, wallCentroid(cutter.section), tip),
});
