/** Feet in the files of solids and meshes, read back by others: an exact kernel, a general mesh library, the validator of glTF; volumes by hand. */
import { validateBytes } from 'gltf-validator';
import initialiseManifold from 'manifold-3d';
import type { OpenCascadeInstance } from 'replicad-opencascadejs';
import { beforeAll, describe, expect, it } from 'vitest';
import { unwatched } from '../../../src/drawing/going.ts';
import { footMeshes } from '../../../src/core/feet/mesh.ts';
import { standsOf } from '../../../src/core/feet/stand.ts';
import { glbFile } from '../../../src/exports/mesh/glb.ts';
import { stlFile } from '../../../src/exports/mesh/stl.ts';
import { startKernel } from '../../reference/oracles/kernel.ts';
import { stepFile } from '../../../src/exports/solids/step.ts';
import { derivedLeg } from '../../core/feet/feet-jobs.ts';
import { scoped, type Keep } from '../../reference/oracles/kernel.ts';

const HOLES = [
  { at: [-40, 30], diameter: 8 },
  { at: [60, -20], diameter: 10 },
];
const kinked = (at: number, angle: number) => ({
  kind: 'plate',
  size: [200, 100],
  thickness: 4,
  kink: { runs: 'across', at, angle, radius: 6 },
  holes: at > 0 ? HOLES : HOLES.map(({ at: [along, across], diameter }) => ({ at: [-along!, across], diameter })),
});

/** mm3: two flats and the ring of the bend between them (Pappus), less the holes. */
function volumeOfKinked(angle: number): number {
  const turn = (Math.abs(angle) * Math.PI) / 180;
  const setBack = (angle < 0 ? 10 : 6) * Math.tan(turn / 2);
  const holes = (Math.PI / 4) * (64 + 100) * 4;
  return ((200 - 2 * setBack) * 4 + turn * (6 + 2) * 4) * 100 - holes;
}

let oc: OpenCascadeInstance;
beforeAll(async () => {
  oc = await startKernel();
}, 180_000);

/** Name, validity, volume and box of each solid in a STEP file. */
function read(keep: Keep, step: string) {
  const names = [...step.matchAll(/MANIFOLD_SOLID_BREP\('([^']*)'/gu)].map(([, name]) => name);
  oc.FS.writeFile('/feet.step', step);
  const reader = keep(new oc.STEPControl_Reader());
  expect(reader.ReadFile('/feet.step')).toBe('IFSelect_RetDone');
  return names.map((name, i) => {
    reader.TransferRoot(i + 1, keep(new oc.Message_ProgressRange()));
    const shape = keep(reader.Shape(i + 1));
    const properties = keep(new oc.GProp_GProps());
    oc.BRepGProp.VolumeProperties(shape, properties, 1e-6, false, false);
    const box = keep(new oc.Bnd_Box());
    oc.BRepBndLib.AddOptimal(shape, box, false, false);
    const [least, most] = [keep(box.CornerMin()), keep(box.CornerMax())];
    const valid = keep(new oc.BRepCheck_Analyzer(shape, true)).IsValid();
    return {
      name,
      valid,
      volume: properties.Mass(),
      least: [least.X(), least.Y(), least.Z()],
      most: [most.X(), most.Y(), most.Z()],
    };
  });
}

describe('cage.step', () => {
  it.each([
    [60, 35],
    [-60, 35],
    [60, -35],
    [-60, -35],
  ])(
    'has a plate bent over a kink at %d by %d degrees as one exact body with its holes, and its mirror image',
    async (at, angle) => {
      const { bytes } = await stepFile(
        derivedLeg({ foot: kinked(at === 60 ? 30 : -30, angle), mirror: true }),
        oc,
        unwatched,
      );
      scoped((keep) => {
        const solids = read(keep, new TextDecoder().decode(bytes));
        expect(solids.map(({ name }) => name)).toEqual(['1 leg (left)', '1 B foot', '2 leg (right)', '2 B foot']);
        expect(solids.every(({ valid }) => valid)).toBe(true);
        const [own, twin] = [solids[1]!, solids[3]!];
        expect(own.volume / volumeOfKinked(angle)).toBeCloseTo(1, 5);
        expect(twin.volume / own.volume).toBeCloseTo(1, 6);
        // From the node at y = 610, z = 80: 50 to either side, level as far as the bend.
        expect(own.least[1]).toBeCloseTo(560, 3);
        expect(own.most[1]).toBeCloseTo(660, 3);
        expect(twin.most[1]).toBeCloseTo(-560, 3);
        const flange = 70 * Math.sin((Math.abs(angle) * Math.PI) / 180);
        if (angle > 0)
          expect([own.least[2], own.most[2]]).toEqual([expect.closeTo(80 - flange, 3), expect.closeTo(84, 3)]);
        else
          expect([own.least[2], own.most[2]]).toEqual([
            expect.closeTo(80, 3),
            expect.closeTo(80 + flange + 4 * Math.cos((35 * Math.PI) / 180), 3),
          ]);
        expect(at > 0 ? own.least[0] : own.most[0]).toBeCloseTo(at > 0 ? -100 : 100, 3);
      });
    },
  );

  it('has a box in its five pieces, each named', async () => {
    const box = {
      kind: 'box',
      size: [100, 140],
      thickness: 4,
      height: 60,
      wall: 3,
      name: 'Box',
      holes: [{ at: [30, 50], diameter: 9 }],
    };
    const derived = derivedLeg({ foot: box, top: [0, 610, 900] });
    const { bytes } = await stepFile(derived, oc, unwatched);
    scoped((keep) => {
      const solids = read(keep, new TextDecoder().decode(bytes));
      expect(solids.slice(1).map(({ name, volume }) => [name, Math.round(volume)])).toEqual([
        ['1 B foot: box, plate on top', Math.round(100 * 140 * 4 - (Math.PI / 4) * 81 * 4)],
        ['1 B foot: box, short wall 1', 94 * 60 * 3],
        ['1 B foot: box, short wall 2', 94 * 60 * 3],
        ['1 B foot: box, long wall 3', 140 * 60 * 3],
        ['1 B foot: box, long wall 4', 140 * 60 * 3],
      ]);
      expect(solids[1]!.most[2]).toBeCloseTo(144, 3);
    });
  });
});

describe('meshes of feet', () => {
  it('are watertight, wound outwards, as large as by hand but for the flats of a bend, mirrored or not', async () => {
    const manifold = await initialiseManifold();
    manifold.setup();
    for (const foot of [
      kinked(30, 35),
      kinked(-30, -35),
      { ...kinked(30, 0), holes: [] },
      { ...kinked(30, 20), kink: { runs: 'along', at: 20, angle: 20, radius: 6 }, holes: [] },
    ]) {
      for (const stand of derivedLeg({ foot, mirror: true }).tubes.flatMap(standsOf)) {
        const [shell, ...more] = footMeshes(stand);
        expect(more).toEqual([]);
        const mesh = new manifold.Mesh({ numProp: 3, vertProperties: shell!.positions, triVerts: shell!.indices });
        mesh.merge();
        const solid = new manifold.Manifold(mesh);
        expect(solid.status()).toBe('NoError');
        expect(solid.genus()).toBe(0);
        const { angle } = foot.kink;
        const across = foot.kink.runs === 'across';
        const turn = (Math.abs(angle) * Math.PI) / 180;
        const setBack = (angle < 0 ? 10 : 6) * Math.tan(turn / 2);
        const [long, wide] = across ? [200, 100] : [100, 200];
        expect(solid.volume() / (((long - 2 * setBack) * 4 + turn * 8 * 4) * wide)).toBeCloseTo(1, 3);
        solid.delete();
      }
    }
  });

  it('stand in cage.glb under their names and in cage.stl, which say that holes are left out', async () => {
    const derived = derivedLeg({ foot: kinked(30, 20), mirror: true });
    const glb = await glbFile(derived, unwatched);
    const { issues } = await validateBytes(glb.bytes);
    expect(issues.messages).toEqual([]);
    const json = JSON.parse(
      new TextDecoder().decode(
        glb.bytes.subarray(20, 20 + new DataView(glb.bytes.buffer, glb.bytes.byteOffset).getUint32(12, true)),
      ),
    ) as { nodes: { name: string }[] };
    expect(json.nodes.map(({ name }) => name)).toEqual(['1 leg (left)', '1 B foot', '2 leg (right)', '2 B foot']);
    expect(glb.note).toBe('The feet in cage.glb are without their holes.');
    const facets = async (foot: object) =>
      new DataView((await stlFile(derivedLeg({ foot }), unwatched)).bytes.buffer).getUint32(80, true);
    const flat = { kind: 'plate', size: [200, 100], thickness: 4 };
    const box = { kind: 'box', size: [200, 100], thickness: 4, height: 0.01 };
    // Twelve triangles a slab: five for a box, on a tube that is cut 0.01 mm higher, with as many facets.
    expect((await facets(box)) - (await facets(flat))).toBe(48);
    expect((await glbFile(derivedLeg({ foot: flat }), unwatched)).note).toBeUndefined();
  });
});
