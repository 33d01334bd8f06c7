/** Where one path comes nearest to another. */
import { nearPlaces } from './near-places.ts';
import { nearestOnPath, nearestOnPiece, placeOnPiece, type NearestPlace, type Path } from './path.ts';
import { ROUNDING } from './tolerance.ts';

/** The place on the path nearest to the other path, and how far that is, mm. Of places equally near the first from the path's start. */
export function nearestToPath(path: Path, other: Path): NearestPlace {
  let best: NearestPlace | null = null;
  const consider = (place: NearestPlace): void => {
    const ahead = best === null ? Infinity : best.distance - place.distance;
    if (ahead > ROUNDING || (ahead >= -ROUNDING && place.at < best!.at)) best = place;
  };
  for (const piece of path.pieces) {
    for (const beside of other.pieces) {
      nearPlaces(piece, beside, Infinity, ({ distance, alongA }) =>
        consider({ ...placeOnPiece(piece, alongA), distance }),
      );
      // Of two that run side by side that is somewhere along them; the first place is where one of them begins or ends.
      for (const end of [beside.from, beside.to]) consider(nearestOnPiece(piece, end));
    }
    consider({ ...placeOnPiece(piece, 0), distance: nearestOnPath(other, piece.from).distance });
  }
  return best!;
}
