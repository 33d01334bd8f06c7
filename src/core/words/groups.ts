/** What else one finding stands for, in words. */
import type { Counted } from '../checks/counted.ts';
import type { Group } from '../checks/grouped.ts';
import { nodeName, tubeName } from '../solve/names.ts';
import type { Frame } from '../solve/types.ts';
import { comparedLength } from './lengths.ts';
import { listed } from './lists.ts';

/** "The same at Front leg (right), end A"; of places that one tube is off, each with how far. Null where it stands for itself alone. */
export function alsoInWords({ first, more }: Group, frame: Frame): string | null {
  if (more.length === 0) return null;
  const where = more.map((finding) => {
    const { tube, end } = finding;
    if (finding.id === 'made/off-node' && tube === first.tube) {
      return `${nodeName(frame.job, finding.node)}, by ${comparedLength(finding.distance, frame.job.lengthUnit)}`;
    }
    return `${tubeName(frame, tube)}${end === undefined ? '' : `, end ${end}`}`;
  });
  return `The same at ${listed(where)}.`;
}

/** Beside how many things were found, where they are named at more places than that. */
export const placesInWords = (places: number): string => `(${places} places)`;

/** "2 (5 places)". */
export const countInWords = ({ things, places }: Counted): string =>
  places > things ? `${things} ${placesInWords(places)}` : `${things}`;
