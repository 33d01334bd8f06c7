/**
 * Where a reader puts what it reads. Rooms grow with what comes, never by what a header claims; what is beyond the limits is counted and
 * not kept, so that the number can be said.
 */
import { fault, figure, type Fault } from '../job/fault.ts';
import { MOST_SCANNED, type ReadScan, type Thinning } from './types.ts';
import { weld } from './weld.ts';

/** Vertices that are kept while it is not known yet whether they are a mesh's or a cloud's. */
const MOST_VERTICES = 4_000_000;

/** In the file's own unit. A place farther out is a wrong byte, or a place on earth: a scan has a zero of its own. */
export const FARTHEST_SCANNED = 1e6;

export interface Gather {
  /** The number of vertices so far, kept or not. */
  vertices(): number;
  /** Takes a vertex; what is wrong with it, or null. */
  vertex(x: number, y: number, z: number): string | null;
  /** Takes a triangle of vertices by their numbers, which the reader has seen to. */
  triangle(a: number, b: number, c: number): void;
  /** Counts triangles that nobody needs to read any more: there are too many. */
  countOnly(triangles: number): void;
  /** The number of triangles so far, kept or not. */
  triangles(): number;
  done(): ReadScan;
}

/** For one file. */
export function gather({ every }: Thinning): Gather {
  let positions = new Float64Array(3 * 4096);
  let corners = new Uint32Array(3 * 4096);
  let [seen, kept, count] = [0, 0, 0];

  function vertex(x: number, y: number, z: number): string | null {
    const trouble = troubleOf(x, y, z);
    if (trouble !== null) return trouble;
    if (seen++ % every === 0 && kept < MOST_VERTICES) {
      if (3 * kept === positions.length) positions = grown(positions, new Float64Array(2 * positions.length));
      // A zero has no sign here, or two places that are one would differ.
      positions[3 * kept] = x + 0;
      positions[3 * kept + 1] = y + 0;
      positions[3 * kept + 2] = z + 0;
      kept += 1;
    }
    return null;
  }

  function triangle(a: number, b: number, c: number): void {
    if (count < MOST_SCANNED) {
      if (3 * count === corners.length) corners = grown(corners, new Uint32Array(2 * corners.length));
      corners[3 * count] = a;
      corners[3 * count + 1] = b;
      corners[3 * count + 2] = c;
    }
    count += 1;
  }

  function done(): ReadScan {
    if (count > MOST_SCANNED)
      return refused(tooMany(count, 'triangles', 'Make it coarser in the program that it comes from'));
    if (count > 0) {
      if (seen > kept)
        return refused(tooMany(seen, 'corners', `At most ${grouped(MOST_VERTICES)} of them can be read`));
      return { ok: true, data: weld(positions.subarray(0, 3 * kept), corners.slice(0, 3 * count)) };
    }
    if (seen === 0) return refused(fault('', 'it holds no triangles and no points'));
    if (kept > MOST_SCANNED || (every === 1 && seen > kept)) {
      const why = tooMany(seen, 'points', `Every ${ordinal(everyFor(seen))} point of it can be read`);
      return { ...refused(why), points: seen };
    }
    return {
      ok: true,
      data: { kind: 'points', positions: positions.slice(0, 3 * kept), triangles: new Uint32Array() },
    };
  }

  return {
    vertices: () => seen,
    vertex,
    triangle,
    countOnly: (triangles) => void (count += triangles),
    triangles: () => count,
    done,
  };
}

/** The least n of which every n-th point is few enough. */
export const everyFor = (points: number): number => Math.ceil(points / MOST_SCANNED);

/** 3rd. */
export function ordinal(n: number): string {
  const tens = n % 100;
  if (tens >= 11 && tens <= 13) return `${n}th`;
  return `${n}${['th', 'st', 'nd', 'rd'][n % 10] ?? 'th'}`;
}

/** 1 234 567. */
export const grouped = (n: number): string => String(n).replaceAll(/\B(?=(?:\d{3})+$)/gu, ' ');

/** Where vertices are counted from 0, as PLY and GLB do. */
export const noVertex = (vertex: number, there: number): string =>
  `no vertex ${grouped(vertex)}: they go from 0, and there are ${grouped(there)}`;

const refused = (why: Fault): { readonly ok: false; readonly fault: Fault } => ({ ok: false, fault: why });

const tooMany = (n: number, what: string, remedy: string): Fault =>
  fault('', `it holds ${grouped(n)} ${what}, and ${grouped(MOST_SCANNED)} are the most that is taken. ${remedy}`);

function troubleOf(x: number, y: number, z: number): string | null {
  if (!Number.isFinite(x + y + z)) return 'a coordinate that is no number';
  const most = Math.max(Math.abs(x), Math.abs(y), Math.abs(z));
  if (most <= FARTHEST_SCANNED) return null;
  return `a coordinate ${figure(most)} from zero, and ${grouped(FARTHEST_SCANNED)} is the farthest that is taken`;
}

function grown<T extends Float64Array | Uint32Array>(from: T, to: T): T {
  to.set(from);
  return to;
}
