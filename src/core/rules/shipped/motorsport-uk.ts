/** Motorsport UK National Competition Rules 2026, in our own words, as read: chapter 7 appendix 3 (safety cages), and the helmet of single-seaters (chapter 12 appendix 14). */
import type { RuleSheet } from '../../job/kinds/rule-sheet.ts';
import { article, roundEnough, threeDiameters } from './article.ts';

const ROLLBARS = ['main-hoop', 'front-hoop', 'side-hoop', 'front-leg'];
const LIGHT = [
  { outerDiameter: 38, wall: 2.5 },
  { outerDiameter: 40, wall: 2 },
];

/** Cages of closed cars. */
export const MOTORSPORT_UK: RuleSheet = {
  sheet: 'msuk-ncr-7-3',
  body: 'Motorsport UK National Competition Rules, ch. 7 app. 3',
  edition: '2026',
  on: '',
  checks: [
    article('app. 3', 'read', 'one-piece', 'Rollbars in one piece, without joints.', { roles: ROLLBARS }),
    article('8.1', 'read', 'present each-side', 'Backstays are compulsory.', { roles: ['rear-stay'], least: 1 }),
    article('8.1', 'read', 'straight', 'Backstays straight.', { roles: ['rear-stay'] }),
    article('8.1', 'read', 'tilt', 'Backstays 30 degrees from the vertical at least.', {
      roles: ['rear-stay'],
      least: 30,
    }),
    article('9.1-9.3', 'read', 'present', 'One diagonal at least.', { roles: ['main-diagonal'], least: 1 }),
    article('9.1-9.3', 'read', 'straight', 'The diagonal straight.', { roles: ['main-diagonal'] }),
    article('9.1-9.3', 'read', 'reach foot', 'Its lower end within 100 mm of the rollbar’s foot.', {
      roles: ['main-diagonal'],
      end: 'lower',
      onto: ['main-hoop'],
      most: 100,
    }),
    article('9.1-9.3', 'read', 'reach joint', 'Its upper end within 100 mm of the backstay’s joint.', {
      roles: ['main-diagonal'],
      end: 'upper',
      onto: ['rear-stay'],
      most: 100,
    }),
    article('app. 3', 'read', 'plate', 'Plates of the backstays 60 cm² at least.', {
      roles: ['rear-stay'],
      least: 6000,
    }),
    article('16', 'read', 'head-room padding', 'Padding is recommended on any tube within 150 mm of a helmet.', {
      least: 150,
    }),
    article('19.1', 'read', 'section', 'Harness bar: 38 x 2.5 or 40 x 2.0 mm at least.', {
      roles: ['harness-bar'],
      sizes: LIGHT,
    }),
    article('20.1', 'read', 'section', 'Compulsory members: 45 x 2.5 or 50 x 2.0 mm at least.', {
      roles: [...ROLLBARS, 'rear-stay', 'main-diagonal'],
      sizes: [
        { outerDiameter: 45, wall: 2.5 },
        { outerDiameter: 50, wall: 2 },
      ],
    }),
    article('20.1', 'read', 'section', 'Optional members: 38 x 2.5 or 40 x 2.0 mm at least.', { sizes: LIGHT }),
    article('20.1', 'read', 'ask', 'Steel of 350 N/mm² yield strength at least.'),
    threeDiameters('20.3', 'read'),
    roundEnough('20.3', 'read'),
  ],
};

/** Single-seaters alone. */
export const MOTORSPORT_UK_SINGLE_SEATERS: RuleSheet = {
  sheet: 'msuk-ncr-12-14',
  body: 'Motorsport UK National Competition Rules, ch. 12 app. 14 (single-seaters)',
  edition: '2026',
  on: '',
  checks: [
    article('app. 14', 'read', 'head-room line-front', 'The helmet 50 mm at least under the line over the structure.', {
      least: 50,
    }),
  ],
};
