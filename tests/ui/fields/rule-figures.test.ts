/** The figures of a rule sheet as they are typed; inches and pounds by their definitions (25.4 mm, 0.45359237 kg). */
import { describe, expect, it } from 'vitest';
import { massKind } from '../../../src/ui/fields/mass.ts';
import { figureKind, rolesKind, sizesKind } from '../../../src/ui/fields/rule-figures.ts';

const refused = { ok: false };

describe('tubes of which one has to be met', () => {
  it.each([
    ['45 x 2.5', 'mm', [[45, 2.5]]],
    [
      '45x2.5 or 50 × 2',
      'mm',
      [
        [45, 2.5],
        [50, 2],
      ],
    ],
    [
      '1 3/4 x .095; 1.5 by .12 in',
      'in',
      [
        [44.45, 2.413],
        [38.1, 3.048],
      ],
    ],
    ['1 3/4 in x .12 in', 'mm', [[44.45, 3.048]]],
    ['', 'mm', []],
  ] as const)('%s', (text, unit, sizes) => {
    const entered = sizesKind(unit).read(text);
    expect(entered.ok && entered.value.map(({ outerDiameter, wall }) => [outerDiameter, wall])).toEqual(
      sizes.map((size) => size.map((mm) => expect.closeTo(mm, 9))),
    );
  });

  it.each(['45', '45 x', 'x 2.5', '45 x 2.5 x 3', 'tube', '45 x 22.5', '2.5 x 45', '45 x -2', '45 x 2.5 or'])(
    '%s is none',
    (text) => expect(sizesKind('mm').read(text)).toMatchObject(refused),
  );

  it('are shown as they are read', () => {
    for (const unit of ['mm', 'in'] as const) {
      const kind = sizesKind(unit);
      const shown = kind.show([
        { outerDiameter: 44.45, wall: 3.048 },
        { outerDiameter: 50.8, wall: 2.413 },
      ]);
      const entered = kind.read(shown);
      expect(entered.ok && kind.show(entered.value)).toBe(shown);
    }
    expect(
      sizesKind('mm').show([
        { outerDiameter: 45, wall: 2.5 },
        { outerDiameter: 50, wall: 2 },
      ]),
    ).toBe('45 x 2.5 or 50 x 2');
  });
});

it('areas are typed in square centimetres or square inches, masses in kilograms or pounds', () => {
  expect(figureKind('area', 'mm').read('120')).toMatchObject({ value: 12_000 });
  expect(figureKind('area', 'in').read('2')).toMatchObject({ value: expect.closeTo(1290.32, 9) as number });
  expect(figureKind('area', 'mm').show(12_000)).toBe('120');
  expect(massKind('in').read('2400')).toMatchObject({ value: expect.closeTo(1088.621688, 6) as number });
  expect(massKind('mm').read('1100')).toMatchObject({ value: 1100 });
  expect(massKind('in').show(1088.621688)).toBe('2400');
  for (const text of ['0', '-5', 'heavy', '1e9']) expect(massKind('mm').read(text)).toMatchObject(refused);
});

it('counts are whole', () => {
  expect(figureKind('count', 'mm').read('3')).toMatchObject({ value: 3 });
  expect(figureKind('count', 'mm').read('2.5')).toMatchObject(refused);
});

it('roles are known whatever way they are written; another word is the shop’s own', () => {
  expect(rolesKind.read('Main Hoop, rear_stay,, brace for the jack ,')).toEqual({
    ok: true,
    value: ['main-hoop', 'rear-stay', 'brace for the jack'],
  });
  expect(rolesKind.show(['main-hoop', 'rear-stay'])).toBe('main hoop, rear stay');
  expect(rolesKind.read(' ')).toEqual({ ok: true, value: [] });
});

it('millimetres typed in a job in inches are told how they are typed, and taken so', () => {
  expect(sizesKind('in').read('45 x 2.5')).toMatchObject({ ok: false, why: expect.stringContaining('45 mm x 2.5 mm') });
  expect(sizesKind('in').read('45 mm x 2.5 mm')).toMatchObject({ ok: true, value: [{ outerDiameter: 45, wall: 2.5 }] });
  expect(sizesKind('in').read('2 x .12')).toMatchObject({ ok: true });
});

it.each([
  ['2600 lb', 'in', 2600 * 0.45359237],
  ['2600 lb', 'mm', 2600 * 0.45359237],
  ['1200kg', 'in', 1200],
  ['1200 Kg.', 'mm', 1200],
  ['2600 pounds', 'mm', 2600 * 0.45359237],
  ['1200', 'mm', 1200],
] as const)('a mass typed as %s in a job in %s', (text, unit, kg) => {
  const entered = massKind(unit).read(text);
  expect(entered.ok && entered.value).toBeCloseTo(kg, 9);
});

it.each(['kg', '12 st', '1200 kg lb'])('%s is no mass', (text) =>
  expect(massKind('in').read(text)).toMatchObject(refused),
);
