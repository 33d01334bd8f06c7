/** What the inspection dossier says. Nothing in it says that a cage may be used: it puts together what is drawn, what was measured and what the rules ask. */
import type { HolePlace } from '../dossier/hole-places.ts';
import type { Weld } from '../dossier/weld-list.ts';
import type { Foot } from '../job/kinds/foot.ts';
import { middleOf } from '../cope/landing.ts';
import { endNodeName } from '../solve/names.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import type { LengthUnit } from '../units/length.ts';
import { endInWords, numbered } from './ends.ts';
import { landingParts } from './landing.ts';
import { lengthOnTape } from './lengths.ts';
import { capital } from './lists.ts';

export const DOSSIER = 'Inspection dossier';

/** On its cover. */
export const DOSSIER_IS =
  'Put together for whoever inspects the cage: what is drawn, what was measured on the tubes, and what the builder adds by hand. A figure without a measurement beside it is the drawing’s.';

export const BENDS_ARE =
  'Net angles are as measured after release, turns and straights where they were measured; a dash: nobody has. Straights run from tangent to tangent, the first from end A’s node and the last, in the row B, to end B’s node. Off: measured less drawn. Across: outer diameters measured over the bend, the least and the greatest; beside them their difference as a share of the tube’s diameter.';

export const JOINTS_ARE =
  'Each joint once. Tick by hand: tacked, welded, looked at. Lengths on a tube that runs through are along it from its finished tip A to the middle of the joint.';

export const HOLES_ARE =
  'The rule book says whether a hole is wanted, how large, and where: these are places with room. Each is the middle of the longest straight of its tube that is clear of bends, joints, gussets and cut ends. “Clear” is what is free either way of it, as far as one tube diameter from what comes there. Lengths are along the centreline, from a finished tip or from where a bend ends.';

export const NO_RULE_SHEET = 'The job holds no rule sheet, so none was gone through here.';

/** "1 B, on 1 Main hoop" as the two tubes of a joint: "4 A · 1, 2". */
export const weldedTubes = ({ tube, which, to }: Weld): string =>
  [`${tube.number} ${'AB'[which]}`, ...(to.length === 0 ? [] : [to.map(({ number }) => number).join(', ')])].join(
    ' · ',
  );

/** "Coped to 1 Main hoop", "Cut to its foot, Tower plate". */
export const weldInWords = (frame: Frame, { end }: Weld): string => capital(endInWords(frame, end, numbered));

/** Where it is: on the tube that runs through, else at its node. */
export function whereWelded(frame: Frame, { end, node }: Weld, unit: LengthUnit): string {
  const cut = end.cuts.find(({ reaches }) => reaches);
  if (cut === undefined || end.fit !== 'cope') return endNodeName(frame.job, node);
  const landing = middleOf(frame, end, cut);
  const { along } = landingParts(landing, unit);
  return `on ${landing.runTube.number}, ${along} from its tip A`;
}

/** "512 mm from tip A", "84 mm past bend 2, which is 1190 mm from tip A along the tube". */
export function holePlaceInWords({ bends }: SolvedTube, place: HolePlace, unit: LengthUnit): string {
  const { at, fromTipA, fromTipB, straight } = place;
  if (bends.length === 0)
    return fromTipA <= fromTipB
      ? `${lengthOnTape(fromTipA, unit)} from tip A`
      : `${lengthOnTape(fromTipB, unit)} from tip B`;
  if (straight === 0) return `${lengthOnTape(fromTipA, unit)} from tip A, on the straight before bend 1`;
  if (straight === bends.length)
    return `${lengthOnTape(fromTipB, unit)} from tip B, on the straight after bend ${straight}`;
  const past = at - bends[straight - 1]!.end;
  return `${lengthOnTape(past, unit)} past the end of bend ${straight}, towards bend ${straight + 1}; ${lengthOnTape(fromTipA, unit)} from tip A along the tube`;
}

export const NO_ROOM = 'no straight of it is clear by its own diameter';

/** "4 of 10.3 mm", "none": by diameter, the smallest first. */
export function holesInWords({ holes = [] }: Foot, unit: LengthUnit): string {
  const sizes = [...new Set(holes.map(({ diameter }) => diameter))].toSorted((a, b) => a - b);
  if (sizes.length === 0) return 'none';
  return sizes
    .map((size) => `${holes.filter(({ diameter }) => diameter === size).length} of ${lengthOnTape(size, unit)}`)
    .join(', ');
}

/** Of pictures that the job names and that are not where the dossier is made. */
export const photosNotHere = (names: readonly string[]): string =>
  `${names.length === 1 ? 'One photo is' : `${names.length} photos are`} named in the job and not kept here: ${names.join('; ')}.`;

/** A picture that is there and cannot be printed, and why. */
export const photoNotPrinted = (name: string, why: string): string => `${name}: ${why}`;

export const STATEMENT = 'Statement of the builder';
export const STATEMENT_IS = 'Left blank: what is stated here is in the builder’s own words and by the builder’s hand.';
