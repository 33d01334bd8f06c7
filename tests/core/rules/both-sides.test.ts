/**
 * Every figure of every shipped sheet, and of every kind of article that none of them has, on both sides of its limit: a cage is drawn so that what the article
 * measures is, by its coordinates, just the limit, and then a hair past it. Head room and the harness have tests of their own.
 */
import { describe, expect, it } from 'vitest';
import { article } from '../../../src/core/rules/shipped/article.ts';
import { SHIPPED } from '../../../src/core/rules/shipped/sheets.ts';
import type { RuleCheck } from '../../../src/core/job/kinds/rule-check.ts';
import { AUTO, SQUARE } from '../../reference/jobs.ts';
import type { Triple } from '../../reference/oracles/space.ts';
import { HALF, hoop, OD, RADIUS, stay, TOP, verdictOn, type BarOf, type CageOf } from './cage.ts';

/** Kinds of article that no shipped sheet has, and bounds that none has. */
const OWN: readonly RuleCheck[] = [
  article('o1', 'own', 'bend-count', '', { roles: ['main-hoop'], most: 2 }),
  article('o2', 'own', 'bend-count sum', '', { roles: ['main-hoop'], least: 170, most: 190 }),
  article('o3', 'own', 'bend-count each', '', { roles: ['main-hoop'], most: 80 }),
  article('o4', 'own', 'straight free-length', '', { roles: ['tie'], most: 1016 }),
  article('o5', 'own', 'reach corner', '', { roles: ['main-diagonal'], end: 'upper', onto: ['main-hoop'], most: 127 }),
  article('o6', 'own', 'present feet', '', { least: 2 }),
  article('o7', 'own', 'inside-width', '', { roles: ['main-hoop'], least: 736 }),
  article('o8', 'own', 'gap-window', '', { roles: ['sill-bar'], onto: ['door-bar'], least: 100, most: 400 }),
  article('o9', 'own', 'gap-window axes', '', { roles: ['sill-bar'], onto: ['door-bar'], least: 150, most: 400 }),
  article('o10', 'own', 'tilt', '', { roles: ['rear-stay'], from: 'level', least: 20, most: 60 }),
  article('o11', 'own', 'bend-radius radius', '', { least: 140, most: 160 }),
  article('o12', 'own', 'present gussets', '', { roles: ['main-hoop'], least: 2 }),
];

const rad = (degrees: number): number => (degrees * Math.PI) / 180;

const FULL: Readonly<Record<string, BarOf>> = { hoop: hoop() };
const standing = (role: string, at: readonly Triple[]): BarOf => ({ role, at, ends: [SQUARE, SQUARE] });

/** The bars of these roles, as plain as they come. */
const plainBars = (roles: readonly string[]): Readonly<Record<string, BarOf>> => ({
  ...FULL,
  ...Object.fromEntries(
    roles
      .filter((role) => role !== 'main-hoop')
      .map((role, i): [string, BarOf] => [`b${i}`, { ...PLAIN[role]!, role }]),
  ),
});

const HOOP_AT = (x: number): BarOf['at'] => hoop().at.map(([, y, z]): Triple => [x, y, z]);
const LEG: BarOf = standing('', [
  [0, 560, 1000],
  [700, 560, 900],
  [900, 560, 0],
]);
const ACROSS = (z: number): BarOf => ({ role: '', at: [[0, HALF, z], [0, -HALF, z]] }); // prettier-ignore
const PLAIN: Readonly<Record<string, BarOf>> = {
  'front-hoop': standing('', HOOP_AT(900)),
  'side-hoop': LEG,
  'front-leg': LEG,
  'rear-stay': stay([0, 400, TOP], [-0.8, 0, -0.6]),
  'main-diagonal': { role: '', at: [[0, -HALF, 80], [0, 400, TOP]] }, // prettier-ignore
  'harness-bar': ACROSS(500),
};

/** A wall for that diameter by which the tube's second moment of area is this, mm4: by halving, of pi/64 (D^4 - d^4). */
function wallFor(secondMoment: number, D: number): number {
  let [low, high] = [0, D / 2];
  for (let i = 0; i < 80; i++) {
    const wall = (low + high) / 2;
    if ((Math.PI / 64) * (D ** 4 - (D - 2 * wall) ** 4) < secondMoment) low = wall;
    else high = wall;
  }
  return high;
}

interface Case {
  readonly limit: number;
  /** A cage of which the article measures that. */
  readonly cage: (value: number) => CageOf;
  /** Past the limit is less than it, or more. */
  readonly bound: 'least' | 'most';
  /** What is surely past it. */
  readonly hair?: number;
}

function casesOf(check: RuleCheck): readonly Case[] {
  const bars = plainBars(check.roles);
  const on = (cage: Case['cage'], hair?: number): readonly Case[] =>
    (['least', 'most'] as const).flatMap((bound) => {
      const limit = check[bound];
      return limit === undefined ? [] : [{ bound, limit, cage, ...(hair !== undefined && { hair }) }];
    });
  switch (check.kind) {
    case 'section':
      return sections(check, bars);
    case 'one-piece':
      return [{ bound: 'most', limit: 1, hair: 1, cage: (pieces) => ({ bars: { ...bars, ...(pieces > 1 && CUT) } }) }];
    case 'straight':
      return check.of === 'free-length'
        ? on((long) => ({ bars: { ...FULL, d: { role: 'tie', at: diagonalOf(long) } } }))
        : [{ bound: 'most', limit: 0, hair: 1, cage: (turn) => ({ bars: bentBy(check.roles[0]!, turn) }) }];
    case 'bend-radius':
      if (check.of === 'diameters') return on((times) => ({ bars, radius: times * OD }));
      if (check.of === 'radius') return on((radius) => ({ bars, radius }));
      return on((share) => ({ bars, bent: [measured('hoop', 2, share)] }));
    case 'bend-count':
      if (check.of === 'count') return on((count) => ({ bars: { hoop: bends(count) } }), 1);
      return on((angle) => ({ bars: { hoop: leaningIn(check.of === 'sum' ? angle / 2 : angle) } }));
    case 'tilt':
      return on((value) => ({ bars: tilted(check, value) }));
    case 'reach':
      return on((value) => reaching(check, value));
    case 'present':
      if (check.of === 'feet') return on((count) => ({ bars: { hoop: hoop(0, HALF, count > 1 ? PLATE : SQUARE) } }), 1);
      if (check.of === 'gussets') return on((count) => ({ bars: FULL, gussets: GUSSETS.slice(0, count) }), 1);
      return on((count) => ({ bars: counted(check, count) }), 1);
    case 'plate':
      return on((value) => plates(check, value), check.of === 'bolts' ? 1 : undefined);
    case 'support':
      return on((lean) => ({ bars: supported(check.roles[5]!, lean) }));
    case 'inside-width':
      return on((wide) => ({ bars: { hoop: hoop(0, (wide + OD) / 2) } }));
    case 'gap-window':
      return on((apart) => ({ bars: beside(check.of === 'axes' ? apart : apart + OD) }));
    default:
      return [];
  }
}

const PLATE = { fit: 'plate', normal: [0, 0, 1], allowance: 0 } as const;
const CUT: Readonly<Record<string, BarOf>> = {
  hoop: { ...hoop(), cutBy: ['through'] },
  through: { role: 'other', at: [[-300, 0, TOP], [300, 0, TOP]] }, // prettier-ignore
};

function sections(check: RuleCheck, bars: Readonly<Record<string, BarOf>>): readonly Case[] {
  const of = (outerDiameter: number, wall: number): CageOf => ({
    bars,
    outerDiameter,
    wall,
    radius: 4 * outerDiameter,
  });
  const { sizes = [], outerDiameter, wall, area, secondMoment } = check;
  return [
    ...sizes
      .flatMap((size): Case[] => [
        { bound: 'least', limit: size.wall, cage: (value) => of(size.outerDiameter, value) },
        // At a wall that no other size of the list is content with.
        {
          bound: 'least',
          limit: size.outerDiameter,
          cage: (value) => of(value, Math.min(...sizes.map((each) => each.wall))),
        },
      ])
      .filter(({ limit }) =>
        sizes.every(
          (size) => limit !== Math.min(...sizes.map((each) => each.outerDiameter)) || size.outerDiameter !== limit,
        ),
      ),
    ...(area === undefined
      ? []
      : ([
          { bound: 'least', limit: wall!, cage: (value) => of(40, value) },
          { bound: 'least', limit: outerDiameter!, cage: (value) => of(value, 4) },
          // A = pi t (D - t), solved for D at the least wall.
          { bound: 'least', limit: area, cage: (value) => of(value / (Math.PI * wall!) + wall!, wall!) },
          {
            bound: 'least',
            limit: secondMoment!,
            hair: 1,
            cage: (value) => of(outerDiameter!, wallFor(value, outerDiameter!)),
          },
        ] satisfies Case[])),
  ];
}

/** Of that length from the hoop's leg, square to it: nothing joins it between its ends. */
const diagonalOf = (long: number): readonly Triple[] => [
  [0, -HALF, 700],
  [0, -HALF + Math.sqrt(long ** 2 - 50 ** 2), 750],
];

/** A bar of that role that turns so many degrees in its middle. */
function bentBy(role: string, turn: number): Readonly<Record<string, BarOf>> {
  const [a, b] = PLAIN[role]!.at as [Triple, Triple];
  const way = b.map((x, i) => x - a[i]!) as [number, number, number];
  const long = Math.hypot(...way);
  const flat = Math.hypot(way[1], way[2]);
  const square: Triple = flat === 0 ? [0, 0, 1] : [0, -way[2] / flat, way[1] / flat];
  const off = (long / 2) * Math.tan(rad(turn / 2));
  const middle = a.map((x, i) => x + way[i]! / 2 + off * square[i]!) as unknown as Triple;
  const at = turn === 0 ? [a, b] : [a, middle, b];
  return { ...FULL, bar: { ...PLAIN[role]!, role, at } };
}

const measured = (tube: string, count: number, share: number) => ({
  tube,
  order: Array.from({ length: count }, (_, i) => ({ bend: i + 1, front: 'B' as const })),
  done: [],
  checks: [],
  bends: Array.from({ length: count }, (_, i) => ({
    bend: i + 1,
    pulled: 91,
    net: 90,
    across: [share * OD, OD] as const,
  })),
});

/** A hoop of two bends, and of three: its top pointed. */
const bends = (count: number): BarOf => {
  const { at } = hoop();
  return { ...hoop(), at: count === 2 ? at : [...at.slice(0, 2), [0, 0, TOP + 60], ...at.slice(2)] };
};

/** Its two bends turn by that each: below 90 the legs stand outwards. */
const leaningIn = (angle: number): BarOf => {
  const foot = HALF - TOP / Math.tan(rad(angle));
  const out = angle === 90 ? HALF : 2 * HALF - foot;
  return { ...hoop(), at: [[0, out, 0], [0, HALF, TOP], [0, -HALF, TOP], [0, -out, 0]] }; // prettier-ignore
};

function tilted(check: Extract<RuleCheck, { kind: 'tilt' }>, value: number): Readonly<Record<string, BarOf>> {
  const role = check.roles[0]!;
  if (check.of === 'plane') return { bar: { ...hoop(value), role } };
  if (check.of === 'joint')
    return { ...FULL, bar: stay([0, 200, TOP], [-Math.sin(rad(value)), Math.cos(rad(value)), 0], 350) };
  const fromVertical = rad(check.from === 'level' ? 90 - value : value);
  return { ...FULL, bar: stay([0, 400, TOP], [-Math.sin(fromVertical), 0, -Math.cos(fromVertical)]) };
}

function reaching(check: Extract<RuleCheck, { kind: 'reach' }>, value: number): CageOf {
  const diagonal = (from: Triple, to: Triple): BarOf => ({ role: 'main-diagonal', at: [from, to] });
  const stays = { stay: stay([0, 400, TOP], [-0.8, 0, -0.6]) };
  switch (check.of) {
    case 'joint':
      return { bars: { ...FULL, ...stays, d: diagonal([0, -HALF, 80], [0, 400 - value, TOP]) } };
    case 'foot':
      return { bars: { ...FULL, ...stays, d: diagonal([0, -HALF, value], [0, 400, TOP]) } };
    case 'corner':
      // In line with the top straight's sharp corner, which lies off the arc.
      return { bars: { ...FULL, d: diagonal([0, -HALF, 80], [0, HALF - value, TOP]) } };
    case 'below-top':
      return { bars: { ...FULL, bar: stay([0, HALF, TOP + OD / 2 - value], [-0.8, 0, -0.6]) } };
    case 'opening':
      return {
        bars: { ...FULL, bar: { role: 'door-bar', at: [[0, HALF, 300 + 700 * value], [800, HALF, 100]] } }, // prettier-ignore
        points: { 'Sill top at A-pillar, left': [900, 640, 320], 'Sill top at B-pillar, left': [0, 640, 300], 'Roof rail at B-pillar, left': [0, 600, 1000] }, // prettier-ignore
      };
  }
}

function counted(check: Extract<RuleCheck, { kind: 'present' }>, count: number): Readonly<Record<string, BarOf>> {
  const [role] = check.roles;
  const one = (i: number): [string, BarOf] => {
    if (role === 'main-diagonal') return [`d${i}`, { ...PLAIN[role]!, role }];
    return [`s${i}`, stay([0, 300 + 20 * i, TOP], [-0.8, 0, -0.6])];
  };
  const left = Array.from({ length: count }, (_, i) => one(i));
  const right = check.of === 'each-side' ? [one(9)].map(([id, bar]): [string, BarOf] => [id, { ...bar, at: bar.at.map(([x, y, z]): Triple => [x, -y, z]) }]) : []; // prettier-ignore
  return { ...FULL, ...Object.fromEntries([...left, ...right]) };
}

function plates(check: Extract<RuleCheck, { kind: 'plate' }>, value: number): CageOf {
  const side = check.of === 'area' ? Math.sqrt(value) : 150;
  const holes = Array.from({ length: check.of === 'bolts' ? value : 4 }, (_, i) => ({
    at: [40 * (i % 2 === 0 ? 1 : -1), 40 * (i < 2 ? 1 : -1)] as const,
    diameter: check.of === 'hole' ? value : 10,
  }));
  // Holes are no contact: where the area is asked there are none.
  const foot = { id: 'f', name: '', kind: 'plate', size: [side, side], thickness: check.of === 'thickness' ? value : 3, ...(check.of !== 'area' && { holes }) } as const; // prettier-ignore
  const on = { fit: 'foot', foot: 'f', normal: [0, 0, 1], allowance: 0 } as const;
  const role = check.roles[0]!;
  const bars: Readonly<Record<string, BarOf>> =
    role === 'rear-stay'
      ? { ...FULL, bar: { ...stay([0, 400, TOP], [-0.8, 0, -0.6]), ends: [AUTO, on] } }
      : { hoop: hoop(0, HALF, on) };
  return { bars, feet: [foot] };
}

/** A bar across with one bend in a level plane, and a tube to its middle that stands so far out of that plane. */
function supported(role: string, lean: number): Readonly<Record<string, BarOf>> {
  const [half, out] = [500, 400];
  const turn = 2 * Math.atan2(out, half);
  // The arc's middle lies nearer the chord than the corner: by the set-back over half the angle's figure, R (1/cos(t/2) - 1).
  const middle = 800 + out - RADIUS * (1 / Math.cos(turn / 2) - 1);
  const long = 300;
  return {
    ...FULL,
    bar: { role, at: [[800, half, 600], [800 + out, 0, 600], [800, -half, 600]], ends: [SQUARE, SQUARE] }, // prettier-ignore
    strut: {
      role: 'other',
      at: [[middle, 0, 600], [middle + long * Math.cos(rad(lean)), 0, 600 + long * Math.sin(rad(lean))]], // prettier-ignore
      ends: [AUTO, SQUARE],
    },
  };
}

const beside = (axes: number): Readonly<Record<string, BarOf>> => ({
  ...FULL,
  door: standing('door-bar', [[100, 650, 300], [800, 650, 300]]), // prettier-ignore
  sill: standing('sill-bar', [[100, 650, 300 - axes], [800, 650, 300 - axes]]), // prettier-ignore
});

const GUSSETS = [0, 1].map((i) => ({
  id: `g${i}`,
  name: '',
  node: `hoop-${i + 1}`,
  between: [
    { member: 'hoop', towards: 'A', leg: 200 },
    { member: 'hoop', towards: 'B', leg: 200 },
  ] as const,
  thickness: 3,
  relief: 0,
  mirror: false,
  kind: 'flat' as const,
}));

const ELSEWHERE = new Set(['head-room', 'harness', 'ask']);
const ALL: readonly (readonly [string, RuleCheck])[] = [
  ...SHIPPED.flatMap(({ sheet, checks }) =>
    checks.map((check, i) => [`${sheet} ${i} ${check.kind} ${check.of}`, check] as const),
  ),
  ...OWN.map((check) => [`own ${check.article} ${check.kind} ${check.of}`, check] as const),
];

describe('each article, just within its limit and a hair past it', () => {
  it.each(ALL.filter(([, { kind }]) => !ELSEWHERE.has(kind)))('%s', (_, check) => {
    const cases = casesOf(check);
    expect(cases.length).toBeGreaterThan(0);
    for (const { limit, bound, cage, hair = 0.001 } of cases) {
      const past = bound === 'least' ? -hair : hair;
      const inside = check.strictly ? limit - past : limit;
      const sure: RuleCheck = { ...check, mark: 'own' };
      expect([bound, limit, verdictOn(cage(inside), sure).verdict]).toEqual([bound, limit, 'met']);
      const beyond = verdictOn(cage(limit + past), sure);
      expect([bound, limit, beyond.verdict]).toEqual([bound, limit, 'not-met']);
      if (check.strictly) expect(verdictOn(cage(limit), sure).verdict).toBe('not-met');
      // What is from memory is never met.
      expect(verdictOn(cage(inside), { ...check, mark: 'memory' }).verdict).toBe('not-checked');
    }
  });

  it('and no shipped sheet has a figure that is not there', () => {
    for (const [name, check] of ALL) {
      const figures = [check.least, check.most, check.sizes, check.area].filter((each) => each !== undefined);
      const none =
        check.kind === 'ask' || check.kind === 'one-piece' || (check.kind === 'straight' && check.of === 'bends');
      expect([name, figures.length > 0]).toEqual([name, !none]);
    }
  });
});
