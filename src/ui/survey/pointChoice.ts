/** A point by part of its name: which points the typed text may mean, the likeliest first; a name of no point is a new one. */
import { isPrimed, type PointRef } from '../../core/job/reference.ts';

export interface PointChoice {
  readonly ref: PointRef;
  readonly label: string;
}

/** What stands to be chosen: a point, or the text as the name of a new one. */
export type Offer = PointChoice | { readonly ref: null; readonly label: string };

/** As many as fit under a field. */
const MOST = 7;

/**
 * Every word of the text begins a word of the name, each another: "ro l" is "Roof, left", "r r" "Roof, right". Points called just so stand first,
 * then those whose name begins with the text; a text that is no point's whole name is offered as a new one, last.
 */
export function offersFor(text: string, points: readonly PointChoice[]): readonly Offer[] {
  const typed = text.trim().toLowerCase();
  if (typed === '') return points.slice(0, MOST);
  const wanted = wordsOf(typed);
  const rank = ({ ref, label }: PointChoice): number => {
    const name = label.toLowerCase();
    if (name === typed) return 0;
    if (!areBegun(wanted, wordsOf(name))) return NONE;
    return (name.startsWith(typed) ? 1 : 2) + (isPrimed(ref) ? IMAGE : 0);
  };
  const found = points
    .map((point) => ({ point, rank: rank(point) }))
    .filter((each) => each.rank < NONE)
    .toSorted((a, b) => a.rank - b.rank);
  const fresh = wanted.length > 0 && found[0]?.rank !== 0;
  return [...found.slice(0, MOST).map(({ point }) => point), ...(fresh ? [{ ref: null, label: text.trim() }] : [])];
}

/** Not this point at all. */
const NONE = 3;

/** Of two that fit as well the point itself comes before an image. */
const IMAGE = 0.5;

const wordsOf = (text: string): readonly string[] => text.match(/[\p{L}\p{N}]+/gu) ?? [];

/** Whether each of these begins a word of the name that no other of them begins; the longest choose first. */
function areBegun(wanted: readonly string[], words: readonly string[]): boolean {
  const left = [...words];
  return wanted
    .toSorted((a, b) => b.length - a.length)
    .every((word) => {
      const at = left.findIndex((own) => own.startsWith(word));
      if (at >= 0) left.splice(at, 1);
      return at >= 0;
    });
}
