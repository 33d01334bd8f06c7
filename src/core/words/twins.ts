/** What a tube says of the one on the other side of the car. */
import { isMirrorImage } from '../solve/mirror-image.ts';
import type { SolvedTube } from '../solve/types.ts';

export const MAKE_ONE_OF_EACH = 'Make one of each, not two of this.';

/** What the other is to this tube: its mirror image, or not, where an end is coped to a bar of one side alone. */
export const twinIs = (tube: SolvedTube, twin: SolvedTube): string =>
  isMirrorImage(tube, twin) ? 'Mirror image' : 'Other side, NOT the mirror image: its ends are cut otherwise';
