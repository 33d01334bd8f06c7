/** What lies in a GLB: its two chunks, and the pieces of data that its JSON names (Khronos, glTF 2.0 Specification, 3.6 and 4). Every number is held against the bytes. */
import { fault, quoted, type Fault } from '../job/fault.ts';
import { readPlain, type Plain, type PlainObject } from '../job/plain.ts';
import { grouped } from './gather.ts';

const [MAGIC, JSON_CHUNK, BIN_CHUNK] = [0x46546c67, 0x4e4f534a, 0x004e4942];

/** Bytes. The JSON names the pieces; the data of the largest scan lie beside it. */
const MOST_JSON = 8 * 1024 * 1024;

/** Packed data, which would want a program of their own to unpack, or leave out what a scan is. */
const READ_WITH = ['KHR_mesh_quantization', 'KHR_materials_', 'KHR_texture_', 'EXT_texture_', 'KHR_lights_'];

export interface GlbParts {
  readonly json: PlainObject;
  readonly data: DataView;
}

/** The chunks, or why there are none. */
export function glbParts(bytes: Uint8Array): GlbParts | Fault {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 20) return fault('', `it ends after ${bytes.length} bytes, in the middle of its head`);
  if (view.getUint32(0, true) !== MAGIC) return fault('byte 0', 'it does not begin as a GLB does');
  if (view.getUint32(4, true) !== 2) return fault('byte 4', `of version ${view.getUint32(4, true)}; version 2 is read`);
  const [claimed, length] = [view.getUint32(8, true), view.getUint32(12, true)];
  const tooLong = (place: string, size: number, there: number) =>
    fault(place, `it claims ${grouped(size)} bytes, and ${grouped(there)} are there`);
  if (claimed > bytes.length) return tooLong('byte 8', claimed, bytes.length);
  if (view.getUint32(16, true) !== JSON_CHUNK) return fault('byte 16', 'its first chunk is not JSON');
  if (length > bytes.length - 20) return tooLong('byte 12', length, bytes.length - 20);
  if (length > MOST_JSON) return fault('byte 12', `${grouped(length)} bytes of JSON: no scan needs as many`);
  const text = new TextDecoder().decode(bytes.subarray(20, 20 + length));
  const { value, faults } = readPlain(text);
  if (faults.length > 0) return fault(`its JSON, ${faults[0]!.place}`.replace(/, $/u, ''), faults[0]!.message);
  if (!isObject(value)) return fault('its JSON', 'no object');
  const next = 20 + length;
  if (bytes.length < next + 8) return { json: value, data: new DataView(new ArrayBuffer(0)) };
  const [size, type] = [view.getUint32(next, true), view.getUint32(next + 4, true)];
  if (type !== BIN_CHUNK) return fault(`byte ${next + 4}`, 'its second chunk is not BIN');
  if (size > bytes.length - next - 8) return tooLong(`byte ${next}`, size, bytes.length - next - 8);
  return { json: value, data: new DataView(bytes.buffer, bytes.byteOffset + next + 8, size) };
}

/** Whether it has keys. */
export const isObject = (value: Plain | undefined): value is PlainObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A list of the JSON; empty where it has none. */
export const listIn = (object: PlainObject, name: string): readonly Plain[] => {
  const value = object[name];
  return Array.isArray(value) ? (value as readonly Plain[]) : [];
};

/** A whole number from 0 on, `missing` where the JSON leaves it out, NaN where it is anything else. */
export function wholeIn(object: PlainObject, name: string, missing = NaN): number {
  const value = object[name];
  if (value === undefined) return missing;
  return typeof value === 'number' && Number.isSafeInteger(value) && value >= 0 ? value : NaN;
}

/** What the file wants of its reader that this one cannot do, or null. */
export function wantsMore(json: PlainObject): Fault | null {
  for (const name of listIn(json, 'extensionsRequired')) {
    if (typeof name === 'string' && !READ_WITH.some((known) => name.startsWith(known))) {
      return fault('extensionsRequired', `its data are packed with ${quoted(name)}: save it without that`);
    }
  }
  for (const [i, buffer] of listIn(json, 'buffers').entries()) {
    if (isObject(buffer) && buffer['uri'] !== undefined) {
      return fault(
        `buffers[${i}]`,
        'its data stand in another file, or in its JSON, and are not fetched: save it as one GLB',
      );
    }
  }
  return null;
}

/** Numbers in the data. */
export interface Accessor {
  readonly count: number;
  /** The k-th part of the i-th of them; the caller asks for none beyond. */
  at(i: number, k: number): number;
}

const COMPONENTS = {
  5120: { bytes: 1, most: 127, read: (view: DataView, at: number) => view.getInt8(at) },
  5121: { bytes: 1, most: 255, read: (view: DataView, at: number) => view.getUint8(at) },
  5122: { bytes: 2, most: 32767, read: (view: DataView, at: number) => view.getInt16(at, true) },
  5123: { bytes: 2, most: 65535, read: (view: DataView, at: number) => view.getUint16(at, true) },
  5125: { bytes: 4, most: 4294967295, read: (view: DataView, at: number) => view.getUint32(at, true) },
  5126: { bytes: 4, most: 1, read: (view: DataView, at: number) => view.getFloat32(at, true) },
} as const;

const FLOAT = 5126;

/** The accessor of that number, of `parts` parts, once all of it is known to lie in the data. */
export function accessorOf({ json, data }: GlbParts, index: number, type: 'SCALAR' | 'VEC3'): Accessor | Fault {
  const place = Number.isNaN(index) ? 'accessors' : `accessors[${index}]`;
  const accessor = listIn(json, 'accessors')[index];
  if (!isObject(accessor)) return fault(place, 'there is none');
  if (accessor['sparse'] !== undefined) return fault(place, 'sparse, which is not read');
  if (accessor['type'] !== type) return fault(place, `not ${type}`);
  const component = COMPONENTS[accessor['componentType'] as keyof typeof COMPONENTS];
  if (component === undefined) return fault(place, 'of no known componentType');
  const view = listIn(json, 'bufferViews')[wholeIn(accessor, 'bufferView')];
  if (!isObject(view)) return fault(place, 'no bufferView');
  if (wholeIn(view, 'buffer') !== 0) return fault(place, 'not in the buffer of this file');
  const parts = type === 'VEC3' ? 3 : 1;
  const stride = wholeIn(view, 'byteStride', parts * component.bytes);
  const [count, from] = [wholeIn(accessor, 'count'), wholeIn(view, 'byteOffset', 0)];
  const start = from + wholeIn(accessor, 'byteOffset', 0);
  const ends = start + Math.max(0, count - 1) * stride + parts * component.bytes;
  // Written so that a NaN of any of them is refused too.
  if (!(count > 0 && stride > 0 && ends <= from + wholeIn(view, 'byteLength') && ends <= data.byteLength)) {
    return fault(place, `does not lie within the ${grouped(data.byteLength)} bytes of data`);
  }
  const scale = accessor['normalized'] === true && accessor['componentType'] !== FLOAT ? 1 / component.most : 1;
  const least = scale === 1 ? -Infinity : -1;
  return {
    count,
    at: (i, k) => Math.max(least, scale * component.read(data, start + i * stride + k * component.bytes)),
  };
}
