/** Where each label stands in one frame: on the screen, on the tube that it belongs to, clear of the others. */
import type { Projection } from '../camera/projection.ts';
import { isHidden, type Sight } from '../canvas/sight.ts';
import { declutter, type Place, type Placed, type Wish } from './declutter.ts';
import type { Label } from './label.ts';

export interface LabelSize {
  readonly width: number;
  readonly height: number;
}

/** The middle of each label in pixels, in their order; null for one that finds no place. `below`: pixels along the lower edge that are covered. */
export function placeLabels(
  labels: readonly Label[],
  sizes: readonly LabelSize[],
  sight: Sight,
  view: Projection,
  below: number,
): readonly (Placed | null)[] {
  const wishes = labels.map((label, i): Wish => ({
    ...sizes[i]!,
    rank: label.rank,
    places: placesOf(label, sight, view),
  }));
  return declutter(wishes, { width: view.width, height: view.height - below });
}

/** One after the other as they are asked for; what can be seen there is asked last. */
function* placesOf({ at, on, shift }: Label, sight: Sight, view: Projection): Generator<Place> {
  for (const place of typeof at === 'function' ? at(view.pixelsPerMm) : at) {
    const { x, y } = view.toScreen(place);
    const stands = on === undefined ? undefined : () => !isHidden(sight, view, place, on);
    yield { x: x + (shift?.[0] ?? 0), y: y + (shift?.[1] ?? 0), ...(stands && { stands }) };
  }
}
