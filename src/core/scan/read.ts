/**
 * A scan from the bytes of its file, whichever of the four forms it has: what it begins with says more than what it is called. Readers of
 * its own, because none of a library's says where a file is wrong, and some make room for whatever a header claims.
 */
import { fault } from '../job/fault.ts';
import { readGlb } from './glb.ts';
import { readObj } from './obj.ts';
import { readPly } from './ply.ts';
import { isBinaryStl, readBinaryStl, readTextStl } from './stl.ts';
import { MOST_SCAN_BYTES, type Reading, type Thinning } from './types.ts';

/** What is read, for whoever picks a file. */
export const SCAN_FILES = ['.obj', '.ply', '.stl', '.glb'] as const;

/** Reads the file; every fault says its place in it, or is about the whole. */
export function* readScan(fileName: string, bytes: Uint8Array, thinning: Thinning): Reading {
  if (bytes.length === 0) return { ok: false, fault: fault('', 'it is empty') };
  if (bytes.length > MOST_SCAN_BYTES) {
    return {
      ok: false,
      fault: fault('', `it has more than ${MOST_SCAN_BYTES / 1024 / 1024} MB: make it coarser first`),
    };
  }
  const start = String.fromCharCode(...bytes.subarray(0, 4));
  if (start === 'glTF') return yield* readGlb(bytes, thinning);
  if (/^ply[\r\n]$/u.test(start)) return yield* readPly(bytes, thinning);
  const ending = /\.[^.]*$/u.exec(fileName.toLowerCase())?.[0] ?? '';
  if (ending === '.stl') return yield* isBinaryStl(bytes) ? readBinaryStl(bytes) : readTextStl(bytes);
  if (ending === '.obj') return yield* readObj(bytes, thinning);
  if (ending === '.gltf') {
    return { ok: false, fault: fault('', 'a glTF whose data stand in other files: save it as one GLB') };
  }
  if (ending === '.ply' || ending === '.glb') {
    return { ok: false, fault: fault('byte 0', `it does not begin as a ${ending.slice(1).toUpperCase()} does`) };
  }
  return { ok: false, fault: fault('', 'neither OBJ, PLY, STL nor GLB') };
}
