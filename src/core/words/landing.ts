/** Where a place of a branch comes to lie on its run tube, in the words of the shop: the parts stand in a table, or in a sentence. */
import type { Landing } from '../cope/landing.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { numbered, turnInWords } from './ends.ts';

export interface LandingParts {
  /** "512.3 mm" from the run tube's tip A; "3.0 mm beyond" it. */
  readonly along: string;
  /** "35.0° clockwise", "on the", "opposite the": of `from`, seen from A. */
  readonly turned: string;
  /** "inside of bend 2", "scribed line". */
  readonly from: string;
  /** "40.1 mm past" that bend, "40.1 mm before"; "40.1 mm past its A" inside it, from its side towards A; empty on a straight tube. */
  readonly place: string;
}

export function landingParts(landing: Landing, unit: LengthUnit): LandingParts {
  const { fromTipA, turn, bend, fromTangent, tangent } = landing;
  const length = (mm: number): string => `${formatLength(Math.abs(mm), unit).text} ${unit}`;
  const turned = turnInWords(turn);
  const side = tangent === 'start' ? 'A' : 'B';
  const way = tangent === 'start' ? 'before' : 'past';
  return {
    along: `${length(fromTipA)}${fromTipA < 0 ? ' beyond' : ''}`,
    turned: turned === '0°' ? 'on the' : turned === '180°' ? 'opposite the' : turned,
    from: bend === null ? 'scribed line' : `inside of bend ${bend}`,
    place: bend === null ? '' : `${length(fromTangent)} ${fromTangent < 0 ? `past its ${side}` : way}`,
  };
}

/**
 * Where a joint's middle lies: "1 Main hoop, 22 21/32 in from its tip A, 35.0° clockwise of the inside of bend 1 seen from A, 3 1/4 in
 * past it".
 */
export function landingInShort(landing: Landing, unit: LengthUnit): string {
  const { along, turned, from, place } = landingParts(landing, unit);
  const { runTube, fromTipA, bend, fromTangent } = landing;
  const tip = `${along} ${fromTipA < 0 ? '' : 'from '}its tip A`;
  const about = turned.endsWith('the') ? `${turned} ${from}` : `${turned} of the ${from} seen from A`;
  const past = bend === null ? '' : fromTangent < 0 ? `, in that bend, ${place} side` : `, ${place} it`;
  return `${numbered(runTube)}, ${tip}, ${about}${past}`;
}
