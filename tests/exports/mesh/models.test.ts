/**
 * The mesh files of the demo, read by others: the Khronos validator for glTF, a general mesh library (manifold-3d) for
 * STL. It takes a mesh only if it is watertight and without overlapping.
 */
import { validateBytes } from 'gltf-validator';
import { beforeAll, describe, expect, it } from 'vitest';
import type { ManifoldToplevel } from 'manifold-3d';
import initialise from 'manifold-3d';
import { glbFile } from '../../../src/exports/mesh/glb.ts';
import { stlFile } from '../../../src/exports/mesh/stl.ts';
import { unwatched } from '../../../src/exports/files.ts';
import { demoText } from '../../command-line.ts';
import { derivedFrom } from '../jobs.ts';

const demo = derivedFrom(demoText());

describe('cage.glb', () => {
  it('passes the Khronos validator without an error, a warning or a note', async () => {
    const { bytes } = await glbFile(demo, unwatched);
    const { issues, info } = await validateBytes(bytes);
    expect(issues.messages).toEqual([]);
    expect(info.drawCallCount).toBe(demo.tubes.length);
    console.log(`cage.glb of the demo: ${(bytes.length / 1e6).toFixed(1)} MB`);
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

  const volumeOf = ({ corners, triangles }: Shell): number => {
    const mesh = new manifold.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(corners),
      triVerts: Uint32Array.from(triangles),
    });
    const solid = new manifold.Manifold(mesh);
    expect(solid.status()).toBe('NoError');
    expect(solid.genus()).toBe(1);
    const volume = solid.volume();
    solid.delete();
    return volume;
  };

  it('is one watertight shell a tube, each with the volume that its mass says', async () => {
    const { bytes } = await stlFile(demo, unwatched);
    console.log(`cage.stl of the demo: ${(bytes.length / 1e6).toFixed(1)} MB`);
    const shells = readStl(bytes);
    expect(shells).toHaveLength(demo.tubes.length);
    shells.forEach((shell, i) => {
      const { mass, name } = demo.tubes[i]!;
      const share = volumeOf(shell) / (mass / 7850e-9) - 1;
      console.log(share.toExponential(2), name);
      expect(Math.abs(share), name).toBeLessThan(0.0015);
    });
  });
});
