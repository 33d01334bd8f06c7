/** The tubes that a bar is made of, and which of them is met at a place of it. */
import { nearestOnPath } from '../geometry/path.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { pieceId, type TubeRef } from '../job/reference.ts';
import type { Bar, Cut, Frame, SolvedTube } from './types.ts';

type ById = Frame['byId'];

/** From end A; the whole bar is one tube. Empty where there is no such bar. */
export function tubesOfBar(byId: ById, bar: TubeRef): readonly SolvedTube[] {
  const whole = byId.get(bar);
  if (whole !== undefined) return [whole];
  const made: SolvedTube[] = [];
  for (let piece = byId.get(pieceId(bar, 1)); piece !== undefined; piece = byId.get(pieceId(bar, made.length + 1))) {
    made.push(piece);
  }
  return made;
}

/** The tube that a cut fits its branch to: the run tube, or the piece of it that it lands on. */
export const landedOn = (byId: ById, { against, landingAt }: Cut): SolvedTube => tubeAt(byId, against, landingAt);

/** The tube of the bar that comes nearest to the place. */
export const tubeNearest = (byId: ById, { id, path }: Bar, place: Vec3): SolvedTube =>
  byId.get(id) ?? tubeAt(byId, id, nearestOnPath(path, place).at);

/** `at` is mm of the bar's developed length from end A's node; beyond its ends it is the first tube and the last. */
function tubeAt(byId: ById, bar: TubeRef, at: number): SolvedTube {
  const made = tubesOfBar(byId, bar);
  return made.find(({ piece, developedLength }) => at <= (piece?.from ?? 0) + developedLength) ?? made.at(-1)!;
}

/** The bar between the nodes of its path, also where its tube stands otherwise, as it was made. Undefined where there is no such bar. */
export const drawnBar = ({ byId, bars }: Pick<Frame, 'byId' | 'bars'>, bar: TubeRef): Bar | undefined =>
  byId.get(bar)?.asDrawn ?? bars.get(bar);
