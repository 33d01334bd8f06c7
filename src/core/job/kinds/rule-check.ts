/**
 * One article of a rule sheet, in the words of whoever typed it: what is measured, on whom, and within what. Lengths mm, areas mm2, second moments of area
 * mm4, angles degrees, masses kg. `core/rules` says how each is measured.
 */
import * as v from 'valibot';
import { LEAST_SIZE, MOST_ROLES, MOST_SIZES } from '../limits.ts';
import { across, mass, number, size, words } from './fields.ts';
import type { Part } from './kind.ts';

/** What a figure counts: it is typed and shown as that. A share lies between 0 and 1, `times` is a plain factor. */
export type Quantity = 'length' | 'angle' | 'area' | 'secondMoment' | 'count' | 'times' | 'share';

/** What each kind of article measures, by what the figure counts; the first is meant where a file says nothing. */
export const RULE_KINDS = {
  section: { size: 'length' },
  'one-piece': { pieces: 'count' },
  'bend-radius': { diameters: 'times', radius: 'length', roundness: 'share' },
  'bend-count': { count: 'count', sum: 'angle', each: 'angle' },
  straight: { bends: 'angle', 'free-length': 'length' },
  tilt: { axis: 'angle', plane: 'angle', joint: 'angle' },
  reach: { foot: 'length', joint: 'length', corner: 'length', 'below-top': 'length', opening: 'share' },
  present: { bars: 'count', 'each-side': 'count', feet: 'count', gussets: 'count' },
  plate: { area: 'area', thickness: 'length', bolts: 'count', hole: 'length' },
  support: { lean: 'angle' },
  harness: { 'strap-angle': 'angle', height: 'length' },
  'inside-width': { feet: 'length', least: 'length' },
  'head-room': {
    box: 'length',
    'line-front': 'length',
    'line-stay': 'length',
    behind: 'length',
    circle: 'length',
    padding: 'length',
  },
  'gap-window': { surfaces: 'length', axes: 'length' },
  ask: { answer: 'count' },
} as const satisfies Readonly<Record<string, Readonly<Record<string, Quantity>>>>;

export type RuleKind = keyof typeof RULE_KINDS;

/** How sure its figures are: read in a copy of the book, in a text that quotes it, from memory, or the shop's own typing. */
export const RULE_MARKS = ['read', 'quoted', 'memory', 'own'] as const;
export type RuleMark = (typeof RULE_MARKS)[number];

/** What a person said of an article, be it the inspector or who asked him. */
export interface RuleAnswer {
  readonly says: 'met' | 'not-met';
  readonly by: string;
  readonly note: string;
  /** Date, as 2026-03-02; '' when not noted. */
  readonly on: string;
}

interface OfEveryCheck {
  readonly article: string;
  readonly text: string;
  readonly mark: RuleMark;
  /** Whom it concerns, by role; empty: every tube. */
  readonly roles: readonly string[];
  /** Of those the straight ones alone, or the bent ones. */
  readonly only?: 'straight' | 'bent';
  /** The bars that it is measured to, by role. */
  readonly onto?: readonly string[];
  /** The end of the bar that counts. Absent: every end that there is. */
  readonly end?: 'upper' | 'lower';
  /** A tilt: from what it is counted. Absent: from the vertical. */
  readonly from?: 'vertical' | 'level';
  /** A tilt: the way that the bar has to run from its upper end. */
  readonly runs?: 'rearward' | 'forward';
  /** Both count as within, unless it says otherwise. */
  readonly least?: number;
  readonly most?: number;
  /** What is advised within them. */
  readonly aim?: number;
  /** The limit itself does not count as within. */
  readonly strictly?: true;
  /** A section: tubes of which one has to be met in diameter and wall. */
  readonly sizes?: readonly RuleSize[];
  /** A section: by these instead, each the least. */
  readonly area?: number;
  readonly secondMoment?: number;
  readonly outerDiameter?: number;
  readonly wall?: number;
  /** The area of a plate: what a box counts with, the outline that it covers or the foot of its walls. Absent: the book has not been asked. */
  readonly box?: 'covers' | 'touches';
  /** mm that a wall may be thinner than it is asked for. */
  readonly allowance?: number;
  /** A support: mm along the bar from its farthest place, within which it has to land. A ball: its diameter. */
  readonly within?: number;
  readonly diameter?: number;
  /** It binds cars of more than this, and of no more than that, kg. */
  readonly massFrom?: number;
  readonly massUpTo?: number;
  /** Of the guided page: which question it answers. */
  readonly question?: string;
  readonly answer?: RuleAnswer;
}

export interface RuleSize {
  readonly outerDiameter: number;
  readonly wall: number;
}

/** An article of that kind. */
export type CheckOf<K extends RuleKind> = OfEveryCheck & {
  readonly kind: K;
  readonly of: keyof (typeof RULE_KINDS)[K];
};

/** An article of any kind. */
export type RuleCheck = { readonly [K in RuleKind]: CheckOf<K> }[RuleKind];

/** What its figures count. */
export const quantityOf = ({ kind, of }: RuleCheck): Quantity =>
  (RULE_KINDS[kind] as Readonly<Record<string, Quantity>>)[of]!;

/** Of either sign: a strap may lie below level, an overlap below nothing. Areas and second moments are large. */
const FARTHEST_LIMIT = 1e8;

const limit = number(
  -FARTHEST_LIMIT,
  FARTHEST_LIMIT,
  'beyond any figure of a rule book',
  'beyond any figure of a rule book',
);
const positive = number(LEAST_SIZE, FARTHEST_LIMIT, `below ${LEAST_SIZE}`, 'beyond any figure of a rule book');
const roles = v.pipe(v.array(words), v.maxLength(MOST_ROLES, `more than ${MOST_ROLES}`));

const common = {
  article: v.optional(words, ''),
  text: v.optional(words, ''),
  mark: v.optional(v.picklist(RULE_MARKS), 'own'),
  roles: v.optional(roles, []),
  only: v.exactOptional(v.picklist(['straight', 'bent'])),
  onto: v.exactOptional(roles),
  end: v.exactOptional(v.picklist(['upper', 'lower'])),
  from: v.exactOptional(v.picklist(['vertical', 'level'])),
  runs: v.exactOptional(v.picklist(['rearward', 'forward'])),
  least: v.exactOptional(limit),
  most: v.exactOptional(limit),
  aim: v.exactOptional(limit),
  strictly: v.exactOptional(v.literal(true)),
  sizes: v.exactOptional(
    v.pipe(
      v.array(v.looseObject({ outerDiameter: across, wall: across })),
      v.maxLength(MOST_SIZES, `more than ${MOST_SIZES}`),
    ),
  ),
  area: v.exactOptional(positive),
  secondMoment: v.exactOptional(positive),
  outerDiameter: v.exactOptional(across),
  wall: v.exactOptional(across),
  box: v.exactOptional(v.picklist(['covers', 'touches'])),
  allowance: v.exactOptional(across),
  within: v.exactOptional(size),
  diameter: v.exactOptional(size),
  massFrom: v.exactOptional(mass),
  massUpTo: v.exactOptional(mass),
  question: v.exactOptional(words),
  answer: v.exactOptional(
    v.looseObject({
      says: v.picklist(['met', 'not-met']),
      by: v.optional(words, ''),
      note: v.optional(words, ''),
      on: v.optional(words, ''),
    }),
  ),
};

const shapeOf = <K extends RuleKind>(kind: K) => {
  const all = Object.keys(RULE_KINDS[kind]) as [string, ...string[]];
  return v.looseObject({ ...common, kind: v.literal(kind), of: v.optional(v.picklist(all), all[0]) });
};

export const checkPart: Part<RuleCheck> = {
  // That `of` is one of its kind's own is known by how the shapes are made, not by their type.
  shape: v.variant('kind', (Object.keys(RULE_KINDS) as RuleKind[]).map(shapeOf)) as unknown as Part<RuleCheck>['shape'],
  keys: [
    'article kind of roles only onto from runs sizes outerDiameter wall area secondMoment box allowance least most aim strictly within diameter end massFrom massUpTo mark text question answer',
    'outerDiameter wall',
    'says by note on',
  ],
};
