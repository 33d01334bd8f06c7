/**
 * A mesh of which each place is one vertex. Many files give every triangle corners of its own, or a vertex twice where its colour changes:
 * what hangs together in such a file is known only by places that are the same to the last bit.
 */
import type { ScanData } from './types.ts';

/** The mesh without vertices that no triangle has, and with those in one place made one. Triangles keep their order and their sense. */
export function weld(positions: Float64Array<ArrayBuffer>, corners: Uint32Array<ArrayBuffer>): ScanData {
  const words = new Int32Array(positions.buffer, positions.byteOffset, 2 * positions.length);
  const used = new Int32Array(positions.length / 3).fill(-1);
  const table = new Int32Array(2 ** Math.ceil(Math.log2(Math.max(16, 2 * Math.min(used.length, corners.length))))).fill(
    -1,
  );
  const mask = table.length - 1;
  const first: number[] = [];

  /** The number that a vertex goes by. */
  function named(vertex: number): number {
    let slot = hashed(words, 6 * vertex) & mask;
    for (; table[slot]! >= 0; slot = (slot + 1) & mask) {
      const there = table[slot]!;
      if (sameWords(words, 6 * first[there]!, 6 * vertex)) return there;
    }
    table[slot] = first.length;
    first.push(vertex);
    return first.length - 1;
  }

  const triangles = corners.map((vertex) => (used[vertex]! >= 0 ? used[vertex]! : (used[vertex] = named(vertex))));
  const welded = new Float64Array(3 * first.length);
  first.forEach((vertex, i) => welded.set(positions.subarray(3 * vertex, 3 * vertex + 3), 3 * i));
  return { kind: 'triangles', positions: welded, triangles };
}

/** The multiplications of MurmurHash3's end, which is in the public domain. */
function hashed(words: Int32Array, at: number): number {
  let hash = 0;
  for (let i = 0; i < 6; i++) {
    hash = Math.imul(hash ^ words[at + i]!, 0x85ebca6b);
    hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
    hash ^= hash >>> 16;
  }
  return hash;
}

function sameWords(words: Int32Array, a: number, b: number): boolean {
  for (let i = 0; i < 6; i++) if (words[a + i] !== words[b + i]) return false;
  return true;
}
