/** Which tubes stand out in the bay. */
import type { Derived } from '../../core/derive.ts';
import { tubesOfBar } from '../../core/solve/bar-tubes.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import type { Selection, Station } from '../../store/types.ts';

/** The selected tube. In the Frame, where a bar is changed as one: all the pieces that it is made of, from its end A on. */
export function chosenTubes(
  { byId }: Pick<Derived, 'byId'>,
  station: Station,
  selection: Selection | null,
): readonly SolvedTube[] {
  const tube = selection?.kind === 'tube' ? byId.get(selection.id) : undefined;
  if (tube === undefined) return [];
  return station === 'frame' ? tubesOfBar(byId, tube.bar) : [tube];
}
