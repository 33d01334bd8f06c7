/**
 * The mesh files of the demo, read by others: the Khronos validator for glTF, a general mesh library (manifold-3d) for
 * STL. It takes a mesh only if it is watertight and without overlapping.
 */
import { unwatched } from '../../../src/drawing/going.ts';
import fc from 'fast-check';
import { validateBytes } from 'gltf-validator';
import { beforeAll, describe, expect, it } from 'vitest';
import type { ManifoldToplevel } from 'manifold-3d';
import initialise from 'manifold-3d';
import { glbFile } from '../../../src/exports/mesh/glb.ts';
import { stlFile } from '../../../src/exports/mesh/stl.ts';
import { isWhole } from '../../../src/exports/shared/whole.ts';
import { secondRoundText } from '../../command-line.ts';
import { bendJob, jointJob, madeOf } from '../../core/gusset/gusset-jobs.ts';
import { drawn } from '../../draws.ts';
import { derivedOrSkipped, fixed, plainFrame } from '../../laws/frames.ts';
import { bentTube, derivedFrom } from '../jobs.ts';

const demo = derivedFrom(secondRoundText());
const NOTHING = derivedFrom(JSON.stringify({ format: 'cagewright/job', version: 1, name: 'Nothing' }));

const NAMES = ['"quoted"', 'two\nlines', '🏁', 'קורה \u202e', 'x'.repeat(200), '=cmd()', '../../etc/passwd'];

interface Gltf {
  readonly asset: { readonly version: string; readonly extras: { readonly caution: string } };
  readonly nodes: readonly { readonly name: string; readonly mesh: number }[];
  readonly meshes: readonly {
    readonly primitives: readonly { readonly attributes: { readonly POSITION: number } }[];
  }[];
  readonly accessors: readonly { readonly min: readonly number[]; readonly max: readonly number[] }[];
}

/** The JSON chunk of a binary glTF (glTF 2.0, 4.4.3). */
function gltfIn(bytes: Uint8Array): Gltf {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  return JSON.parse(new TextDecoder().decode(bytes.subarray(20, 20 + view.getUint32(12, true)))) as Gltf;
}

describe('cage.glb', () => {
  it('passes the Khronos validator without an error, a warning or a note', async () => {
    const { bytes } = await glbFile(demo, unwatched);
    const { issues, info } = await validateBytes(bytes);
    expect(issues.messages).toEqual([]);
    expect(info.drawCallCount).toBe(demo.tubes.length);
  });

  it('has a named node a tube, in metres, y up and z forward', async () => {
    const { asset, nodes, meshes, accessors } = gltfIn((await glbFile(bentTube(), unwatched)).bytes);
    expect(asset.extras.caution).toContain('The rule book, the inspector and licensed practice decide.');
    expect(nodes.map(({ name }) => name)).toEqual(['1 Bar']);
    const { min, max } = accessors[meshes[0]!.primitives[0]!.attributes.POSITION]!;
    // In car axes the tube goes from a square end in the plane x = 0 along x, and is level on top at z = 500; 45 mm thick.
    expect(min[2]).toBeCloseTo(0, 6);
    expect(min[0]).toBeCloseTo(-0.0225, 6);
    expect(min[1]).toBeCloseTo(-0.0225, 6);
    expect(max[1]).toBeCloseTo(0.5225, 4);
  });

  it.each(NAMES)('names a tube %j as it is called', async (name) => {
    const { bytes } = await glbFile(bentTube({ name }, { name }), unwatched);
    expect(gltfIn(bytes).nodes[0]!.name).toBe(`1 ${name}`);
    expect((await validateBytes(bytes)).issues.messages).toEqual([]);
  });

  it('of no tube is a file all the same', async () => {
    const { issues } = await validateBytes((await glbFile(NOTHING, unwatched)).bytes);
    expect(issues.messages).toEqual([]);
  });
});

interface Shell {
  readonly corners: number[];
  readonly triangles: number[];
}

/** Reads the binary form; a shell is done when every one of its edges has been met from both sides. */
function readStl(bytes: Uint8Array): Shell[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const facets = view.getUint32(80, true);
  expect(bytes.length).toBe(84 + 50 * facets);
  const shells: Shell[] = [];
  let places = new Map<string, number>();
  const open = new Set<string>();
  for (let facet = 0; facet < facets; facet += 1) {
    if (open.size === 0) {
      shells.push({ corners: [], triangles: [] });
      places = new Map();
    }
    const { corners, triangles } = shells.at(-1)!;
    const ids = [0, 1, 2].map((k) => {
      const at = 84 + 50 * facet + 12 + 12 * k;
      const place = [0, 4, 8].map((axis) => view.getFloat32(at + axis, true));
      const key = place.join(' ');
      if (!places.has(key)) {
        places.set(key, corners.length / 3);
        corners.push(...place);
      }
      return places.get(key)!;
    });
    triangles.push(...ids);
    ids.forEach((from, k) => {
      const to = ids[(k + 1) % 3]!;
      if (!open.delete(`${to}-${from}`)) open.add(`${from}-${to}`);
    });
  }
  expect(open.size).toBe(0);
  return shells;
}

describe('cage.stl', () => {
  let manifold: ManifoldToplevel;
  beforeAll(async () => {
    manifold = await initialise();
    manifold.setup();
  });

  const volumeOf = ({ corners, triangles }: Shell, holes = 1): number => {
    const mesh = new manifold.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(corners),
      triVerts: Uint32Array.from(triangles),
    });
    const solid = new manifold.Manifold(mesh);
    expect(solid.status()).toBe('NoError');
    expect(solid.genus()).toBe(holes);
    const volume = solid.volume();
    solid.delete();
    return volume;
  };

  it('is one watertight shell a tube, each with the volume that its mass says', async () => {
    const shells = readStl((await stlFile(demo, unwatched)).bytes);
    expect(shells).toHaveLength(demo.tubes.length);
    shells.forEach((shell, i) => {
      const { mass, name } = demo.tubes[i]!;
      // Flat sides and steps of bend take 0.06 % at most; a cut face that is flat from edge to edge adds 0.1 % to a short tube.
      expect(Math.abs(volumeOf(shell) / (mass / 7850e-9) - 1), name).toBeLessThan(0.0015);
    });
  });

  it('is watertight for tubes anywhere, also where a wall passes its run by', async () => {
    let passedBy = 0;
    await fc.assert(
      fc.asyncProperty(plainFrame, async (job) => {
        const { tubes } = derivedOrSkipped(job);
        const whole = tubes.filter(isWhole);
        passedBy += whole.filter(({ ends }) => ends.some((end) => end.passedBy)).length;
        const { bytes, note } = await stlFile(derivedOrSkipped(job), unwatched);
        const shells = readStl(bytes);
        expect(shells).toHaveLength(whole.length);
        shells.forEach((shell) => volumeOf(shell));
        expect(note === undefined).toBe(whole.length === tubes.length);
      }),
      fixed(drawn(5, 30)),
    );
    expect(passedBy).toBeGreaterThan(drawn(2, 5));
  });

  it('has the gussets after the tubes: a flat one as a shell, a folded one as three, of the volume of their sheets', async () => {
    // With the fibre in the middle the flat sheet holds what the folded one does (Pappus).
    const folded = { kind: 'bent', thickness: 3, width: 38, radius: 4, kFactor: 0.5 };
    for (const [frame, count, within] of [
      [jointJob(), 1, 1e-5],
      [bendJob(), 1, 0.001],
      [jointJob({ gusset: folded }), 3, 0.001],
      [bendJob({ gusset: folded, legs: [220, 220] }), 3, 0.001],
    ] as const) {
      const { bytes } = await stlFile(frame, unwatched);
      const gusset = readStl(bytes).slice(frame.tubes.length);
      expect(gusset).toHaveLength(count);
      const volume = gusset.reduce((sum, shell) => sum + volumeOf(shell, 0), 0);
      expect(Math.abs(volume / (madeOf(frame).sheet.mass / 7850e-9) - 1)).toBeLessThan(within);
      const glb = await glbFile(frame, unwatched);
      expect((await validateBytes(glb.bytes)).issues.messages).toEqual([]);
      expect(gltfIn(glb.bytes).nodes.at(-1)!.name).toBe('g');
    }
  });

  it('is binary: its head does not begin like the text form, and an empty one counts none', async () => {
    const { bytes } = await stlFile(NOTHING, unwatched);
    expect(bytes).toHaveLength(84);
    expect(new TextDecoder().decode(bytes.subarray(0, 5))).not.toBe('solid');
  });
});
