/** The strip of wall that passes by where a bar is cut: against distances of the wall's own lines from the axis that cuts it, by marching. */
import { describe, expect, it } from 'vitest';
import { stripKind, stripThickness } from '../../../src/core/checks/strip.ts';
import { placeAt } from '../../../src/core/geometry/path.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';
import { drawn } from '../../draws.ts';
import { derived, tube } from '../frame.ts';

const SECTIONS = [
  { id: 'main', outerDiameter: 44.45, wall: 3.048 },
  { id: 'light', outerDiameter: 38.1, wall: 2.413 },
];

/** A bar along x cut by one that rises at `lean` degrees from it, its axis `off` aside; bent round x where `bent`. */
const crossed = (off: number, lean: number, { section = 'main', bent = false } = {}) => {
  const [c, s] = [Math.cos((lean * Math.PI) / 180), Math.sin((lean * Math.PI) / 180)];
  const side = bent ? off - 33 : off;
  const path = [[-400 * c, side, -400 * s], ...(bent ? [[0, off + 0.5, 0]] : []), [400 * c, side, 400 * s]];
  return derived({
    nodes: { a: [-500, 0, 0], b: [500, 0, 0], ...Object.fromEntries(path.map((at, i) => [`t${i}`, at])) },
    sections: SECTIONS,
    members: [
      { id: 'through', section, path: path.map((_, i) => `t${i}`) },
      { id: 'bar', path: ['a', 'b'], cutBy: ['through'] },
    ],
  });
};

const found = (frame: ReturnType<typeof crossed>) =>
  frame.findings.filter(({ id }) => id.startsWith('piece/strip')).map(({ id, tube }) => `${id} ${tube}`);

/** How far from the outside the innermost line of the wall lies that stays clear of the run tube, mm, by looking at lines of every radius. */
function marched(frame: ReturnType<typeof crossed>): number {
  const [bar, through] = [tube(frame, 'bar.1'), tube(frame, 'through')];
  const axis: (readonly [number, number, number])[] = [];
  for (let at = 250; at <= through.path.length - 250; at += 0.5) axis.push(placeAt(through.path, at).point);
  const [outside, bore] = [bar.section.outerDiameter / 2, bar.section.outerDiameter / 2 - bar.section.wall];
  const square = (through.section.outerDiameter / 2) ** 2;
  // The bar runs along x: a line of it is a place in y and z, and is clear where its distance from every place of the axis is over the radius.
  const clear = (rho: number) => {
    for (let phi = 0; phi < 360; phi += 0.5) {
      const [y, z] = [rho * Math.cos((phi * Math.PI) / 180), rho * Math.sin((phi * Math.PI) / 180)];
      if (axis.every((place) => (place[1] - y) ** 2 + (place[2] - z) ** 2 > square)) return true;
    }
    return false;
  };
  for (let rho = bore; rho <= outside; rho += 0.01) if (clear(rho)) return outside - rho;
  return 0;
}

describe('a strip of wall that passes by what cuts it', () => {
  it('is as thick as marching says, of straight run tubes and in a bend', () => {
    const draw = drawFrom(20);
    for (let i = 0; i < drawn(3, 30); i++) {
      const bent = i % 2 === 1;
      const frame = crossed(draw.between(-2.6, 2.6), draw.between(60, 120), { bent });
      expect(stripThickness(tube(frame, 'bar.1').ends[1])).toBeCloseTo(marched(frame), 1);
    }
  });

  it('is the whole wall where the bore passes by too, round a bend as well', () => {
    expect(stripThickness(tube(crossed(8, 90), 'bar.1').ends[1])).toBe(3.048);
    expect(stripThickness(tube(crossed(8, 90, { bent: true }), 'bar.1').ends[1])).toBe(3.048);
  });

  it('is filed off up to a millimetre and half the wall; thicker it is an error; thinner than a hair nothing', () => {
    expect(found(crossed(0.0003, 80))).toEqual([]);
    expect(found(crossed(0.34, 80))).toEqual(['piece/strip-to-file bar.1', 'piece/strip-to-file bar.2']);
    expect(found(crossed(0.99, 80))).toEqual(['piece/strip-to-file bar.1', 'piece/strip-to-file bar.2']);
    expect(found(crossed(1.01, 80))).toEqual(['piece/strip-holds bar.1', 'piece/strip-holds bar.2']);
    expect(found(crossed(0, 80, { section: 'light' }))).toEqual(['piece/strip-holds bar.1', 'piece/strip-holds bar.2']);
    expect([0.59, 0.61].map((thickness) => stripKind(thickness, 1.2))).toEqual(['filed', 'holds']);
  });
});
