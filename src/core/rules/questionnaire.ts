/**
 * The guided page of a rule sheet, as data: what rule books ask about a cage, in the order in which most go through it. Each question is a line in the trade's
 * words; its parts are the articles that come of it, with the figures that are typed. Common practice: a book may ask more, and that is typed as an article.
 */
import type { RuleCheck, RuleKind } from '../job/kinds/rule-check.ts';
import type { FigureName } from './figures.ts';

export interface Question {
  /** An article says by it which question it answers. */
  readonly id: string;
  readonly group: (typeof QUESTION_GROUPS)[number];
  readonly asks: string;
  readonly parts: readonly Part[];
}

/** One article that comes of a question. */
export interface Part {
  /** The article without a figure. */
  readonly check: RuleCheck;
  /** What is typed; none where the article is there or is not: then `words` says what that means. */
  readonly figures: readonly AskedFigure[];
  readonly words?: string;
}

export interface AskedFigure {
  readonly name: FigureName;
  readonly words: string;
}

/** What the questions are about, as headings, in the order of the page. */
export const QUESTION_GROUPS = [
  'Tube',
  'Main hoop',
  'Bends',
  'Rear stays',
  'Diagonal',
  'Front',
  'Doors and roof',
  'Harness',
  'Feet',
  'Room for the head',
  'For the inspector to see',
] as const;

const article = <K extends RuleKind>(kind: K, of: (RuleCheck & { kind: K })['of'], fields: Partial<RuleCheck> = {}) =>
  ({ article: '', text: '', mark: 'own', roles: [], ...fields, kind, of }) as RuleCheck;

const figure = (name: FigureName, words: string): AskedFigure => ({ name, words });
const LEAST = figure('least', 'at least');
const MOST = figure('most', 'at most');
const TUBE = figure('sizes', 'tube');

const HOOPS = ['main-hoop', 'front-hoop', 'side-hoop'];
const MAIN_TUBES = [...HOOPS, 'front-leg', 'rear-stay'];
const OTHER_TUBES = [
  'main-diagonal',
  'rear-diagonal',
  'rear-cross-bar',
  'windscreen-header',
  'dash-bar',
  'pillar-brace',
  'sill-bar',
  'roof-diagonal',
];

const least = (check: RuleCheck, words = LEAST.words): Part => ({ check, figures: [figure('least', words)] });
const most = (check: RuleCheck, words = MOST.words): Part => ({ check, figures: [figure('most', words)] });
const tube = (roles: readonly string[]): Part => ({ check: article('section', 'size', { roles }), figures: [TUBE] });
const there = (roles: readonly string[], words = 'how many'): Part =>
  least(article('present', 'bars', { roles }), words);
const look = (id: string, group: Question['group'], asks: string): Question => ({
  id,
  group,
  asks,
  parts: [{ check: article('ask', 'answer', { text: asks }), figures: [], words: 'the book asks it' }],
});

const plates = (id: string, asks: string, roles: readonly string[]): Question => ({
  id,
  group: 'Feet',
  asks,
  parts: [
    least(article('plate', 'area', { roles }), 'area at least'),
    least(article('plate', 'thickness', { roles }), 'thick at least'),
  ],
});
const bolts = (id: string, asks: string, roles: readonly string[]): Question => ({
  id,
  group: 'Feet',
  asks,
  parts: [
    least(article('plate', 'bolts', { roles }), 'bolts at least'),
    least(article('plate', 'hole', { roles }), 'hole at least'),
  ],
});

/** In the order of a rule book. */
export const QUESTIONS: readonly Question[] = [
  {
    id: 'tube-light',
    group: 'Tube',
    asks: 'Which tube may hoops, front legs and rear stays be of?',
    parts: [
      {
        check: article('section', 'size', { roles: MAIN_TUBES }),
        figures: [TUBE, figure('massUpTo', 'in cars up to')],
      },
    ],
  },
  {
    id: 'tube-heavy',
    group: 'Tube',
    asks: 'Which tube, in heavier cars?',
    parts: [
      { check: article('section', 'size', { roles: MAIN_TUBES }), figures: [TUBE, figure('massFrom', 'in cars over')] },
    ],
  },
  { id: 'tube-other', group: 'Tube', asks: 'Which tube may the bars between them be of?', parts: [tube(OTHER_TUBES)] },
  {
    id: 'hoop-one-piece',
    group: 'Main hoop',
    asks: 'Must a hoop be one piece, and with how many bends at most?',
    parts: [
      { check: article('one-piece', 'pieces', { roles: HOOPS }), figures: [], words: 'in one piece' },
      most(article('bend-count', 'count', { roles: ['main-hoop'] }), 'bends at most'),
    ],
  },
  {
    id: 'hoop-lean',
    group: 'Main hoop',
    asks: 'How far may the main hoop lean from upright?',
    parts: [most(article('tilt', 'plane', { roles: ['main-hoop'] }))],
  },
  {
    id: 'hoop-width',
    group: 'Main hoop',
    asks: 'How wide must it be inside, at its feet?',
    parts: [least(article('inside-width', 'feet', { roles: ['main-hoop'] }))],
  },
  {
    id: 'bend-radius',
    group: 'Bends',
    asks: 'How tight may a bend be: centreline radius in diameters of the tube?',
    parts: [least(article('bend-radius', 'diameters'))],
  },
  {
    id: 'roundness',
    group: 'Bends',
    asks: 'How round must a bend stay: least over greatest diameter (0.9)?',
    parts: [least(article('bend-radius', 'roundness'))],
  },
  {
    id: 'stays',
    group: 'Rear stays',
    asks: 'How many rear stays, and must they be straight?',
    parts: [
      there(['rear-stay']),
      { check: article('straight', 'bends', { roles: ['rear-stay'] }), figures: [], words: 'straight' },
    ],
  },
  {
    id: 'stay-angle',
    group: 'Rear stays',
    asks: 'At what angle from upright may they run rearward?',
    parts: [{ check: article('tilt', 'axis', { roles: ['rear-stay'], runs: 'rearward' }), figures: [LEAST, MOST] }],
  },
  {
    id: 'stay-start',
    group: 'Rear stays',
    asks: 'Where may they begin: how far below the hoop’s top, how far from its corner?',
    parts: [
      most(
        article('reach', 'below-top', { roles: ['rear-stay'], onto: ['main-hoop'], end: 'upper' }),
        'below the top at most',
      ),
      most(
        article('reach', 'corner', { roles: ['rear-stay'], onto: ['main-hoop'], end: 'upper' }),
        'from the corner at most',
      ),
    ],
  },
  {
    id: 'diagonal',
    group: 'Diagonal',
    asks: 'How many diagonals in the main hoop?',
    parts: [there(['main-diagonal'])],
  },
  {
    id: 'diagonal-ends',
    group: 'Diagonal',
    asks: 'How near must its ends come: the upper to a stay, the lower to the hoop’s foot?',
    parts: [
      most(
        article('reach', 'joint', { roles: ['main-diagonal'], onto: ['rear-stay'], end: 'upper' }),
        'to the stay at most',
      ),
      most(
        article('reach', 'foot', { roles: ['main-diagonal'], onto: ['main-hoop'], end: 'lower' }),
        'to the foot at most',
      ),
    ],
  },
  {
    id: 'front',
    group: 'Front',
    asks: 'How many front legs, side hoops or front hoops?',
    parts: [there(['front-leg', 'side-hoop', 'front-hoop'])],
  },
  {
    id: 'header',
    group: 'Front',
    asks: 'Is a header over the windscreen asked, and a bar under the dash?',
    parts: [there(['windscreen-header'], 'headers'), there(['dash-bar'], 'dash bars')],
  },
  {
    id: 'door-bars',
    group: 'Doors and roof',
    asks: 'How many door bars on each side, and of which tube?',
    parts: [least(article('present', 'each-side', { roles: ['door-bar'] }), 'on each side'), tube(['door-bar'])],
  },
  {
    id: 'door-height',
    group: 'Doors and roof',
    asks: 'How high may a door bar end, of the door’s opening (0.5 is half)?',
    parts: [most(article('reach', 'opening', { roles: ['door-bar'], end: 'upper' }))],
  },
  {
    id: 'sill',
    group: 'Doors and roof',
    asks: 'Are sill bars asked, and how far from the door bars?',
    parts: [
      least(article('present', 'each-side', { roles: ['sill-bar'] }), 'on each side'),
      least(article('gap-window', 'surfaces', { roles: ['sill-bar'], onto: ['door-bar'] }), 'apart at least'),
    ],
  },
  {
    id: 'roof',
    group: 'Doors and roof',
    asks: 'How many diagonals in the roof?',
    parts: [there(['roof-diagonal'])],
  },
  {
    id: 'harness',
    group: 'Harness',
    asks: 'Is a harness bar asked, and of which tube?',
    parts: [there(['harness-bar']), tube(['harness-bar'])],
  },
  {
    id: 'strap-angle',
    group: 'Harness',
    asks: 'At what angle may the straps leave the shoulders: below level counts minus?',
    parts: [{ check: article('harness', 'strap-angle', { roles: ['harness-bar'] }), figures: [LEAST, MOST] }],
  },
  {
    id: 'mountings',
    group: 'Feet',
    asks: 'At how many places must the cage stand on the car?',
    parts: [least(article('present', 'feet'))],
  },
  plates('hoop-plates', 'How large and how thick are the plates under the main hoop?', ['main-hoop']),
  bolts('hoop-bolts', 'How many bolts in each of them, and through what hole?', ['main-hoop']),
  plates('stay-plates', 'How large and how thick are the plates under the stays?', ['rear-stay']),
  bolts('stay-bolts', 'How many bolts there, and through what hole?', ['rear-stay']),
  {
    id: 'gussets',
    group: 'Feet',
    asks: 'How many gussets, both sides counted?',
    parts: [least(article('present', 'gussets'))],
  },
  {
    id: 'helmet',
    group: 'Room for the head',
    asks: 'How far must the helmet stay from the tubes, and how far in front of those behind?',
    parts: [
      least(article('head-room', 'box'), 'all round at least'),
      {
        check: article('head-room', 'behind'),
        figures: [figure('least', 'behind at least'), figure('most', 'and at most')],
      },
    ],
  },
  {
    id: 'helmet-line',
    group: 'Room for the head',
    asks: 'How far under the line from hoop to front, and from hoop to stay, must the helmet be?',
    parts: [
      least(article('head-room', 'line-front'), 'to the front at least'),
      least(article('head-room', 'line-stay'), 'to the stay at least'),
    ],
  },
  {
    id: 'padding-zone',
    group: 'Room for the head',
    asks: 'Within what distance of a helmet must tubes be padded?',
    parts: [least(article('head-room', 'padding'), 'nearer than')],
  },
  look('holes', 'For the inspector to see', 'Inspection holes are drilled where the book wants them'),
  look('welds', 'For the inspector to see', 'Welds run all round, by a welder whom the book takes'),
  look('certificates', 'For the inspector to see', 'Certificates of the tube are at hand, batch by batch'),
  look('padding', 'For the inspector to see', 'Padding of the kind that the book names is on the tubes near heads'),
  look('seat', 'For the inspector to see', 'Seat and harness are mounted where the book wants them'),
];
