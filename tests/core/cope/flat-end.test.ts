/** An end unrolled about its reference, against the wrap that is cut along the same line. */
import { describe, expect, it } from 'vitest';
import { flatEnd } from '../../../src/core/cope/flat-end.ts';
import type { SurfacePlace } from '../../../src/core/cope/cut-pieces.ts';
import { wrapOf } from '../../../src/core/cope/wrap.ts';
import type { TubeEnd } from '../../../src/core/solve/types.ts';
import { demoText } from '../../command-line.ts';
import { derivedFrom } from '../../exports/jobs.ts';
import { derived, tube } from '../frame.ts';

const demo = derivedFrom(demoText());
const ends = demo.tubes.flatMap((each) => ([0, 1] as const).map((which) => ({ tube: each, which })));
const PAPER = { surface: 'outer', thickness: 0, step: 1 } as const;

describe('an end unrolled flat', () => {
  it('is the line that its wrap is cut along, wherever the seam of that is', () => {
    const turned = ({ phi, s }: SurfacePlace) => ({ phi: Math.atan2(Math.sin(phi), Math.cos(phi)), s });
    const inTurn = (places: readonly SurfacePlace[]) =>
      places
        .map(turned)
        .map(({ phi, s }) => `${Math.abs(Math.abs(phi) - Math.PI) < 1e-6 ? 'seam' : phi.toFixed(6)} ${s.toFixed(6)}`)
        .toSorted();
    let elsewhere = 0;
    for (const each of ends) {
      const wrap = wrapOf(each.tube, each.which, PAPER)!;
      const flat = flatEnd(each.tube.ends[each.which]).outer.flat();
      if (wrap.left !== -Math.PI) elsewhere += 1;
      else expect(flat).toEqual(wrap.pieces.flat());
      expect([...new Set(inTurn(flat))]).toEqual([...new Set(inTurn(wrap.pieces.flat()))]);
    }
    expect(elsewhere).toBeGreaterThan(0);
  });

  it('closes at the seam, and has tip and throat of the end among its places', () => {
    for (const each of ends) {
      const end = each.tube.ends[each.which];
      const { outer, bore } = flatEnd(end);
      expect(outer).toHaveLength(1);
      const places = outer[0]!;
      expect([places[0]!.phi, places.at(-1)!.phi]).toEqual([-Math.PI, expect.closeTo(Math.PI, 12)]);
      expect(places[0]!.s).toBeCloseTo(places.at(-1)!.s, 9);
      expect(Math.min(...places.map(({ s }) => s))).toBe(end.tip);
      expect(Math.max(...places.map(({ s }) => s))).toBe(end.throat);
      expect(Math.min(...bore.flat().map(({ s }) => s))).toBeGreaterThanOrEqual(end.tip!);
    }
  });

  it('is the same answer for the same end', () => {
    const [end] = tube(demo, 'hoop').ends;
    expect(flatEnd(end)).toBe(flatEnd(end));
  });

  it('is broken where nothing reaches, ends where the line ends, and is never joined across', () => {
    // A branch as thick as the run tube, its axis 30 mm beside that of it: part of it goes past.
    const past = derived({
      nodes: { back: [-400, 0, 0], fore: [400, 0, 0], joint: [0, 30, 0], top: [0, 30, 500] },
      members: [
        { id: 'run', path: ['back', 'fore'], ends: [{ fit: 'square' }, { fit: 'square' }] },
        { id: 'branch', path: ['joint', 'top'], ends: [{ fit: 'cope', against: ['run'] }, { fit: 'square' }] },
      ],
    });
    const [end] = tube(past, 'branch').ends;
    expect(end.passedBy).toBe(true);
    const { outer } = flatEnd(end);
    const reached = [...end.outer].filter((s) => !Number.isNaN(s)).length;
    const covered = outer.reduce((sum, piece) => sum + piece.at(-1)!.phi - piece[0]!.phi, 0);
    expect(reached).toBeGreaterThan(20);
    // Between two degrees at either end of the line.
    expect(Math.abs((covered * 180) / Math.PI - reached)).toBeLessThan(2);
    const steps = outer.flatMap((piece) => piece.slice(1).map(({ phi }, i) => phi - piece[i]!.phi));
    expect(Math.max(...steps)).toBeLessThan((1.01 * Math.PI) / 180);
  });

  it('is empty where nothing reaches it at all', () => {
    const [end] = tube(demo, 'hoop').ends;
    const nothing = new Float64Array(360).fill(Number.NaN);
    const cutter = { ...end.cutter, plateNormal: end.reference, sleeves: [] };
    const missed: TubeEnd = { ...end, cutter, outer: nothing, inner: nothing, tip: null, lows: [], high: null };
    expect(flatEnd(missed)).toEqual({ outer: [], bore: [] });
  });
});
