/** What a scan of the car is once it has been read: a mesh or a cloud, in the unit and the axes of its file. */
import type { Fault } from '../job/fault.ts';

export interface ScanData {
  readonly kind: 'triangles' | 'points';
  /** x, y and z of each vertex, in the file's own unit and axes; all finite. No two vertices of a mesh are in one place. */
  readonly positions: Float64Array<ArrayBuffer>;
  /** Three vertices a triangle; none of a cloud. */
  readonly triangles: Uint32Array<ArrayBuffer>;
}

/** What came of reading. */
export type ReadScan =
  | { readonly ok: true; readonly data: ScanData }
  | {
      readonly ok: false;
      readonly fault: Fault;
      /** Of a cloud that is too large: so many points. Every n-th of them can be read. */
      readonly points?: number;
    };

/** Reading, bit by bit: yields how far it is, from 0 to 1. Whoever does not go on with it has cancelled it. */
export type Reading = Generator<number, ReadScan, void>;

/** How much of a cloud is read: every n-th point, 1 = all. */
export interface Thinning {
  readonly every: number;
}

/** Triangles of a mesh, or points of a cloud: what a browser turns and cuts without a pause. */
export const MOST_SCANNED = 500_000;

/** Bytes of a file. A cloud of which every n-th point is taken may be large; beyond this reading would only fill the memory. */
export const MOST_SCAN_BYTES = 512 * 1024 * 1024;

/** How many triangles or points it has. */
export const countOf = ({ kind, positions, triangles }: ScanData): number =>
  (kind === 'triangles' ? triangles : positions).length / 3;

/** Whether what comes out of a store is what once went in. */
export function isScanData(value: unknown): value is ScanData {
  if (typeof value !== 'object' || value === null) return false;
  const { kind, positions, triangles } = value as Partial<ScanData>;
  if (!(positions instanceof Float64Array) || !(triangles instanceof Uint32Array)) return false;
  const vertices = positions.length / 3;
  if (!Number.isInteger(vertices) || vertices === 0 || !Number.isInteger(triangles.length / 3)) return false;
  if (kind === 'points' ? triangles.length > 0 : kind !== 'triangles' || triangles.length === 0) return false;
  return positions.every(Number.isFinite) && triangles.every((vertex) => vertex < vertices);
}
