import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { faultLine } from '../../../src/core/job/fault.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { jobFrom } from '../../../src/core/shop/exchange.ts';
import { SHOP_LISTS, shopKindOf } from '../../../src/core/shop/kinds.ts';
import { isShopOfLaterProgram, parseShop } from '../../../src/core/shop/parse.ts';
import { serialiseShop, SHOP_KEY_ORDER } from '../../../src/core/shop/serialise.ts';
import type { Shop } from '../../../src/core/shop/types.ts';
import { sampleFile, withValue } from '../job/sample.ts';
import { shopFile } from './sample.ts';

const lines = (text: string): readonly string[] => {
  const parsed = parseShop(text);
  return parsed.ok ? [] : parsed.faults.map(faultLine);
};
const changed = (keys: readonly (string | number)[], value: unknown) =>
  lines(JSON.stringify(withValue(shopFile(), keys, value)));

describe('a good file', () => {
  it('comes through whole, with the keys of other builds, and back as the same bytes', () => {
    const parsed = parseShop(JSON.stringify(shopFile()));
    expect(parsed).toEqual({ ok: true, shop: shopFile() });
    const text = serialiseShop(shopFile() as unknown as Shop);
    const again = parseShop(text);
    expect(again.ok && serialiseShop(again.shop)).toBe(text);
    expect(JSON.parse(text)).toEqual(shopFile());
  });

  it('may leave out all but what it is', () => {
    expect(
      parseShop(
        '{ "format": "cagewright/shop", "version": 1, "bender": {}, "dies": [{ "id": "d", "outerDiameter": 40, "centrelineRadius": 120 }] }',
      ),
    ).toEqual({
      ok: true,
      shop: {
        format: 'cagewright/shop',
        version: 1,
        bender: {
          turns: 'left',
          bendLies: 'beyond',
          planeHeight: 1000,
          rotationBy: 'level',
          levelStep: 0.1,
          wheelStep: 1,
          pullStep: 0.5,
          room: [],
        },
        sections: [],
        dies: [
          {
            id: 'd',
            name: 'd',
            outerDiameter: 40,
            centrelineRadius: 120,
            clampOffset: 0,
            leastStraight: 0,
            leastGrip: 0,
            greatestAngle: 180,
            radius: 'nominal',
          },
        ],
        pulls: [],
        notchers: [],
        saws: [],
        sticks: [],
        instruments: [],
        rules: [],
      },
    });
  });

  it('is written in one order of keys, and the schema has none beside it', () => {
    const schema = JSON.parse(readFileSync(new URL('../../../docs/shop.schema.json', import.meta.url), 'utf8'));
    const keys: string[] = [];
    JSON.stringify(schema, (_, value) => {
      if (value?.type === 'object') keys.push(...Object.keys(value.properties));
      return value;
    });
    expect(keys.length).toBeGreaterThan(40);
    expect(keys.filter((key) => !SHOP_KEY_ORDER.includes(key))).toEqual([]);
    expect(SHOP_LISTS.filter((list) => shopKindOf(list).keys.length === 0)).toEqual([]);
  });
});

describe('what is refused, with its place', () => {
  it.each([
    [['sections', 0, 'wall'], 22.3, "sections[0].wall: 22.3 is not less than the tube's radius, 22.225"],
    [['sections', 0, 'outerDiameter'], 1200, 'sections[0].outerDiameter: beyond 1000 mm'],
    [['dies', 0, 'name'], 6, 'dies[0].name: not text'],
    [['dies', 0, 'bender'], {}, 'dies[0].bender: a shop has one bender: it stands beside the lists'],
    [['pulls', 0, 'die'], 'gone', 'pulls[0].die: no die "gone"'],
    [['sticks', 0, 'section'], "main'", 'sticks[0].section: no section "main\'"'],
    [['sticks', 0, 'count'], 2.5, 'sticks[0].count: not a whole number'],
    [['sticks', 0, 'cost'], -1, 'sticks[0].cost: below zero'],
    [['instruments', 0, 'reads'], [], 'instruments[0].reads: reads nothing'],
    [
      ['instruments', 1, 'reads'],
      ['inclination', 'width'],
      'instruments[1].reads: slopes are degrees: what reads them is an instrument of its own',
    ],
    [['instruments', 0, 'sigma'], 0, 'instruments[0].sigma: below 0.001'],
    [['notchers', 0, 'greatestOffSquare'], 91, 'notchers[0].greatestOffSquare: beyond 90 degrees'],
    [['saws', 1, 'diameter'], 0, 'saws[1].diameter: below 0.01 mm'],
    [['rates', 'hourly'], -1, 'rates.hourly: below zero'],
    [['rates', 'minutes', 'cope'], -1, 'rates.minutes.cope: below zero'],
    [['sawing', 'kerf'], -0.1, 'sawing.kerf: below zero'],
    [['scatter', 'mark'], 11, 'scatter.mark: beyond 10'],
    [['marking', 'from'], 'C', 'marking.from: not "A" or "B" or "middle"'],
    [['bender', 'room', 1, 'normal'], [0, 0, 0], 'bender.room[1].normal: has no length, so no direction'],
    [['format'], 'cagewright/job', 'format: a job file: open it as a job'],
    [['format'], undefined, 'format: missing: a shop record file begins with "format": "cagewright/shop"'],
    [['version'], 2, 'version: 2 was made by a later version of the program, which reads up to 1'],
  ])('%j', (keys, value, line) => {
    expect(changed(keys, value)).toEqual([line]);
  });

  it('is more tools than a job takes over', () => {
    const [saws, notchers] = [101, 101].map((length, i) =>
      Array.from({ length }, () => (i === 0 ? { diameter: 51 } : { name: 'N', greatestOffSquare: 45 })),
    );
    expect(changed(['saws'], saws)).toEqual(['saws: more than 100']);
    expect(changed(['notchers'], notchers)).toEqual(['notchers: more than 100']);
    const most = parseShop(JSON.stringify({ ...shopFile(), saws: saws!.slice(1), notchers: notchers!.slice(1) }));
    if (!most.ok) return expect.fail(most.faults.map(faultLine).join());
    expect(parseJob(serialiseJob(jobFrom(most.shop, 'mm'))).ok).toBe(true);
  });

  it('is an id that stands twice, and what then leads nowhere', () => {
    expect(changed(['sections', 1, 'id'], 'main')).toEqual([
      'sections[1].id: "main" is already sections[0]',
      'pulls[1].section: no section "s2"',
    ]);
  });

  it('is a shop record where a job should be, and the other way round', () => {
    const asJob = parseJob(JSON.stringify(shopFile()));
    expect(asJob.ok || asJob.faults.map(faultLine)).toEqual([
      'format: a shop record, which stands beside the jobs: open it from the menu, under Shop record',
    ]);
    expect(lines(JSON.stringify(sampleFile()))).toEqual(['format: a job file: open it as a job']);
    expect(isShopOfLaterProgram(JSON.stringify({ ...shopFile(), version: 2 }))).toBe(true);
    expect(isShopOfLaterProgram(JSON.stringify({ ...sampleFile(), version: 2 }))).toBe(false);
  });

  it('a name breaks no line of a fault, and none is taken for what every object has', () => {
    const hostile = '\u202e"\n<script>\u2028';
    expect(changed(['pulls', 0, 'die'], hostile)).toEqual(['pulls[0].die: no die "\\u202e\\"\\n<script>\\u2028"']);
    expect(lines('{ "format": "cagewright/shop", "version": 1, "__proto__": { "dies": [] } }')).toEqual([
      '["__proto__"]: not allowed as a name',
    ]);
    for (const id of ['constructor', '__proto__', 'toString']) {
      expect(changed(['pulls', 0, 'section'], id)).toEqual([`pulls[0].section: no section "${id}"`]);
    }
  });

  it('never throws, whatever stands where something else should', () => {
    const places: (readonly (string | number)[])[] = [];
    const walk = (value: unknown, keys: readonly (string | number)[]): void => {
      if (keys.length > 0) places.push(keys);
      if (typeof value !== 'object' || value === null) return;
      for (const [key, item] of Object.entries(value)) walk(item, [...keys, Array.isArray(value) ? Number(key) : key]);
    };
    walk(shopFile(), []);
    fc.assert(
      fc.property(fc.constantFrom(...places), fc.jsonValue({ maxDepth: 2 }), (keys, value) => {
        const parsed = parseShop(JSON.stringify(withValue(shopFile(), keys, value)));
        if (parsed.ok) expect(parseShop(serialiseShop(parsed.shop))).toEqual(parsed);
        else for (const fault of parsed.faults) expect(faultLine(fault)).not.toMatch(/[\n\r\u2028\u2029]/u);
      }),
      { seed: 20, numRuns: 400 },
    );
  });
});
