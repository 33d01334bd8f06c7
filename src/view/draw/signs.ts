/** What marks a place in the picture and, in the strip, what these marks mean. Round 0, 0; pixels. */

/** A named place is ringed, a place along a tube barred across, a place in space crossed. */
export const SIGNS = {
  named: 'M-10 0a10 10 0 1 0 20 0a10 10 0 1 0 -20 0',
  along: 'M-10 0a10 10 0 1 0 20 0a10 10 0 1 0 -20 0M-15 0h10M5 0h10',
  space: 'M-9 0h18M0 -9v18',
} as const;

/** What the aim has rested on. */
export const LATELY = 'M-8 -3v-5h5M3 -8h5v5M8 3v5h-5M-3 8h-5v-5';
