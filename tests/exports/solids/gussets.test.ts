/** Gussets in cage.step, read back by the kernel: a flat one against its area by hand, folded ones against the steel of their mesh. */
import type { OpenCascadeInstance } from 'replicad-opencascadejs';
import { beforeAll, expect, it } from 'vitest';
import { unwatched } from '../../../src/drawing/going.ts';
import { gussetMesh } from '../../../src/core/gusset/mesh.ts';
import type { Derived } from '../../../src/core/derive.ts';
import { stepFile } from '../../../src/exports/solids/step.ts';
import { scoped, startKernel } from '../../reference/oracles/kernel.ts';
import { bendJob, jointJob, madeOf } from '../../core/gusset/gusset-jobs.ts';

let oc: OpenCascadeInstance;
beforeAll(async () => {
  oc = await startKernel();
}, 180_000);

/** mm3 and validity of each gusset in the file, by name. */
async function gussetsIn(job: Derived): Promise<Record<string, { volume: number; valid: boolean }>> {
  const { bytes, note } = await stepFile(job, oc, unwatched);
  expect(note).toBe(undefined);
  const step = new TextDecoder().decode(bytes);
  const names = [...step.matchAll(/MANIFOLD_SOLID_BREP\('([^']*)'/gu)].map(([, name]) => name!);
  return scoped((keep) => {
    oc.FS.writeFile('/gussets.step', step);
    const reader = keep(new oc.STEPControl_Reader());
    reader.ReadFile('/gussets.step');
    const all = names.map((name, i) => {
      reader.TransferRoot(i + 1, keep(new oc.Message_ProgressRange()));
      const shape = keep(reader.Shape(i + 1));
      const properties = keep(new oc.GProp_GProps());
      oc.BRepGProp.VolumeProperties(shape, properties, 1e-6, false, false);
      const valid = keep(new oc.BRepCheck_Analyzer(shape, true)).IsValid();
      return [name, { volume: properties.Mass(), valid }] as const;
    });
    return Object.fromEntries(all.filter(([name]) => !/^\d/u.test(name)));
  });
}

/** mm3 within triangles: a sixth of the sum of their triple products (divergence theorem). */
function meshVolume(job: Derived): number {
  const made = madeOf(job);
  let six = 0;
  for (const { positions, indices } of gussetMesh(made, job.job.gussets[0]!.thickness).shells) {
    for (let i = 0; i < indices.length; i += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => positions.slice(3 * indices[i + k]!, 3 * indices[i + k]! + 3));
      six +=
        a![0]! * (b![1]! * c![2]! - b![2]! * c![1]!) +
        a![1]! * (b![2]! * c![0]! - b![0]! * c![2]!) +
        a![2]! * (b![0]! * c![1]! - b![1]! * c![0]!);
    }
  }
  return six / 6;
}

it('a flat one square between two tubes: half of leg times leg, less the relief, by its thickness', async () => {
  const job = jointJob({ gusset: { thickness: 3, relief: 10, mirror: false }, legs: [100, 80] });
  const [[name, { volume, valid }]] = Object.entries(await gussetsIn(job)) as [
    [string, { volume: number; valid: boolean }],
  ];
  expect([name, valid]).toEqual(['g', true]);
  expect(volume).toBeCloseTo(3 * (4000 - 50), 3);
});

const FOLD = { kind: 'bent', thickness: 3, width: 30, radius: 3, mirror: false };
it.each([
  ['folded, square', () => jointJob({ gusset: FOLD })],
  ['folded at 60 degrees, with relief', () => jointJob({ gusset: { ...FOLD, relief: 12 }, to: [300, 0, 520] })],
  ['folded at 120 degrees, onto a thinner tube', () => jointJob({ gusset: FOLD, to: [-300, 0, 520], diameter: 38 })],
  ['folded over without a strip', () => jointJob({ gusset: { ...FOLD, width: 12 } })],
  ['flat across a bend', () => bendJob({ gusset: { thickness: 3, mirror: false } })],
  ['folded across a bend', () => bendJob({ gusset: FOLD })],
] as const)('%s: one valid body, as much steel as its mesh', async (_, make) => {
  const job = make();
  const bodies = Object.values(await gussetsIn(job));
  expect(bodies.map(({ valid }) => valid)).toEqual([true]);
  expect(Math.abs(bodies[0]!.volume / meshVolume(job) - 1)).toBeLessThan(0.01);
});
