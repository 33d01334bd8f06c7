/** The car in a hoop's plane, in words. */
import { shownName } from '../job/shown.ts';
import type { BodyCrossing } from '../run/body-section.ts';

/** Over the list of what is there: the gaps are to the tube's outside. */
export const CAR_IN_PLANE = 'Car in this plane, gap to the tube';

/** "Roof rail, left"; of a line that was measured on the other side alone "Roof rail, left, mirrored". */
export const crossingName = ({ name, isImage }: BodyCrossing): string =>
  `${shownName(name)}${isImage ? ', mirrored' : ''}`;
