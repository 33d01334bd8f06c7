/**
 * Plausible closed cars, drawn one figure from another: hoop, pillar, towers and feet as they stand to each other in a car. Ranges are common
 * practice.
 */
import fc from 'fast-check';
import { emptyJob } from '../../../../src/core/job/empty-job.ts';
import type { Job } from '../../../../src/core/job/types.ts';
import { FIGURE_NAMES, FIRST_BARS, type Asked, type FigureName } from '../../../../src/core/shape/starters/asked.ts';
import { LAYOUTS } from '../../../../src/core/survey/spots.ts';

const between = (least: number, greatest: number): fc.Arbitrary<number> =>
  fc.integer({ min: 10 * least, max: 10 * greatest }).map((tenths) => tenths / 10);

type Figures = Readonly<Record<FigureName, number>>;

/** The roof over the belt line, the sides over the floor, the windscreen before the roof, all by what lies between them. */
export const carFigures: fc.Arbitrary<Figures> = fc
  .record({
    floorWidth: between(1150, 1350),
    beltOut: between(60, 110),
    beltHeight: between(550, 750),
    roofIn: between(230, 330),
    roofUp: between(430, 520),
    towerIn: between(280, 420),
    towerHeight: between(400, 650),
    towerBehind: between(600, 950),
    screenTopAhead: between(450, 700),
    screenTopIn: between(0, 80),
    screenTopDown: between(20, 80),
    screenFootBelowBelt: between(-60, 60),
    pillarSlope: between(1.0, 1.6),
    screenFootIn: between(30, 110),
    footBehind: between(50, 250),
    footIn: between(40, 140),
    frontFootHeight: between(0, 120),
    harnessDown: between(-40, 60),
    gap: between(25, 40),
  })
  .map((drawn) => {
    const beltWidth = drawn.floorWidth + drawn.beltOut;
    const roofWidth = beltWidth - drawn.roofIn;
    const roofHeight = drawn.beltHeight + drawn.roofUp;
    const screenTopHeight = roofHeight - drawn.screenTopDown;
    const screenFootHeight = Math.min(Math.max(drawn.beltHeight - drawn.screenFootBelowBelt, 600), 780);
    const screenFootAhead = drawn.screenTopAhead + drawn.pillarSlope * (screenTopHeight - screenFootHeight);
    const screenFootWidth = beltWidth - drawn.screenFootIn;
    return {
      floorWidth: drawn.floorWidth,
      beltWidth,
      beltHeight: drawn.beltHeight,
      roofWidth,
      roofHeight,
      towerWidth: beltWidth - drawn.towerIn,
      towerHeight: Math.min(drawn.towerHeight, drawn.beltHeight),
      towerBehind: drawn.towerBehind,
      screenTopAhead: drawn.screenTopAhead,
      screenTopWidth: roofWidth - drawn.screenTopIn,
      screenTopHeight,
      screenFootAhead,
      screenFootWidth,
      screenFootHeight,
      frontFootAhead: screenFootAhead - drawn.footBehind,
      frontFootWidth: screenFootWidth - drawn.footIn,
      frontFootHeight: drawn.frontFootHeight,
      harnessHeight: drawn.beltHeight - drawn.harnessDown,
      gap: drawn.gap,
    };
  });

/** mm: outer diameters of hoops and of bars between, and the radius that the hoops are bent on. */
interface Bench {
  readonly main: number;
  readonly light: number;
  readonly bent: number;
}

const USUAL: Readonly<Record<Job['lengthUnit'], Bench>> = {
  mm: { main: 45, light: 38, bent: 150 },
  in: { main: 44.45, light: 38.1, bent: 152.4 },
};

/** From the thinnest tube that cages are made of, one size throughout, to the thickest (common practice). */
export const BENCHES: readonly Bench[] = [
  USUAL.mm,
  { main: 38, light: 38, bent: 115 },
  { main: 50.8, light: 44.45, bent: 152.4 },
];

/** What a shop has on its bench. */
export function shopJob(lengthUnit: Job['lengthUnit'], { main, light, bent }: Bench = USUAL[lengthUnit]): Job {
  const tube = (id: string, outerDiameter: number) => ({ id, name: id, outerDiameter, wall: 2.5, material: '' });
  return {
    ...emptyJob(lengthUnit),
    sections: [tube('main', main), tube('light', light)],
    dies: [
      {
        id: 'die',
        name: 'die',
        outerDiameter: main,
        centrelineRadius: bent,
        clampOffset: 0,
        leastStraight: 60,
        leastGrip: 130,
        greatestAngle: 120,
        radius: 'nominal',
      },
    ],
  };
}

export const asked: fc.Arbitrary<Asked> = fc
  .record({
    layout: fc.constantFrom(...LAYOUTS),
    figures: carFigures,
    driver: fc.constantFrom('left', 'right'),
    feet: fc.constantFrom('plates', 'boxes'),
    bars: fc.record({
      diagonal: fc.boolean(),
      harness: fc.boolean(),
      rear: fc.constantFrom('none', 'one', 'cross'),
      towerBar: fc.boolean(),
      doors: fc.constantFrom('none', 'cross', 'one', 'two'),
      sills: fc.boolean(),
      roof: fc.constantFrom('none', 'one', 'cross', 'vee'),
      dash: fc.boolean(),
      pillarBraces: fc.boolean(),
    }),
  })
  .map(({ figures, ...rest }) => ({
    ...rest,
    figures: said(figures),
    points: {},
    main: 'main',
    light: 'light',
    die: 'die',
  })) as fc.Arbitrary<Asked>;

export const said = (figures: Figures): Asked['figures'] =>
  Object.fromEntries(FIGURE_NAMES.map((name) => [name, { value: figures[name], guessed: false }])) as Asked['figures'];

export const plainly = (layout: Asked['layout'], figures: Asked['figures']): Asked => ({
  layout,
  figures,
  points: {},
  driver: 'left',
  bars: FIRST_BARS,
  feet: 'plates',
  main: 'main',
  light: 'light',
  die: 'die',
});
