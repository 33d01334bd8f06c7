/** How large drawings are. */

/** Below this width, pixels, a little smaller: so two marks of inches and thirty-seconds stand abreast on a telephone. */
const NARROW = 400;

/** Pixels a millimetre: letters as small as paper has them can still be read. */
export const scaleOn = (width: number): number => (width < NARROW ? 3.6 : 4);
