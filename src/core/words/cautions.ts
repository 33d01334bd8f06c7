/** What stands beside every result, on the screen and on paper, in the same words. */

export const WHO_DECIDES = 'The rule book, the inspector and licensed practice decide. This program is no approval.';

export const STRIP = 'Strip zinc, paint and sealer before you weld.';
export const SAW_GRABS = 'A hole saw grabs at odd angles.';
export const TUBE_WHIPS = 'A long tube whips when it is bent.';

export const CAUTIONS: readonly string[] = [
  'It works out geometry: lengths, bends, copes, gaps. It does not work out whether a cage will hold.',
  'Rules change every year. Each finding names its source; what it does not name was not checked.',
  'Measure again before you cut. A bad cage is worse than none.',
  'In a street car, bare tube near a head without a helmet is a hazard: pad it.',
  `${STRIP} Take the batteries off.`,
  `${SAW_GRABS} ${TUBE_WHIPS}`,
];

/** Said every time, so that an empty list of findings is never taken for a yes: what, and why it is still to be done. */
export const NOT_CHECKED: readonly (readonly [string, string])[] = [
  [
    'Rule books.',
    'Only what a rule sheet of the job asks, as somebody typed it, is held against the frame. What no sheet asks is yours to compare.',
  ],
  ['Strength.', 'No load has been put on this frame.'],
  [
    'Welds and joints.',
    'Size, order and heat are not looked at; of the torch only its room between tubes and under the roof.',
  ],
  ['The way in.', 'Whether a tube can be swung into place in the car.'],
  ['The bender.', 'A sweep is only tried on a machine and a room that you have set up, drawn as simple solids.'],
  ['The rest of the driver.', 'Knees, wheel, doors, belts and sight lines, unless you put boxes round them.'],
  ['The car.', 'Roof skin, glass and panels between the points and body lines that were measured.'],
  ['The measurements.', 'A wrong point makes a right frame in the wrong place.'],
];
