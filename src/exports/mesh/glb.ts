/**
 * cage.glb: glTF 2.0 in one binary file, metres, y up and z forward as glTF has it (so the car's left is +x), one node and one
 * mesh a tube, one a foot and one a gusset, named by number and name. One plain material, bare steel.
 */
import type { Going } from '../../drawing/going.ts';
import { Document, WebIO, type Accessor } from '@gltf-transform/core';
import { WHO_DECIDES } from '../../core/words/cautions.ts';
import type { Derived } from '../../core/derive.ts';
import type { ExportFile } from '../shared/files.ts';
import { meshNote, meshTubes, type Meshed } from './fine.ts';

const METRES = 0.001;

export async function glbFile(derived: Derived, going: Going): Promise<ExportFile> {
  const { meshed, leftOut } = await meshTubes(derived, going);
  const document = new Document();
  document.getRoot().getAsset().extras = { caution: WHO_DECIDES };
  // An empty scene is no scene: the format allows no list that is empty.
  if (meshed.length > 0) stand(document, derived.job.name, meshed);
  const bytes = await new WebIO().writeBinary(document);
  return { fileName: 'cage.glb', bytes, ...meshNote('cage.glb', derived, leftOut) };
}

function stand(document: Document, name: string, meshed: readonly Meshed[]): void {
  const buffer = document.createBuffer();
  const steel = document
    .createMaterial('steel')
    .setBaseColorFactor([0.42, 0.43, 0.45, 1])
    .setMetallicFactor(0.7)
    .setRoughnessFactor(0.5);
  const scene = document.createScene(name);
  const accessor = (type: 'VEC3' | 'SCALAR', array: Float32Array<ArrayBuffer> | Uint32Array<ArrayBuffer>): Accessor =>
    document.createAccessor().setType(type).setArray(array).setBuffer(buffer);
  for (const { name: named, shells } of meshed) {
    const mesh = document.createMesh(named);
    for (const { positions, normals, indices } of shells) {
      mesh.addPrimitive(
        document
          .createPrimitive()
          .setAttribute('POSITION', accessor('VEC3', turned(positions, METRES)))
          .setAttribute('NORMAL', accessor('VEC3', turned(normals, 1)))
          .setIndices(accessor('SCALAR', Uint32Array.from(indices)))
          .setMaterial(steel),
      );
    }
    scene.addChild(document.createNode(named).setMesh(mesh));
  }
}

/** From x forward, y left, z up to x left, y up, z forward: each axis moves on by one, which turns and mirrors nothing. */
function turned(vectors: Float32Array, scale: number): Float32Array<ArrayBuffer> {
  const made = new Float32Array(vectors.length);
  for (let i = 0; i < vectors.length; i += 3) {
    made[i] = vectors[i + 1]! * scale;
    made[i + 1] = vectors[i + 2]! * scale;
    made[i + 2] = vectors[i]! * scale;
  }
  return made;
}
