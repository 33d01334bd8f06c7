/**
 * What is shown to be clear of a run tube without going through it, against distances from the centreline by another method, every
 * millimetre (tests/reference/oracles). Lines and where they begin and end are drawn anywhere, not where a cope would put them.
 */
import { describe, expect, it } from 'vitest';
import { isLineClear } from '../../../src/core/checks/clear-beside.ts';
import { axisPieces, piecesNear } from '../../../src/core/checks/near-pieces.ts';
import type { MetSleeve } from '../../../src/core/geometry/met-sleeve.ts';
import { drawn } from '../../draws.ts';
import { frameOf } from '../../reference/jobs.ts';
import { hollowJoint } from '../../reference/joints.ts';
import { distanceToCentreline } from '../../reference/oracles/centreline.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';
import { along, anySquare, around, sum, times, type Triple } from '../../reference/oracles/space.ts';

/** Lines about a run tube with a bend or two: of each whether it is shown to be clear, and how near it truly comes. */
function linesAbout(seed: number) {
  const { end, job } = hollowJoint(seed);
  const [cutter] = end.cutters;
  const { path } = frameOf({ ...job, members: job.members.slice(0, 1) }).byId.get('run0')!;
  const draw = drawFrom(seed + 1);
  const pieces = axisPieces(path);
  return Array.from({ length: 40 }, () => {
    const direction = around(end.direction, anySquare(end.direction), draw.between(0, 360));
    const lean = draw.chance(0.5) ? end.direction : direction;
    const reference = anySquare(lean);
    const middle = sum(end.node, times(draw.between(0, 3) * cutter!.radius, direction));
    const [start, stop] = [draw.between(-300, 100), draw.between(100, 500)];
    const met: MetSleeve = {
      sleeve: { path, radius: cutter!.radius, reach: 0 },
      bundle: { origin: middle, direction: lean, reference },
      rho: 0,
      pieces: pieces.map((piece) => ({ ...piece, soonest: -Infinity, laid: null })),
    };
    const placeAt = (s: number): Triple => along(middle, lean, s);
    let least = Infinity;
    for (let s = start; s <= stop; s += 1) least = Math.min(least, distanceToCentreline(cutter!, placeAt(s)));
    const stretch = { origin: middle, direction: lean, from: start, to: stop };
    return {
      away: least - cutter!.radius,
      isClear: isLineClear(met, 1, 0, start, stop),
      near: piecesNear(pieces, stretch, cutter!.radius).length,
    };
  });
}

describe('a line beside a run tube', () => {
  const seeds = Array.from({ length: drawn(40, 400) }, (_, i) => 61001 + i);
  const lines = seeds.flatMap(linesAbout);

  it('stands nowhere in it where it is shown to be clear', () => {
    for (const { away, isClear } of lines) if (isClear) expect(away).toBeGreaterThan(-0.0011);
  });
  it('comes near a piece wherever it stands in it', () => {
    for (const { away, near } of lines) if (away < 0) expect(near).toBeGreaterThan(0);
  });
  it('is shown to be clear mostly where it is', () => {
    const clear = lines.filter(({ away }) => away > 0.1);
    expect(clear.length).toBeGreaterThan(lines.length / 10);
    expect(clear.length).toBeLessThan(lines.length * 0.9);
    expect(clear.filter(({ isClear }) => isClear).length).toBeGreaterThan(clear.length * 0.5);
  });
});
