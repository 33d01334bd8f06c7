/** How long scans of the greatest size take to read, each form of file once; and to cut and to pick on. */
import { readScan } from '../../src/core/scan/read.ts';
import { pickOn } from '../../src/core/scan/pick.ts';
import { placingOf } from '../../src/core/scan/place.ts';
import { sectionOf } from '../../src/core/scan/section.ts';
import { countOf, type ScanData } from '../../src/core/scan/types.ts';
import { binaryStl, glbFile, objFile, plyFile, textStl } from '../core/scan/files.ts';
import { ball, cloud } from '../core/scan/shapes.ts';
import { timed, type Timing } from './clock.ts';

/** 500 000 triangles, and as many points. */
const MESH = ball(900, [0, 0, 900], 500, 501);
const CLOUD = { vertices: cloud(500_000, [4000, 1700, 1300], 2), faces: [] };

function readAll(name: string, bytes: Uint8Array): ScanData {
  const reading = readScan(name, bytes, { every: 1 });
  for (let next = reading.next(); ; next = reading.next()) {
    if (!next.done) continue;
    if (!next.value.ok) throw new Error(next.value.fault.message);
    return next.value.data;
  }
}

export interface ScanTime {
  readonly name: string;
  readonly time: Timing;
}

/** Each form, by the megabytes of its file. */
export async function timeScans(): Promise<readonly ScanTime[]> {
  const files: readonly (readonly [string, string, Uint8Array])[] = [
    ['STL, bytes', 'a.stl', binaryStl(MESH)],
    ['STL, text', 'a.stl', textStl(MESH)],
    ['PLY, bytes', 'a.ply', plyFile(MESH, 'binary_little_endian')],
    ['PLY, text', 'a.ply', plyFile(MESH, 'ascii')],
    ['OBJ', 'a.obj', objFile(MESH)],
    ['GLB', 'a.glb', await glbFile(MESH)],
    ['PLY of points, bytes', 'a.ply', plyFile(CLOUD, 'binary_big_endian')],
    ['PLY of points, text', 'a.ply', plyFile(CLOUD, 'ascii')],
  ];
  const times = files.map(([what, name, bytes]): ScanTime => {
    const megabytes = Math.round(bytes.length / 1e6);
    return { name: `${what}, ${megabytes} MB`, time: timed(3, 1, () => readAll(name, bytes)) };
  });
  const data = readAll('a.ply', files[2]![2]);
  if (countOf(data) !== 500_000) throw new Error(`${countOf(data)} triangles`);
  const placing = placingOf({ unit: 'mm', up: 'z', placement: { rotation: [3, 5, 7], shift: [0, 0, 0] } });
  const plane = { point: [0, 100, 900], normal: [0, 1, 0] } as const;
  return [
    ...times,
    { name: 'its section by a plane', time: timed(10, 2, () => sectionOf(data, placing, plane)) },
    {
      name: 'a place picked on it',
      time: timed(10, 2, () => pickOn(data, placing, { through: plane.point, toEye: [1, 0, 0] }, 5)),
    },
  ];
}
