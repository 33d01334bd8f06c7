/** Gussets in the words of the shop: why one cannot be made, how many are cut, how the sheet is bent. */
import type { FoldLine } from '../gusset/fold.ts';
import { GREATEST_ANGLE, LEAST_ANGLE, type Way } from '../gusset/corner.ts';
import { foldFibre } from '../gusset/fold.ts';
import type { NoGusset, SetGusset } from '../gusset/gussets.ts';
import { toDegrees } from '../geometry/angle.ts';
import { MEETING_DISTANCE } from '../geometry/tolerance.ts';
import { distance, type Vec3 } from '../geometry/vector.ts';
import type { Gusset } from '../job/kinds/gusset.ts';
import type { TubeRef } from '../job/reference.ts';
import { formatAngle } from '../units/angle.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { endNodeName, tubeName } from '../solve/names.ts';
import type { Frame } from '../solve/types.ts';
import { comparedLength } from './lengths.ts';

/** Why there is none, and what would mend it; begins small. Bars are called as `nameOf` calls them. */
export function whyNoGusset(no: NoGusset, unit: LengthUnit, nameOf: (bar: string) => string): string {
  const show = (mm: number): string => comparedLength(mm, unit);
  switch (no.why) {
    case 'off-node':
      return `${nameOf(no.bar)} passes its node ${show(no.off)} off. Choose a node on both bars.`;
    case 'in-bend':
      return `its node lies in bend ${no.bend} of ${nameOf(no.bar)}, and a leg wants a straight tube. Move the node out of the bend.`;
    case 'no-bend':
      return `no bend of ${nameOf(no.bar)} has its corner at the node. Choose a corner of its path where it bends.`;
    case 'skew':
      return `the two axes pass each other ${show(no.off)} apart, and no flat sheet lies between them (${show(MEETING_DISTANCE)} is let pass). Bring the axes together.`;
    case 'angle':
      return `its legs stand ${formatAngle(toDegrees(no.angle), 1)}° to each other; a sheet wants ${LEAST_ANGLE}° to ${GREATEST_ANGLE}°. Choose the other side of the joint.`;
    case 'leg-long':
      if (no.longest === null) {
        return `the leg along ${nameOf(no.bar)}, ${show(no.leg)}, runs past the end of the straight there. Make it shorter.`;
      }
      return no.longest > 0
        ? `the leg along ${nameOf(no.bar)} is ${show(no.leg)}, and the straight there ends at ${show(no.longest)}. Make it shorter.`
        : `${nameOf(no.bar)} has no straight for a leg on that side of the node. Choose the other end of it.`;
    case 'leg-in-bend':
      return no.least === null
        ? `the leg along ${nameOf(no.bar)}, ${show(no.leg)}, ends in the bend. Make it longer.`
        : `the leg along ${nameOf(no.bar)}, ${show(no.leg)}, ends in the bend. Make it ${show(no.least)} or more.`;
    case 'wide':
      return `it is ${show(no.width)} wide, and ${nameOf(no.bar)} lets it be ${show(no.widest)}. Make it narrower.`;
    case 'no-face':
      return `the fold takes ${show(no.depth)} from the free edge, and the face has ${show(no.there)}. Make the legs longer, or the inside radius smaller.`;
    case 'tight-bend':
      return `the bend of ${nameOf(no.bar)} has no round left on its inside.`;
  }
}

/** "Main hoop", and where it runs through the place the node to which the leg goes: "Main hoop towards Foot". */
export function legInWords(frame: Frame, { bar, towards }: Way, place: Vec3): string {
  const name = tubeName(frame, bar.id);
  const { node } = bar.ends[towards === 'A' ? 0 : 1];
  const endsHere = bar.ends.some(({ position }) => distance(position, place) <= MEETING_DISTANCE);
  return endsHere ? name : `${name} towards ${endNodeName(frame.job, node)}`;
}

const shown = (mm: number, unit: LengthUnit): string => `${formatLength(mm, unit).text} ${unit}`;

/** "Cut 2, 3.2 mm thick." */
export const gussetsCut = (count: number, { thickness }: Gusset, unit: LengthUnit): string =>
  `Cut ${count}, ${shown(thickness, unit)} thick.`;

/** Which edge of the flat sheet goes on which bar, as it is drawn: leg 1 towards the right; of one that is folded its outside, leg 1 on the left. */
export function edgesInWords(
  { kind }: Gusset,
  [one, two]: SetGusset['ways'],
  nameOf: (bar: TubeRef) => string,
): string {
  const [a, b] = [one, two].map(({ bar, towards }) => `${nameOf(bar.id)} towards end ${towards}`);
  return kind === 'flat'
    ? `As drawn, its lower edge lies along ${a}, the edge that rises at the left along ${b}.`
    : `Drawn is the outside: its left edges lie along ${a}, its right edges along ${b}; both faces fold away from you.`;
}

/** How it is folded; null where it is flat. */
export function foldInWords(gusset: Gusset, bends: readonly FoldLine[], unit: LengthUnit): string | null {
  if (gusset.kind === 'flat') return null;
  const each = bends.length === 1 ? 'Fold it over on the middle line' : 'Bend 90° on both middle lines, to one side';
  return `${each}, inside radius ${shown(gusset.radius, unit)}, ${shown(gusset.width, unit)} over both faces; reckoned with K ${foldFibre(gusset).toFixed(2)}: try a strip first.`;
}

export const K_IN_WORDS =
  'K says where in the sheet the fold neither stretches nor shrinks, counted from its inside: 0 at the inside, 0.5 in the middle. The more, the longer the flat sheet.';
