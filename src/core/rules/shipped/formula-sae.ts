/** Formula SAE Rules 2026 version 1.0, tube frames, in our own words, as read; what is from memory is marked. */
import type { RuleSheet } from '../../job/kinds/rule-sheet.ts';
import { article, threeDiameters } from './article.ts';

/** What is bent and is no hoop. */
const BETWEEN_HOOPS = [
  'rear-stay',
  'main-diagonal',
  'harness-bar',
  'rear-diagonal',
  'rear-cross-bar',
  'dash-bar',
  'pillar-brace',
  'door-bar',
  'sill-bar',
  'roof-diagonal',
];

/** F.3.4 and F.5, and the shoulder straps. */
export const FORMULA_SAE: RuleSheet = {
  sheet: 'fsae-2026',
  body: 'Formula SAE Rules',
  edition: '2026 V1.0',
  on: '',
  checks: [
    article('F.3.4.1', 'read', 'section', 'Size A, hoops and harness bar.', {
      roles: ['main-hoop', 'front-hoop', 'harness-bar'],
      outerDiameter: 25,
      wall: 2,
      area: 173,
      secondMoment: 11_320,
    }),
    article('F.3.4.1', 'memory', 'section', 'Size B, braces of the main hoop.', {
      roles: ['rear-stay'],
      outerDiameter: 25,
      wall: 1.2,
      area: 114,
      // The book prints 8 509, and means 25.4 x 1.6, which has 8 508.8 and is 8 509 as printed.
      secondMoment: 8508.5,
    }),
    article(
      'F.3.4.1',
      'read',
      'ask',
      'Size C: 6 695 mm⁴, 91 mm², 25.0 mm across, wall 1.2 mm at least; size D: 18 015 mm⁴, 126 mm², 35.0 mm across, wall 1.2 mm at least. The book says which members.',
    ),
    threeDiameters('F.5.2', 'read'),
    article(
      'F.5.2',
      'read',
      'support',
      'A bent member is held by a tube at its place farthest from the line between its ends, at most 30 degrees out of the plane of the bend. Within one diameter of that place counts here.',
      { roles: BETWEEN_HOOPS, most: 30 },
    ),
    article(
      'F.5.6.4',
      'read',
      'head-room line-front',
      'The helmet 50 mm at least under the line from the top of the main hoop to that of the front hoop.',
      {
        least: 50,
      },
    ),
    article(
      'F.5.6.4',
      'read',
      'head-room line-stay',
      'The helmet 50 mm at least under the line from the top of the main hoop to the lower end of the rear brace.',
      {
        least: 50,
      },
    ),
    article(
      'F.5.6.5',
      'read',
      'ask',
      'Head circle of 300 mm within 25 mm of the head restraint, on the template of three circles (200, 200, 300 mm; centres 490 and 280 mm apart).',
    ),
    article('F.5.6.5', 'read', 'ask', 'Centre of the hips 915 mm at least from the face of the pedals.'),
    article('F', 'read', 'one-piece', 'Main hoop in one piece.', { roles: ['main-hoop'] }),
    article(
      'F.5',
      'read',
      'tilt plane',
      'Main hoop less than 10 degrees from the vertical above the upper side tube.',
      {
        roles: ['main-hoop'],
        most: 10,
        strictly: true,
      },
    ),
    article('F', 'read', 'inside-width least', 'Main hoop: legs 380 mm apart inside at least.', {
      roles: ['main-hoop'],
      least: 380,
    }),
    article('F', 'read', 'present each-side', 'Two braces of the main hoop.', { roles: ['rear-stay'], least: 1 }),
    article('F', 'read', 'straight', 'Braces straight.', { roles: ['rear-stay'] }),
    article('F', 'read', 'reach below-top', 'Braces begin 160 mm below the top of the main hoop at most.', {
      roles: ['rear-stay'],
      end: 'upper',
      onto: ['main-hoop'],
      most: 160,
    }),
    article('F', 'read', 'tilt joint', 'Braces stand 30 degrees to the main hoop at least.', {
      roles: ['rear-stay'],
      end: 'upper',
      onto: ['main-hoop'],
      least: 30,
    }),
    article('F', 'read', 'tilt plane', 'Front hoop less than 20 degrees from the vertical.', {
      roles: ['front-hoop'],
      most: 20,
      strictly: true,
    }),
    article(
      'harness',
      'read',
      'harness strap-angle',
      'Shoulder straps: up to 10 degrees above level, down to 20 below.',
      {
        least: -20,
        most: 10,
      },
    ),
  ],
};
