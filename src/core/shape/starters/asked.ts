/**
 * What a starter is asked: which cage, the tape figures of the car, which bars, of what tube. Each figure is a length that a shop has on
 * its tape, mm; a place of the car that is measured already stands in for the figures of that place.
 */
import type { Die } from '../../job/kinds/die.ts';
import type { Section } from '../../job/kinds/section.ts';
import type { DieId, PointRef, SectionId } from '../../job/reference.ts';
import type { Job } from '../../job/types.ts';
import { spotsOf, USUAL, type LayoutName, type Spot } from '../../survey/spots.ts';
import { MM_PER_INCH } from '../../units/length.ts';

/** How a figure is taken: along the car from the hoop's station, from side to side, or up from the floor at the hoop. */
export type Taken = 'ahead' | 'behind' | 'width' | 'height';

interface FigureRow {
  /** The place that it belongs to; null where it is the cage's own. */
  readonly spot: Spot | null;
  readonly taken: Taken;
  /** What is put in for a start: of an ordinary closed car, mm (common practice). */
  readonly first: number;
}

/** Of a place of the car: as far as that is from there on an ordinary one. */
function figure(spot: Spot, taken: Taken): FigureRow {
  const [ahead, aside, up] = USUAL[spot];
  return { spot, taken, first: { ahead, behind: -ahead, width: 2 * aside, height: up }[taken] };
}

const ownFigure = (taken: Taken, first: number): FigureRow => ({ spot: null, taken, first });

/** Every figure by its name. */
export const FIGURES = {
  floorWidth: figure('floor-b', 'width'),
  beltWidth: figure('belt-b', 'width'),
  beltHeight: figure('belt-b', 'height'),
  roofWidth: figure('roof-b', 'width'),
  roofHeight: figure('roof-b', 'height'),
  towerWidth: figure('tower', 'width'),
  towerHeight: figure('tower', 'height'),
  towerBehind: figure('tower', 'behind'),
  screenTopAhead: figure('screen-top', 'ahead'),
  screenTopWidth: figure('screen-top', 'width'),
  screenTopHeight: figure('screen-top', 'height'),
  screenFootAhead: figure('screen-foot', 'ahead'),
  screenFootWidth: figure('screen-foot', 'width'),
  screenFootHeight: figure('screen-foot', 'height'),
  frontFootAhead: figure('floor-a', 'ahead'),
  frontFootWidth: figure('floor-a', 'width'),
  frontFootHeight: figure('floor-a', 'height'),
  harnessHeight: ownFigure('height', 610),
  gap: ownFigure('width', 32),
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

/** Usual figures for a start, all of them guesses: whole halves of a centimetre or of an inch, as the job is shown. */
export function firstFigures(lengthUnit: Job['lengthUnit']): Asked['figures'] {
  const step = lengthUnit === 'in' ? MM_PER_INCH / 2 : 5;
  const guess = (name: FigureName): Figure => ({
    value: Math.round(FIGURES[name].first / step) * step,
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

export type Tube = Pick<Asked, 'main' | 'light' | 'die'>;

const dieOf = ({ dies }: Job, { outerDiameter }: Section): Die | undefined =>
  dies.find((die) => die.outerDiameter === outerDiameter);

/** The sections that a die fits: of these hoops, legs and stays can be. */
export const bendable = (job: Job): readonly Section[] =>
  job.sections.filter((section) => dieOf(job, section) !== undefined);

/** The sections that bars between can be of: none is thicker than the hoops, which could not cut it right through. */
export const lightEnough = ({ sections }: Job, main: Section): readonly Section[] =>
  sections.filter(({ outerDiameter }) => outerDiameter <= main.outerDiameter);

/** Hoops of this section, which a die fits; the bars between stay as they are unless they would be thicker. */
export const ofMain = (job: Job, main: Section, light: SectionId): Tube => ({
  main: main.id,
  light: lightEnough(job, main).some(({ id }) => id === light) ? light : main.id,
  die: dieOf(job, main)!.id,
});

/**
 * The tube and the die for a start: the thickest section that a die fits, the first of as thick ones; for the bars between the next
 * thinner one. Null where no die fits any section.
 */
export function firstTube(job: Job): Tube | null {
  const byDiameter = job.sections.toSorted((a, b) => b.outerDiameter - a.outerDiameter);
  const [main] = bendable({ ...job, sections: byDiameter });
  if (main === undefined) return null;
  const light = byDiameter.find(({ outerDiameter }) => outerDiameter < main.outerDiameter) ?? main;
  return ofMain(job, main, light.id);
}
