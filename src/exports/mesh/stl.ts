/**
 * cage.stl: binary, millimetres, car axes, one closed shell a tube, and one a piece of a foot, in build order, then those of the gussets. A facet is its normal and three corners
 * as little-endian 32-bit floats, and two bytes that are zero: some programs read a colour there.
 */
import type { Going } from '../../drawing/going.ts';
import type { Derived } from '../../core/derive.ts';
import type { ExportFile } from '../shared/files.ts';
import { meshNote, meshTubes, type Meshed } from './fine.ts';

const HEAD = 80;
const FACET = 50;

export async function stlFile(derived: Derived, going: Going): Promise<ExportFile> {
  const { meshed, leftOut } = await meshTubes(derived, going);
  return {
    fileName: 'cage.stl',
    bytes: stlBytes(meshed),
    ...meshNote('cage.stl', derived, leftOut),
  };
}

function stlBytes(meshed: readonly Meshed[]): Uint8Array {
  const facets = meshed.flatMap(({ shells }) => shells.map(({ positions, indices }) => facetsOf(positions, indices)));
  const bytes = new Uint8Array(HEAD + 4 + FACET * facets.reduce((sum, each) => sum + each.length / 9, 0));
  // A head that began with "solid" would pass for the text form.
  new TextEncoder().encodeInto('Cagewright: millimetres, car axes, one closed shell a tube', bytes);
  const view = new DataView(bytes.buffer);
  view.setUint32(HEAD, (bytes.length - HEAD - 4) / FACET, true);
  let at = HEAD + 4;
  for (const corners of facets) {
    for (let i = 0; i < corners.length; i += 9) {
      layFacet(view, at, corners.subarray(i, i + 9));
      at += FACET;
    }
  }
  return bytes;
}

/** Nine numbers a triangle. One with two corners in the same place closes nothing and is dropped. */
function facetsOf(positions: Float32Array, indices: Uint32Array): Float32Array {
  const corners = new Float32Array(3 * indices.length);
  let laid = 0;
  for (let i = 0; i < indices.length; i += 3) {
    for (let k = 0; k < 3; k += 1) {
      const from = 3 * indices[i + k]!;
      corners.set(positions.subarray(from, from + 3), laid + 3 * k);
    }
    if (!isPinched(corners.subarray(laid, laid + 9))) laid += 9;
  }
  return corners.subarray(0, laid);
}

function isPinched(c: Float32Array): boolean {
  const same = (p: number, q: number): boolean => c[p] === c[q] && c[p + 1] === c[q + 1] && c[p + 2] === c[q + 2];
  return same(0, 3) || same(3, 6) || same(6, 0);
}

function layFacet(view: DataView, at: number, c: Float32Array): void {
  const [ux, uy, uz] = [c[3]! - c[0]!, c[4]! - c[1]!, c[5]! - c[2]!];
  const [vx, vy, vz] = [c[6]! - c[0]!, c[7]! - c[1]!, c[8]! - c[2]!];
  const normal = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const long = Math.hypot(...normal) || 1;
  normal.forEach((each, axis) => view.setFloat32(at + 4 * axis, each / long, true));
  for (let i = 0; i < 9; i += 1) view.setFloat32(at + 12 + 4 * i, c[i]!, true);
}
