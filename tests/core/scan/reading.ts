/** A reading gone through to its end. */
import { readScan } from '../../../src/core/scan/read.ts';
import type { ReadScan, ScanData } from '../../../src/core/scan/types.ts';

export function read(fileName: string, bytes: Uint8Array, every = 1): ReadScan {
  const reading = readScan(fileName, bytes, { every });
  for (let next = reading.next(); ; next = reading.next()) if (next.done) return next.value;
}

export function dataIn(fileName: string, bytes: Uint8Array, every = 1): ScanData {
  const came = read(fileName, bytes, every);
  if (!came.ok) throw new Error(`${came.fault.place}: ${came.fault.message}`);
  return came.data;
}

/** `line 3: what is wrong`, the one line that a person reads. */
export function faultIn(fileName: string, bytes: Uint8Array): string {
  const came = read(fileName, bytes);
  if (came.ok) throw new Error('it was read');
  return came.fault.place === '' ? came.fault.message : `${came.fault.place}: ${came.fault.message}`;
}
