/**
 * What a starter is asked: which cage, the tape figures of the car, which bars, of what tube. Each figure is a length that a shop has on
 * its tape, mm; a place of the car that is measured already stands in for the figures of that place.
 */
import type { Section } from '../../job/kinds/section.ts';
import type { DieId, PointRef, SectionId } from '../../job/reference.ts';
import type { Job } from '../../job/types.ts';
import { MM_PER_INCH } from '../../units/length.ts';

/** The base layouts, as rule books draw them. */
export const LAYOUTS = ['roll-bar', 'six-point', 'two-hoops', 'roof-ring', 'side-hoops'] as const;
export type LayoutName = (typeof LAYOUTS)[number];

/** Places of the car that a cage goes by, each on the left: B stands at the hoop, A at the windscreen's pillar. */
export const SPOTS = ['floor-b', 'belt-b', 'roof-b', 'tower', 'screen-top', 'screen-foot', 'floor-a'] as const;
export type Spot = (typeof SPOTS)[number];

/** Those of a roll bar. */
const BEHIND: readonly Spot[] = ['floor-b', 'belt-b', 'roof-b', 'tower'];

/** The places that the layout goes by. */
export const spotsOf = (layout: LayoutName): readonly Spot[] => (layout === 'roll-bar' ? BEHIND : SPOTS);

/** How a figure is taken: along the car from the hoop's station, from side to side, or up from the floor at the hoop. */
export type Taken = 'ahead' | 'behind' | 'width' | 'height';

interface FigureRow {
  /** The place that it belongs to; null where it is the cage's own. */
  readonly spot: Spot | null;
  readonly taken: Taken;
  /** What an ordinary closed car has, mm (common practice): least, what is put in for a start, greatest. */
  readonly usual: readonly [least: number, first: number, greatest: number];
}

const figure = (spot: Spot | null, taken: Taken, ...usual: [number, number, number]): FigureRow => ({
  spot,
  taken,
  usual,
});

/** Every figure by its name. */
export const FIGURES = {
  floorWidth: figure('floor-b', 'width', 1150, 1270, 1350),
  beltWidth: figure('belt-b', 'width', 1250, 1345, 1420),
  beltHeight: figure('belt-b', 'height', 550, 635, 750),
  roofWidth: figure('roof-b', 'width', 950, 1055, 1150),
  roofHeight: figure('roof-b', 'height', 1000, 1125, 1250),
  towerWidth: figure('tower', 'width', 850, 965, 1050),
  towerHeight: figure('tower', 'height', 400, 520, 650),
  towerBehind: figure('tower', 'behind', 600, 800, 950),
  screenTopAhead: figure('screen-top', 'ahead', 450, 560, 700),
  screenTopWidth: figure('screen-top', 'width', 960, 1015, 1120),
  screenTopHeight: figure('screen-top', 'height', 950, 1080, 1200),
  screenFootAhead: figure('screen-foot', 'ahead', 850, 1105, 1250),
  screenFootWidth: figure('screen-foot', 'width', 1200, 1270, 1360),
  screenFootHeight: figure('screen-foot', 'height', 600, 675, 780),
  frontFootAhead: figure('floor-a', 'ahead', 750, 990, 1150),
  frontFootWidth: figure('floor-a', 'width', 1120, 1180, 1280),
  frontFootHeight: figure('floor-a', 'height', 0, 25, 120),
  harnessHeight: figure(null, 'height', 500, 610, 750),
  gap: figure(null, 'width', 25, 32, 40),
} as const satisfies Record<string, FigureRow>;

export type FigureName = keyof typeof FIGURES;
/** In the order in which they are asked. */
export const FIGURE_NAMES = Object.keys(FIGURES) as readonly FigureName[];

/** A length, mm, and whether somebody has said it or the program has put in a usual one. */
export interface Figure {
  readonly value: number;
  readonly guessed: boolean;
}

/** Bars by choice; those that a layout has no place for are left out. */
export interface Bars {
  readonly diagonal: boolean;
  readonly harness: boolean;
  /** Between the rear stays. */
  readonly rear: 'none' | 'one' | 'cross';
  readonly towerBar: boolean;
  /** An X, or level bars. */
  readonly doors: 'none' | 'cross' | 'one' | 'two';
  readonly sills: boolean;
  readonly roof: 'none' | 'one' | 'cross' | 'vee';
  readonly dash: boolean;
  readonly pillarBraces: boolean;
}

export interface Asked {
  readonly layout: LayoutName;
  readonly figures: Readonly<Record<FigureName, Figure>>;
  /** Measured points, on either side, that stand in for the figures of their place. */
  readonly points: Readonly<Partial<Record<Spot, PointRef>>>;
  /** On which side of the car the driver sits. */
  readonly driver: 'left' | 'right';
  readonly bars: Bars;
  readonly feet: 'plates' | 'boxes';
  /** Hoops, legs and stays. */
  readonly main: SectionId;
  /** Bars between them. */
  readonly light: SectionId;
  readonly die: DieId;
}

/** The figures that the layout still asks for where these places are measured; that of the harness bar only where there is one. */
export const figuresAsked = ({
  layout,
  points,
  bars,
}: Pick<Asked, 'layout' | 'points' | 'bars'>): readonly FigureName[] =>
  FIGURE_NAMES.filter((name) => {
    const { spot } = FIGURES[name];
    if (spot === null) return name !== 'harnessHeight' || bars.harness;
    return spotsOf(layout).includes(spot) && points[spot] === undefined;
  });

/** Usual figures for a start, all of them guesses: whole centimetres or halves of an inch, as the job is shown. */
export function firstFigures(lengthUnit: Job['lengthUnit']): Asked['figures'] {
  const step = lengthUnit === 'in' ? MM_PER_INCH / 2 : 5;
  const guess = (name: FigureName): Figure => ({
    value: Math.round(FIGURES[name].usual[1] / step) * step,
    guessed: true,
  });
  return Object.fromEntries(FIGURE_NAMES.map((name) => [name, guess(name)])) as Record<FigureName, Figure>;
}

/** The bars that are chosen before anybody has. */
export const FIRST_BARS: Bars = {
  diagonal: true,
  harness: true,
  rear: 'cross',
  towerBar: true,
  doors: 'cross',
  sills: true,
  roof: 'cross',
  dash: true,
  pillarBraces: false,
};

/**
 * The tube and the die for a start: the thickest section that a die fits, the first of as thick ones; for the bars between the next
 * thinner one. Null where no die fits any section.
 */
export function firstTube({ sections, dies }: Job): Pick<Asked, 'main' | 'light' | 'die'> | null {
  const byDiameter = sections.toSorted((a, b) => b.outerDiameter - a.outerDiameter);
  const dieOf = ({ outerDiameter }: Section) => dies.find((die) => die.outerDiameter === outerDiameter);
  const main = byDiameter.find((section) => dieOf(section) !== undefined);
  if (main === undefined) return null;
  const light = byDiameter.find(({ outerDiameter }) => outerDiameter < main.outerDiameter) ?? main;
  return { main: main.id, light: light.id, die: dieOf(main)!.id };
}
