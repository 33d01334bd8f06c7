/** Where a place of a branch comes to lie on its run tube, in the words of the shop. */
import type { Landing } from '../cope/landing.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { turnInWords } from './ends.ts';

/**
 * Where a joint's middle lies: "1 Main hoop, 22 21/32 in from its tip A, 35.0° clockwise of the inside of bend 1 seen from A, 3 1/4 in
 * past it".
 */
export function landingInShort(landing: Landing, unit: LengthUnit): string {
  const { runTube, fromTipA, turn, bend, fromTangent, tangent } = landing;
  const length = (mm: number): string => `${formatLength(mm, unit).text} ${unit}`;
  const from = bend === null ? 'its scribed line' : `the inside of bend ${bend}`;
  const turned = turnInWords(turn);
  const about =
    turned === '0°' ? `on ${from}` : turned === '180°' ? `opposite ${from}` : `${turned} of ${from} seen from A`;
  const past =
    bend === null
      ? ''
      : fromTangent < 0
        ? ', in that bend'
        : `, ${length(fromTangent)} ${tangent === 'start' ? 'before it' : 'past it'}`;
  const along = `${length(Math.abs(fromTipA))} ${fromTipA < 0 ? 'beyond' : 'from'} its tip A`;
  return `${runTube.number} ${runTube.name}, ${along}, ${about}${past}`;
}
