/** A gusset's triangles: closed shells, wound outwards, of the volume that the sheet has. */
import { describe, expect, it } from 'vitest';
import { gussetMesh, type GussetMesh } from '../../../src/core/gusset/mesh.ts';
import { bendJob, jointJob, madeOf } from './gusset-jobs.ts';

const BENT = { kind: 'bent', thickness: 3, width: 38, radius: 4, kFactor: 0.5 } as const;

/** By the divergence theorem; and how many edges of triangles are not run through once each way. */
const measured = ({ shells }: GussetMesh): { readonly volume: number; readonly open: number } => ({
  volume: shells.reduce((sum, shell) => sum + measuredShell(shell).volume, 0),
  open: shells.reduce((sum, shell) => sum + measuredShell(shell).open, 0),
});

function measuredShell({ positions, indices }: GussetMesh['shells'][0]): { volume: number; open: number } {
  const at = (i: number): [number, number, number] => [positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!];
  const key = (i: number): string =>
    at(i)
      .map((part) => part.toFixed(2))
      .join(' ');
  const ways = new Map<string, number>();
  let volume = 0;
  for (let i = 0; i < indices.length; i += 3) {
    const [a, b, c] = [indices[i]!, indices[i + 1]!, indices[i + 2]!];
    const [[ax, ay, az], [bx, by, bz], [cx, cy, cz]] = [at(a), at(b), at(c)];
    volume += (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      const [one, two] = [key(from), key(to)];
      if (one === two) continue;
      const [name, sense] = one < two ? [`${one}|${two}`, 1] : [`${two}|${one}`, -1];
      ways.set(name, (ways.get(name) ?? 0) + sense);
    }
  }
  return { volume, open: [...ways.values()].filter((sum) => sum !== 0).length };
}

describe('a flat one', () => {
  it.each([
    ['in a corner', jointJob({ gusset: { relief: 6 } })],
    ['across a bend', bendJob()],
  ])('%s is closed and holds its area by its thickness', (_, frame) => {
    const made = madeOf(frame);
    const { volume, open } = measured(gussetMesh(made, 3.2));
    expect(open).toBe(0);
    // An arc as chords of 2 degrees holds a little less.
    expect(volume / (made.sheet.area * 3.2)).toBeGreaterThan(0.999);
    expect(volume / (made.sheet.area * 3.2)).toBeLessThan(1.00001);
  });
});

it.each([
  ['in a corner', jointJob({ gusset: BENT })],
  ['across a bend', bendJob({ gusset: BENT, legs: [220, 220] })],
])('a bent one %s holds about the steel of its flat sheet', (_, frame) => {
  const made = madeOf(frame);
  const { volume, open } = measured(gussetMesh(made, 3));
  expect(open).toBe(0);
  // With the fibre in the middle the flat sheet holds what the folded one does (Pappus).
  expect(Math.abs(volume / (made.sheet.area * 3) - 1)).toBeLessThan(0.001);
});
