/** What starters are called, what they ask, and why they cannot begin. */
import type { FigureName } from '../shape/starters/asked.ts';
import type { LayoutName, Spot } from '../survey/spots.ts';
import type { DieTrouble } from '../shape/starters/die-room.ts';
import type { StartTrouble } from '../shape/starters/trouble.ts';
import { formatLength, MM_PER_INCH, type LengthUnit } from '../units/length.ts';

export const LAYOUT_WORDS: Readonly<Record<LayoutName, { readonly name: string; readonly is: string }>> = {
  'roll-bar': { name: 'Roll bar', is: 'Main hoop, two stays, diagonal, harness bar.' },
  'six-point': { name: 'Six-point', is: 'The roll bar, and two front legs along roof and pillar.' },
  'two-hoops': { name: 'Two hoops', is: 'Main hoop and front hoop, joined along the roof rails.' },
  'roof-ring': { name: 'Hoop and roof ring', is: 'Main hoop, one tube round the roof, legs under its corners.' },
  'side-hoops': { name: 'Side hoops', is: 'Each side in one tube, floor to floor; bars across.' },
};

export const FIGURE_WORDS: Readonly<Record<FigureName, string>> = {
  floorWidth: 'Inside width at the floor, sill to sill',
  beltWidth: 'Inside width at the belt line',
  beltHeight: 'Belt line above the floor',
  roofWidth: 'Inside width at the roof, rail to rail',
  roofHeight: 'Headliner above the floor',
  towerWidth: 'Between the rear towers',
  towerHeight: 'Towers above the floor',
  towerBehind: 'Towers behind the hoop',
  screenTopAhead: 'Windscreen’s top corner ahead of the hoop',
  screenTopWidth: 'Between the windscreen’s top corners',
  screenTopHeight: 'Windscreen’s top corners above the floor',
  screenFootAhead: 'Windscreen’s lower corner ahead of the hoop',
  screenFootWidth: 'Between the windscreen’s lower corners',
  screenFootHeight: 'Windscreen’s lower corners above the floor',
  frontFootAhead: 'Front foot ahead of the hoop',
  frontFootWidth: 'Inside width at the front feet',
  frontFootHeight: 'Front foot above the hoop’s floor',
  harnessHeight: 'Harness bar above the floor',
  gap: 'Gap, tube to trim',
};

export const SPOT_WORDS: Readonly<Record<Spot, string>> = {
  'floor-b': 'Floor at the hoop',
  'belt-b': 'B-pillar at the belt line',
  'roof-b': 'Roof rail at the hoop',
  tower: 'Rear tower',
  'screen-top': 'Windscreen’s top corner',
  'screen-foot': 'Windscreen’s lower corner',
  'floor-a': 'Floor at the front foot',
};

export const START_TROUBLE_WORDS: Readonly<Record<StartTrouble, string>> = {
  'roof-too-low': 'Belt line and headliner leave no room for the hoop’s bends: take both heights from the floor.',
  'roof-too-wide': 'The roof is wider than the belt line, or too narrow for a hoop: take widths from side to side.',
  'belt-too-narrow':
    'The car is too narrow for a hoop at the floor or at the belt line: take widths from side to side.',
  'tower-too-near': 'The towers stand too near the hoop, or ahead of it.',
  'tower-too-high': 'The towers stand too high for stays that run down from the hoop.',
  'screen-too-near': 'The windscreen’s top corner stands too near the hoop, or behind it.',
  'screen-foot-too-near': 'The windscreen’s lower corner or the front foot stands behind the windscreen’s top corner.',
  'screen-foot-too-high': 'The windscreen’s lower corner stands too near its top one.',
  'front-foot-too-high': 'The front foot stands too near the windscreen’s lower corner.',
  'harness-off-hoop': 'The harness bar is too low or too high to land on the hoop’s side.',
  'gap-too-wide': 'The gap to the trim leaves no room for the hoop’s bends.',
  'not-made': 'No cage can be made of these figures: look for one that is much too great or too small.',
  'front-too-narrow': 'Windscreen or front feet are too narrow for a cage: take widths from side to side.',
};

/** A radius that would do is said in whole steps, never more than it is. */
const RADIUS_STEP: Readonly<Record<LengthUnit, number>> = { mm: 1, in: MM_PER_INCH / 8 };

/** Why the die cannot bend the cage, and what die could. */
export function dieTroubleInWords(trouble: DieTrouble, unit: LengthUnit): string {
  if (trouble.why === 'angle') {
    return `A tube turns by ${trouble.needed.toFixed(1)}° at one corner, further than this die bends: choose a die that goes so far.`;
  }
  const step = RADIUS_STEP[unit];
  const greatest = step * Math.floor(trouble.greatest / step);
  const wanted =
    greatest > 0
      ? `a die of ${formatLength(greatest, unit).text} ${unit} CLR or less would do`
      : 'no die would do, the corners stand too near each other';
  return `The bends take more tube on this die than there is from corner to corner: ${wanted}.`;
}

/** What was asked for and could not be fitted in. */
export const LEFT_OUT = {
  doors: 'No door bars: between the feet and the dash there is no room for them.',
  braces: 'No pillar braces: the pillars bend so little at the dash that a brace would lie along them.',
} as const;
