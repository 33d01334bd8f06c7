/**
 * Room for heads and where the belts go, against counting: centrelines and boxes as many points, the rules' words done to each of them. A frame is derived
 * once and drivers are put in it by the hundred. What is measured between its steps may be off by half a step.
 */
import { describe, expect, it } from 'vitest';
import { measureClearances } from '../../../src/core/checks/clearances.ts';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { placeAt, type Path } from '../../../src/core/geometry/path.ts';
import { addScaled, type Vec3 } from '../../../src/core/geometry/vector.ts';
import type { DriverEnvelope } from '../../../src/core/job/kinds/envelope.ts';
import type { RuleCheck } from '../../../src/core/job/kinds/rule-check.ts';
import type { Point } from '../../../src/core/job/kinds/point.ts';
import { remembered } from '../../../src/core/remembered.ts';
import { judge } from '../../../src/core/rules/judge.ts';
import { FORMULA_SAE } from '../../../src/core/rules/shipped/formula-sae.ts';
import type { Verdict } from '../../../src/core/rules/types.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import { verdictInWords } from '../../../src/core/words/rules.ts';
import { drawn } from '../../draws.ts';
import { drawFrom, type Draw } from '../../reference/oracles/seeded.ts';
import { jobOf } from '../frame.ts';

type Front = 'front-hoop' | 'front-leg' | 'roof-ring';

interface Figures {
  readonly front: Front;
  readonly header: boolean;
  /** Of the hoop's top. */
  readonly top: number;
  readonly lean: number;
  readonly frontAt: number;
  readonly frontTop: number;
  /** How far below the hoop’s top the front legs begin. */
  readonly drop: number;
  readonly barAt: number;
  readonly barSlope: number;
  /** How far the bar is bent back behind the seats; 0: it is straight. */
  readonly bent: number;
}

const PLAIN: Figures = {
  front: 'front-hoop',
  header: false,
  top: 1200,
  lean: 0,
  frontAt: 900,
  frontTop: 1000,
  drop: 10,
  barAt: 700,
  barSlope: 0,
  bent: 0,
};

function cage(figures: Figures): Derived {
  const { front, header, top, lean, frontAt, frontTop, drop, barAt, barSlope, bent } = figures;
  const at = (z: number): number => lean * (z / top);
  const mid = (z: number): number => 620 - (20 * z) / 700;
  const job = jobOf({
    nodes: {
      a: [0, 620, 0],
      b: [at(700), 600, 700],
      c: [at(top), 450, top],
      fa: [frontAt + 300, 600, 0],
      fb: [frontAt + 200, 590, 600],
      fc: [frontAt, 430, frontTop],
      lt: [at(top) + 30, 440, top - drop],
      la: [at(top), 430, top - 20],
      sa: [-900, 420, 480],
      h1: [at(barAt), mid(barAt), barAt + barSlope],
      h2: [at(barAt), -mid(barAt), barAt - barSlope],
      k1: [at(barAt) - bent, 300, barAt + barSlope / 2],
      k2: [at(barAt) - bent, -300, barAt - barSlope / 2],
    },
    members: [
      { id: 'hoop', role: 'main-hoop', path: ['a', 'b', 'c', "c'", "b'", "a'"] },
      {
        'front-hoop': { id: 'front', role: 'front-hoop', path: ['fa', 'fb', 'fc', "fc'", "fb'", "fa'"] },
        'front-leg': { id: 'leg', role: 'front-leg', path: ['lt', 'fc', 'fb', 'fa'], mirror: true },
        'roof-ring': { id: 'leg', role: 'roof-ring', path: ['lt', 'fc', "fc'", "lt'"] },
      }[front],
      ...(header ? [{ id: 'header', role: 'windscreen-header', path: ['fc', "fc'"] }] : []),
      { id: 'stay', role: 'rear-stay', path: ['la', 'sa'], mirror: true },
      { id: 'bar', role: 'harness-bar', path: bent > 0 ? ['h1', 'k1', 'k2', 'h2'] : ['h1', 'h2'] },
    ],
  });
  const result = derive(job);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

const someFigures = (draw: Draw): Figures => ({
  front: draw.oneOf(['front-hoop', 'front-leg', 'roof-ring'] as const),
  header: draw.chance(0.3),
  top: draw.between(1050, 1250),
  lean: draw.between(-120, 60),
  frontAt: draw.between(600, 1000),
  frontTop: draw.between(850, 1150),
  drop: draw.between(5, 150),
  barAt: draw.between(550, 900),
  barSlope: draw.between(-60, 60),
  bent: draw.chance(0.5) ? draw.between(200, 320) : 0,
});

interface Seated {
  readonly top: Vec3;
  readonly shoulders?: readonly [Vec3, Vec3];
  readonly helmet?: Vec3;
  readonly motion?: DriverEnvelope['motion'];
}

const STILL = { forward: 0, back: 0, side: 0, up: 0 };

/** The frame with these people in it. */
function withDrivers(frame: Derived, people: readonly Seated[], checks: readonly RuleCheck[]): Derived {
  const points: Point[] = [];
  const put = (id: string, position: Vec3): string => {
    points.push({ id, name: id, position });
    return id;
  };
  const envelopes = people.map(({ top, shoulders, helmet = [350, 260, 270], motion = STILL }, i): DriverEnvelope => ({
    id: `d${i}`,
    name: `Driver ${i}`,
    kind: 'driver',
    helmetTop: put(`top ${i}`, top),
    ...(shoulders && {
      shoulders: [put(`left ${i}`, shoulders[0]), put(`right ${i}`, shoulders[1])] as const,
    }),
    helmet,
    motion,
    gap: 50,
  }));
  const rules = [{ sheet: 's', body: '', edition: '', on: '', checks }];
  const seated = { ...frame, job: { ...frame.job, points, envelopes, rules } };
  return { ...seated, clearances: measureClearances(seated) };
}

const check = (of: string, more: Partial<RuleCheck> = {}): RuleCheck =>
  ({
    article: '',
    text: '',
    mark: 'own',
    roles: [],
    kind: of === 'strap-angle' || of === 'height' ? 'harness' : 'head-room',
    of,
    least: 0,
    ...more,
  }) as RuleCheck;

const verdictsOf = (frame: Derived, people: readonly Seated[], checks: readonly RuleCheck[]): readonly Verdict[] =>
  judge(withDrivers(frame, people, checks));

const verdictOf = (frame: Derived, people: readonly Seated[], one: RuleCheck): Verdict =>
  verdictsOf(frame, people, [one])[0]!;

/** mm between places along a centreline. */
const STEP = 1;

interface Place {
  readonly at: number;
  readonly point: Vec3;
}

/** Places of the centreline from tip to tip. */
function placesOf(tube: SolvedTube): readonly Place[] {
  const [from, to] = [tube.ends[0].tip ?? 0, tube.path.length - (tube.ends[1].tip ?? 0)];
  const count = Math.ceil((to - from) / STEP);
  return Array.from({ length: count + 1 }, (_, i) => {
    const at = from + ((to - from) * i) / count;
    return { at, point: prolonged(tube.path, at) };
  });
}

/** A tip may reach past its node. */
function prolonged(path: Path, at: number): Vec3 {
  const { point, tangent } = placeAt(path, at);
  return addScaled(point, tangent, Math.min(at, 0) + Math.max(at - path.length, 0));
}

const placesKept = remembered(placesOf);

/** From a place to a box along the axes, given by its least and greatest coordinates. */
function toBox(p: Vec3, low: Vec3, high: Vec3): number {
  const x = Math.max(low[0] - p[0], p[0] - high[0], 0);
  const y = Math.max(low[1] - p[1], p[1] - high[1], 0);
  const z = Math.max(low[2] - p[2], p[2] - high[2], 0);
  return Math.sqrt(x * x + y * y + z * z);
}

const tubesOf = (frame: Derived, id: string): readonly SolvedTube[] =>
  frame.tubes.filter(({ member }) => member.id === id);

const highest = (frame: Derived, id: string): Vec3 => {
  const tube = tubesOf(frame, id)[0]!;
  const { point } = placesKept(tube).reduce((a, b) => (b.point[2] > a.point[2] ? b : a));
  return [point[0], 0, point[2] + tube.section.outerDiameter / 2];
};

/** Height of the line over each place of the helmet, square to it: many places of the box. */
function countedUnder(from: Vec3, to: Vec3, { top, helmet = [350, 260, 270] }: Seated): number {
  const slope = (to[2] - from[2]) / (to[0] - from[0]);
  let least = Infinity;
  for (let i = 0; i <= 20; i++)
    for (let k = 0; k <= 20; k++) {
      const x = top[0] + helmet[0] * (i / 20 - 0.5);
      const z = top[2] - (helmet[2] * k) / 20;
      least = Math.min(least, (from[2] + slope * (x - from[0]) - z) * Math.cos(Math.atan(slope)));
    }
  return least;
}

/** Where a straight edge from the hoop's top lies on the leg: the place of the leg that is seen highest from there. */
function legTop(frame: Derived, hoopTop: Vec3): Vec3 {
  const leg = tubesOf(frame, 'leg')[0]!;
  const radius = leg.section.outerDiameter / 2;
  const centre = hoopTop[2] - radius;
  const seen = placesKept(leg)
    .filter(({ point }) => point[0] > hoopTop[0] + 1)
    .reduce((a, b) =>
      (b.point[2] - centre) / (b.point[0] - hoopTop[0]) > (a.point[2] - centre) / (a.point[0] - hoopTop[0]) ? b : a,
    );
  return [seen.point[0], 0, seen.point[2] + radius];
}

/** Places of the whole centreline a quarter of a millimetre apart. */
const finely = remembered((bar: SolvedTube): readonly Vec3[] => {
  const count = Math.ceil(bar.path.length * 4);
  return Array.from({ length: count + 1 }, (_, i) => placeAt(bar.path, (bar.path.length * i) / count).point);
});

/** The belt over all balls about the places of the bar, as they are cut by the upright plane through the shoulder; null where the bar’s centreline is not behind it, or its wall round it. */
function countedBelt(bar: SolvedTube, [x, y, z]: Vec3): { angle: number; height: number } | null {
  const radius = bar.section.outerDiameter / 2;
  const places = finely(bar);
  let [angle, height] = [-Infinity, -Infinity];
  const past = places.findIndex((place, i) => i > 0 && (place[1] - y) * (places[i - 1]![1] - y) <= 0);
  if (past === -1) return null;
  const [one, other] = [places[past - 1]!, places[past]!];
  const crossing = one[0] + ((other[0] - one[0]) * (y - one[1])) / (other[1] - one[1]);
  if (crossing >= x) return null;
  for (const point of places) {
    const square = radius ** 2 - (point[1] - y) ** 2;
    if (square <= 0) continue;
    const disc = Math.sqrt(square);
    const [back, rise] = [x - point[0], point[2] - z];
    const off = Math.sqrt(back * back + rise * rise);
    if (off <= disc) return null;
    if (back <= 0) continue;
    angle = Math.max(angle, Math.atan2(rise, back) + Math.asin(disc / off));
    height = Math.max(height, rise + disc);
  }
  return angle === -Infinity ? null : { angle: (angle * 180) / Math.PI, height };
}

const somebody = (draw: Draw): Seated => {
  const side = draw.oneOf([-1, 1]);
  const top: Vec3 = [draw.between(80, 600), side * draw.between(0, 420), draw.between(850, 1250)];
  const back = draw.between(0, 120);
  const low = draw.between(240, 330);
  const shoulder = (out: number): Vec3 => [top[0] - back, top[1] + out, top[2] - low];
  return {
    top,
    shoulders: [shoulder(draw.between(60, 200)), shoulder(-draw.between(60, 200))],
    helmet: [draw.between(280, 380), draw.between(220, 300), draw.between(240, 300)],
    motion: draw.chance(0.5)
      ? STILL
      : {
          forward: draw.between(0, 200),
          back: draw.between(0, 60),
          side: draw.between(0, 120),
          up: draw.between(0, 60),
        },
  };
};

const CAGES = drawn(12, 400);
const PEOPLE = drawn(10, 250);
/** Cages in one test, which has a time of its own. */
const IN_ONE = 10;

describe('against counting', () => {
  const checks = [
    check('box'),
    check('line-front'),
    check('line-stay'),
    check('behind'),
    check('circle', { diameter: 280 }),
    check('padding', { least: 150 }),
    check('strap-angle', { least: -90 }),
    check('height', { least: -1000 }),
  ];
  const parts = Math.ceil(CAGES / IN_ONE);
  it.each(Array.from({ length: parts }, (_, part) => part))(
    `${IN_ONE * PEOPLE} drivers, part %i of ${parts}`,
    (part) => {
      for (let seed = part * IN_ONE; seed < Math.min(CAGES, (part + 1) * IN_ONE); seed++) {
        const draw = drawFrom(4100 + seed);
        const figures = someFigures(draw);
        const frame = cage(figures);
        for (let i = 0; i < PEOPLE; i++) {
          const who = somebody(draw);
          const verdicts = verdictsOf(frame, [who], checks);
          const say = `seed ${seed}, driver ${i}, ${JSON.stringify(figures)}, ${JSON.stringify(who)}`;
          compare(frame, figures, who, verdicts, say);
        }
      }
    },
  );
});

function compare(
  frame: Derived,
  { front, header }: Figures,
  who: Seated,
  verdicts: readonly Verdict[],
  say: string,
): void {
  const [box, lineFront, lineStay, behind, circle, padding, strap, height] = verdicts as [
    Verdict,
    Verdict,
    Verdict,
    Verdict,
    Verdict,
    Verdict,
    Verdict,
    Verdict,
  ];
  const { top, helmet: [length, width, tall] = [350, 260, 270], motion = STILL } = who;
  const low: Vec3 = [top[0] - length / 2 - motion.back, top[1] - width / 2 - motion.side, top[2] - tall];
  const high: Vec3 = [top[0] + length / 2 + motion.forward, top[1] + width / 2 + motion.side, top[2] + motion.up];
  const radiusOf = (tube: SolvedTube): number => tube.section.outerDiameter / 2;
  const off = (distanceTo: (p: Vec3, tube: SolvedTube) => number): number =>
    Math.min(
      ...frame.tubes.map((tube) =>
        placesKept(tube).reduce((least, { point }) => Math.min(least, distanceTo(point, tube)), Infinity),
      ),
    );

  // A tube's end is cut away where it meets another, which is there instead: what the round bar comes to is never more.
  const toHelmet = off((p, tube) => toBox(p, low, high) - radiusOf(tube));
  if (toHelmet > STEP) {
    expect(box.value, say).toBeGreaterThan(toHelmet - STEP / 2);
    expect(box.value, say).toBeLessThan(toHelmet + 5);
  } else expect(box.value, say).toBeLessThan(STEP + 5);

  const ball: Vec3 = [top[0], top[1], top[2] - 140];
  const toBall =
    off(
      (p, tube) => Math.sqrt((p[0] - ball[0]) ** 2 + (p[1] - ball[1]) ** 2 + (p[2] - ball[2]) ** 2) - radiusOf(tube),
    ) - 140;
  expect(circle.value, say).toBeGreaterThan(toBall - STEP / 2);
  if (toBall > -100) expect(circle.value, say).toBeLessThan(toBall + 5);

  const hoopTop = highest(frame, 'hoop');
  const frontTop =
    front === 'front-hoop' ? highest(frame, 'front') : header ? highest(frame, 'header') : legTop(frame, hoopTop);
  expect(lineFront.value, say).toBeCloseTo(countedUnder(hoopTop, frontTop, who), 2);
  expect(lineStay.value, say).toBeCloseTo(countedUnder(hoopTop, [-900, 0, 480], who), 6);

  const back: Vec3 = [top[0] - length / 2, top[1] - width / 2, top[2] - tall];
  const backHigh: Vec3 = [back[0], top[1] + width / 2, top[2]];
  const toBack = off((p, tube) => (p[0] <= back[0] ? toBox(p, back, backHigh) - radiusOf(tube) : Infinity));
  expect(behind.value!, say).toBeGreaterThan(toBack - STEP);
  expect(behind.value!, say).toBeLessThan(toBack + 1e-6);

  const near = new Map(
    frame.tubes.map((tube) => [
      tube.id,
      placesKept(tube).filter(({ point }) => toBox(point, low, high) - radiusOf(tube) <= 150),
    ]),
  );
  if (padding.because.id === 'to-pad') {
    const { stretches } = padding.because;
    for (const tube of frame.tubes) {
      const own = stretches.filter((each) => each.tube === tube.id);
      const counted = near.get(tube.id)!;
      const sum = own.reduce((all, { from, to }) => all + to - from, 0);
      // Each stretch has half a step at either end that no place says; one shorter than a step may have none.
      expect(Math.abs(sum - counted.length * STEP), `${tube.id}, ${say}`).toBeLessThan(2 * STEP * (own.length + 1));
      const missed = counted.find(({ at }) => !own.some(({ from, to }) => at >= from - 1e-6 && at <= to + 1e-6));
      expect(missed?.at, `${tube.id}, ${say}`).toBeUndefined();
    }
  } else expect([...near.values()].flat(), say).toHaveLength(0);

  const bar = tubesOf(frame, 'bar')[0]!;
  const belts = who.shoulders!.map((shoulder) => countedBelt(bar, shoulder));
  if (belts.every((belt) => belt !== null)) {
    expect(strap.value, say).toBeCloseTo(Math.min(...belts.map(({ angle }) => angle)), 2);
    expect(height.value, say).toBeCloseTo(Math.min(...belts.map((belt) => belt.height)), 2);
  } else expect([strap.because.id, height.because.id], say).toEqual(['not-behind', 'not-behind']);
}

describe('limits', () => {
  const frame = cage(PLAIN);
  const hoopTop = 1200 + 22.225;
  const frontTop = 1000 + 22.225;
  /** Upright under a level line, so that the figure is the helmet's own height: hoop and front of one height. */
  const level = cage({ ...PLAIN, frontTop: 1200 });

  // Formula SAE Rules 2026 V1.0, F.5.6.4 (read): 50 mm.
  const fiftyUnder = FORMULA_SAE.checks.filter(({ article }) => article === 'F.5.6.4');

  it('Formula SAE’s 50 mm under the front line: met at 50, not met a hundredth of a millimetre higher', () => {
    expect(fiftyUnder.map(({ of, least }) => [of, least])).toEqual([
      ['line-front', 50],
      ['line-stay', 50],
    ]);
    const at = (under: number) => verdictOf(level, [{ top: [400, 300, hoopTop - under] }], fiftyUnder[0]!);
    expect(at(50)).toMatchObject({ verdict: 'met', envelope: 'd0' });
    expect(at(50).margin).toBeCloseTo(0, 9);
    expect(at(49.99)).toMatchObject({ verdict: 'not-met', concerns: ['hoop', 'front'] });
    expect(at(49.99).margin).toBeCloseTo(-0.01, 9);
    expect(at(-20).value).toBeCloseTo(-20, 9);
  });

  it('the line falls to the front, and the helmet’s front edge is what comes near it', () => {
    const { value, at, to } = verdictOf(frame, [{ top: [400, 0, 1000] }], fiftyUnder[0]!);
    const slope = (frontTop - hoopTop) / 900;
    expect(value).toBeCloseTo((hoopTop + slope * 575 - 1000) * Math.cos(Math.atan(slope)), 6);
    expect(at).toEqual([575, 0, 1000]);
    expect(Math.hypot(to![0] - at![0], to![2] - at![2])).toBeCloseTo(value!, 9);
  });

  it('Formula SAE’s 50 mm under the line to the stay’s foot', () => {
    // The stay’s foot at (-900, 480): on the line from the hoop’s top the helmet’s rear edge is square under it.
    const [along, up] = [900, hoopTop - 480];
    const size = Math.hypot(along, up);
    // The rear edge 225 behind the hoop’s top on the line, then 50 square down.
    const rear = (under: number): Vec3 => [
      -225 + (under * up) / size + 175,
      0,
      hoopTop - (225 * up) / along - (under * along) / size,
    ];
    const at = (under: number) => verdictOf(frame, [{ top: rear(under) }], fiftyUnder[1]!);
    expect(at(50).verdict).toBe('met');
    expect(at(50).value).toBeCloseTo(50, 9);
    expect(at(49.99).verdict).toBe('not-met');
  });

  it('the worst driver counts', () => {
    const [one, other] = [{ top: [400, 300, 1100] }, { top: [400, -300, 1180] }] as const;
    expect(verdictOf(level, [one, other], fiftyUnder[0]!)).toMatchObject({ verdict: 'not-met', envelope: 'd1' });
    expect(verdictOf(level, [one], fiftyUnder[0]!)).toMatchObject({ verdict: 'met', envelope: 'd0' });
  });

  it('the box reaches as far as the head goes, the ball and the lines do not', () => {
    const still = { top: [400, 0, 1100] } as const;
    const moving = { ...still, motion: { forward: 0, back: 0, side: 0, up: 30 } };
    const both = (of: string) => [still, moving].map((who) => verdictOf(level, [who], check(of)).value!);
    const [before, after] = both('box');
    expect(after).toBeLessThan(before!);
    for (const of of ['line-front', 'line-stay', 'circle', 'behind']) {
      const [a, b] = both(of);
      expect(b).toBe(a);
    }
  });

  it('behind the helmet there is a least and a most', () => {
    // The hoop’s top runs level at x = 0; the helmet’s back edge stands 100 behind its centre line and as high as the tube’s.
    const who = { top: [175 + 122.225, 0, 1200] } as const;
    const window = check('behind', { least: 90, most: 110, roles: ['main-hoop'] });
    expect(verdictOf(frame, [who], window).value).toBeCloseTo(100, 6);
    const moved = (by: number) => verdictOf(frame, [{ top: [who.top[0] + by, 0, 1200] }], window);
    expect([-10.001, -10, 10, 10.001].map((by) => moved(by).verdict)).toEqual(['not-met', 'met', 'met', 'not-met']);
    expect(moved(20).bound).toBe('most');
    // Nothing of the hoop is behind somebody who sits behind it.
    expect(verdictOf(frame, [{ top: [-400, 0, 1200] }], window).because).toMatchObject({ id: 'nothing-behind' });
    // Nor is he let pass by somebody who sits in front of it.
    expect(
      verdictOf(
        frame,
        [{ top: [600, 0, 1200] }, { top: [-400, 0, 1200] }],
        check('behind', { least: 90, roles: ['main-hoop'] }),
      ).because,
    ).toMatchObject({ id: 'nothing-behind' });
  });

  it('the box and the ball, on either side of what is asked', () => {
    // Upright under the middle of the hoop’s level top, whose underside stands at 1200 less the radius.
    const under = (gap: number): Seated => ({ top: [0, 0, 1200 - 22.225 - gap], helmet: [200, 200, 200] });
    for (const of of ['box', 'circle']) {
      const asked = check(of, { least: 50 });
      expect(verdictOf(frame, [under(50)], asked)).toMatchObject({
        verdict: 'met',
        concerns: ['hoop'],
        envelope: 'd0',
      });
      expect(verdictOf(frame, [under(50)], asked).value).toBeCloseTo(50, 9);
      expect(verdictOf(frame, [under(49.99)], asked)).toMatchObject({ verdict: 'not-met', concerns: ['hoop'] });
      expect(verdictOf(frame, [under(-10)], asked).value).toBeLessThan(0);
    }
  });

  it('a ball of 300 mm where the article does not say another', () => {
    const who = { top: [400, 0, 900] } as const;
    const [usual, said, larger] = verdictsOf(
      frame,
      [who],
      [check('circle'), check('circle', { diameter: 300 }), check('circle', { diameter: 400 })],
    );
    expect(usual!.value).toBe(said!.value);
    expect(larger!.value).not.toBe(said!.value);
  });

  it('what is to be padded is said with its length, and met only where nothing is near', () => {
    const pad = check('padding', { least: 150 });
    // Under the middle of the hoop’s level top: near as far as 150 and the tube’s radius from the helmet’s box.
    const who = { top: [0, 0, 1200 - 100], helmet: [200, 200, 200] } as const;
    const found = verdictOf(frame, [who], { ...pad, roles: ['main-hoop'] });
    if (found.because.id !== 'to-pad') throw new Error('nothing to pad');
    const { from, to } = found.because.stretches[0]!;
    const reach = Math.sqrt((150 + 22.225) ** 2 - 100 ** 2);
    expect(to - from).toBeCloseTo(2 * (100 + reach), 6);
    expect(found.verdict).toBe('not-checked');
    expect(verdictInWords(found, frame)).toBe(
      '480.4 mm on 1 tube lies within 150.0 mm of a helmet: whether that is padded nobody can see here.',
    );
    const far = verdictOf(frame, [{ top: [2500, 0, 3000] }], pad);
    expect(far).toMatchObject({ verdict: 'met', limit: 150, bound: 'least' });
    const { least: _, ...none } = { ...pad, roles: ['main-hoop'] };
    expect(verdictOf(frame, [who], { ...none, most: 150 }).because).toEqual(found.because);
    expect(verdictOf(frame, [who], none).because).toEqual({ id: 'no-figure' });
    // Two heads beside each other are padded once where both are near.
    const two = verdictOf(frame, [who, { ...who, top: [0, 50, 1100] }], { ...pad, roles: ['main-hoop'] });
    const sum =
      two.because.id === 'to-pad' ? two.because.stretches.reduce((all, each) => all + each.to - each.from, 0) : 0;
    expect(sum).toBeCloseTo(to - from + 50, 6);
  });
});

describe('the belts', () => {
  const frame = cage(PLAIN);
  const shoulders = (z: number): Seated => ({
    top: [350, 300, z + 300],
    shoulders: [
      [300, 420, z],
      [300, 180, z],
    ],
  });
  // Formula SAE 2026 (read): up to 10 degrees above level, down to 20 below.
  const straps = FORMULA_SAE.checks.find(({ kind }) => kind === 'harness')!;
  /** Where the shoulders are for a belt of so many degrees, level bar: its line touches a circle of the tube’s radius. */
  const under = (degrees: number): number => {
    const angle = (degrees * Math.PI) / 180;
    return 700 + 22.225 / Math.cos(angle) - 300 * Math.tan(angle);
  };

  it('both limits of Formula SAE’s window, on either side', () => {
    expect([straps.least, straps.most]).toEqual([-20, 10]);
    const at = (degrees: number) => verdictOf(frame, [shoulders(under(degrees))], straps);
    expect(at(10).value).toBeCloseTo(10, 8);
    expect([10, 10.001, -20, -20.001, 0].map((degrees) => at(degrees).verdict)).toEqual([
      'met',
      'not-met',
      'met',
      'not-met',
      'met',
    ]);
    const { at: from, to } = at(-10);
    expect(from).toEqual([300, 420, under(-10)]);
    // It comes to lie on the wall.
    expect(Math.hypot(to![0], to![2] - 700)).toBeCloseTo(22.225, 6);
    expect(to![2]).toBeGreaterThan(700);
  });

  it('the bar’s top over the shoulders', () => {
    const over = check('height', { least: -20, most: 60 });
    const at = (z: number) => verdictOf(frame, [shoulders(z)], over);
    expect(at(700).value).toBeCloseTo(22.225, 6);
    expect([722.225 - 60, 722.225 - 60.01, 742.225, 742.235].map((z) => at(z).verdict)).toEqual([
      'met',
      'not-met',
      'met',
      'not-met',
    ]);
  });

  it('is not checked without a driver, shoulders or a bar behind them, and says why', () => {
    const nobody = (people: readonly Seated[], of = frame) => verdictOf(of, people, straps);
    expect(nobody([]).because).toEqual({ id: 'no-driver' });
    expect(nobody([{ top: [300, 300, 1000] }]).because).toEqual({ id: 'no-point', point: 'shoulders' });
    const ahead: Seated = {
      top: [300, 300, 1000],
      shoulders: [
        [-50, 420, 700],
        [-50, 180, 700],
      ],
    };
    expect(nobody([ahead]).because).toEqual({ id: 'not-behind' });
    const without = { ...frame, bars: new Map([...frame.bars].filter(([id]) => id !== 'bar')) };
    expect(nobody([shoulders(700)], without).because).toMatchObject({ id: 'nothing-there', roles: ['harness-bar'] });
    expect(nobody([shoulders(700), { top: [300, -300, 1000] }]).verdict).toBe('not-checked');
    expect(nobody([shoulders(500), { top: [300, -300, 1000] }]).verdict).toBe('not-met');
  });
});

describe('the line to the front', () => {
  const who: Seated = { top: [400, 0, 900] };
  it('is not there without hoop or front, and each is named', () => {
    const frame = cage(PLAIN);
    const without = (gone: string) => ({ ...frame, bars: new Map([...frame.bars].filter(([id]) => id !== gone)) });
    expect(verdictOf(without('hoop'), [who], check('line-front')).because).toMatchObject({ roles: ['main-hoop'] });
    expect(verdictOf(without('front'), [who], check('line-front')).because).toMatchObject({
      id: 'nothing-there',
      roles: ['front-hoop', 'windscreen-header', 'roof-ring', 'front-leg', 'side-hoop'],
    });
    expect(verdictOf(frame, [], check('line-front')).because).toEqual({ id: 'no-driver' });
  });

  it('a bar without a role, or one that cannot be what it is called, keeps it from being met', () => {
    const frame = cage(PLAIN);
    const named = (id: string, role: string): Derived => ({
      ...frame,
      bars: new Map(
        [...frame.bars].map(([each, bar]) =>
          each === id ? [each, { ...bar, member: { ...bar.member, role } }] : [each, bar],
        ),
      ),
    });
    expect(verdictOf(frame, [who], check('line-front')).verdict).toBe('met');
    expect(verdictOf(named('stay', ''), [who], check('line-front')).because).toEqual({ id: 'unnamed' });
    expect(verdictOf(named('stay', 'windscreen-header'), [who], check('line-front')).because).toMatchObject({
      id: 'misnamed',
    });
  });
});
