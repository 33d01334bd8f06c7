/** FIA Appendix J, article 253-8, in our own words, from a text that quotes the 2009 edition; what is from memory is marked. */
import type { RuleSheet } from '../../job/kinds/rule-sheet.ts';
import { article, roundEnough, threeDiameters } from './article.ts';

const HOOPS = ['main-hoop', 'side-hoop'];
const STANDING = ['main-hoop', 'front-hoop', 'side-hoop', 'front-leg'];

/** Its articles in the order of the book, as far as they are known here. */
export const FIA: RuleSheet = {
  sheet: 'fia-j-253-8',
  body: 'FIA Appendix J, art. 253-8',
  edition: '2009, as quoted; marked figures from memory',
  on: '',
  checks: [
    article('253-8', 'quoted', 'section', 'Main and lateral rollbars: 45 x 2.5 or 50 x 2.0 mm at least.', {
      roles: HOOPS,
      sizes: [
        { outerDiameter: 45, wall: 2.5 },
        { outerDiameter: 50, wall: 2 },
      ],
    }),
    article('253-8', 'quoted', 'section', 'All other parts: 38 x 2.5 or 40 x 2.0 mm at least.', {
      sizes: [
        { outerDiameter: 38, wall: 2.5 },
        { outerDiameter: 40, wall: 2 },
      ],
    }),
    article(
      '253-8',
      'quoted',
      'ask',
      'Cold-drawn seamless unalloyed carbon steel of 350 N/mm² at least. Sources differ whether that is yield or tensile strength: look it up.',
    ),
    threeDiameters('253-8', 'quoted'),
    roundEnough('253-8', 'quoted'),
    article('253-8', 'memory', 'tilt plane', 'Main rollbar: within 10 degrees of the vertical.', {
      roles: ['main-hoop'],
      most: 10,
    }),
    article('253-8', 'memory', 'straight', 'Backstays straight.', { roles: ['rear-stay'] }),
    article('253-8', 'memory', 'tilt', 'Backstays run rearward, 30 degrees from the vertical at least.', {
      roles: ['rear-stay'],
      runs: 'rearward',
      least: 30,
    }),
    article('253-8', 'memory', 'reach joint', 'Diagonal: upper end within 100 mm of the backstay’s joint.', {
      roles: ['main-diagonal'],
      end: 'upper',
      onto: ['rear-stay'],
      most: 100,
    }),
    article('253-8', 'memory', 'reach foot', 'Diagonal: lower end within 100 mm of the main rollbar’s foot.', {
      roles: ['main-diagonal'],
      end: 'lower',
      onto: ['main-hoop'],
      most: 100,
    }),
    article('253-8', 'memory', 'reach opening', 'Door bars: upper end no higher than half of the door’s opening.', {
      roles: ['door-bar'],
      end: 'upper',
      most: 0.5,
    }),
    article('253-8', 'quoted', 'plate bolts', 'Feet of main, front and lateral rollbars: three bolts at least.', {
      roles: STANDING,
      least: 3,
    }),
    article('253-8', 'quoted', 'plate thickness', 'Their plates 3 mm thick at least.', {
      roles: STANDING,
      least: 3,
    }),
    article('253-8', 'quoted', 'plate', 'Their plates 120 cm² at least.', { roles: STANDING, least: 12_000 }),
    article('253-8', 'quoted', 'plate', 'Feet of the backstays: plates 60 cm² at least.', {
      roles: ['rear-stay'],
      least: 6000,
    }),
    article('253-8', 'memory', 'plate hole', 'Bolts M8 at least.', {
      roles: [...STANDING, 'rear-stay'],
      least: 8,
    }),
    article('253-8', 'memory', 'ask', 'Bolts of class 8.8 at least.'),
    article('253-8', 'memory', 'ask', 'Gussets of sheet 1.0 mm thick at least.'),
    article(
      '253-6.2',
      'memory',
      'harness strap-angle',
      'Shoulder straps: down to 45 degrees below level; about 10 is advised.',
      {
        least: -45,
        aim: -10,
      },
    ),
  ],
};
