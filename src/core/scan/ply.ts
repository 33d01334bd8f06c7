/**
 * PLY: Turk, The PLY Polygon File Format (Stanford 1994). Elements `vertex` with x, y and z, and `face` with the list vertex_indices, or
 * vertex_index, are read; whatever else there is, colours, normals, elements of other names, is passed over. Without faces it is a cloud.
 */
import { fault, type Fault } from '../job/fault.ts';
import { gather, grouped, noVertex, type Gather } from './gather.ts';
import { bytesOf, readPlyHead, type PlyElement, type PlyHead, type PlyProperty, type PlyType } from './ply-head.ts';
import { textOf } from './text.ts';
import type { Reading, Thinning } from './types.ts';

/** Rows from one report to the next. */
const STRIDE = 16_384;

/** Where the numbers of the data come from, text or bytes. */
interface Source {
  /** The next number, NaN where there is none. */
  number(type: PlyType): number;
  /** Called before each row, null where that begins. */
  begin(): Fault | null;
  /** Where that row stands: a line, or a byte. */
  mark(): number;
  place(element: PlyElement, row: number, mark: number): string;
  at(): number;
}

/** The highest vertex that a face names, and where. */
interface Highest {
  vertex: number;
  row: number;
  mark: number;
}

const CUT_SHORT = 'it ends before all is there that its head claims';

/** Any of the three ways of writing it. */
export function* readPly(bytes: Uint8Array, thinning: Thinning): Reading {
  const head = readPlyHead(bytes);
  if ('message' in head) return { ok: false, fault: head };
  const trouble = troubleOf(head, bytes);
  if (trouble !== null) return { ok: false, fault: trouble };
  const into = gather(thinning);
  const source = head.format === 'ascii' ? fromText(bytes, head) : fromBytes(bytes, head);
  const highest: Highest = { vertex: -1, row: 0, mark: 0 };
  for (const element of head.elements) {
    const reads = readerOf(element, source, into, highest);
    for (let row = 0; row < element.claimed; row++) {
      if (row % STRIDE === 0) yield source.at() / bytes.length;
      const wrong = source.begin() ?? reads(row);
      if (wrong !== null) return { ok: false, fault: wrong };
    }
  }
  if (source.at() > bytes.length) return { ok: false, fault: fault('', CUT_SHORT) };
  const face = head.elements.find(({ name }) => name === 'face');
  if (face !== undefined && highest.vertex >= into.vertices()) {
    const place = source.place(face, highest.row, highest.mark);
    return { ok: false, fault: fault(place, noVertex(highest.vertex, into.vertices())) };
  }
  return into.done();
}

/** What is wrong with the head beside the bytes that follow it. */
function troubleOf({ format, elements, ends }: PlyHead, bytes: Uint8Array): Fault | null {
  const vertex = elements.find(({ name }) => name === 'vertex');
  if (vertex === undefined) return fault('', 'its head names no vertices');
  const isNumber = (name: string) => vertex.properties.some((each) => each.name === name && each.count === undefined);
  if (!['x', 'y', 'z'].every(isNumber)) return fault('', 'its vertices have no x, y and z');
  if (elements.some(({ name, claimed }) => name === 'tristrips' && claimed > 0)) {
    return fault('', 'it holds strips of triangles, which are not read: save it with faces');
  }
  const face = elements.find(({ name }) => name === 'face');
  if (face !== undefined && face.claimed > 0 && cornersOf(face) === undefined) {
    return fault('', 'its faces have no list vertex_indices');
  }
  let least = 0;
  for (const { name, claimed, properties } of elements) {
    // A number in text takes two bytes at least, with what parts it from the next.
    const sizes = properties.map(({ type, count }) => (format === 'ascii' ? 2 : bytesOf(count ?? type)));
    const row = sizes.reduce((sum, size) => sum + size, 0);
    if (row === 0 && claimed > 0) return fault('', `each ${named(name)} is without any number`);
    least += claimed * row;
    if (least <= bytes.length - ends + (format === 'ascii' ? 1 : 0)) continue;
    const takes = `${grouped(claimed)} of ${named(name)}, which take ${grouped(claimed * row)} bytes or more`;
    return fault('', `its head claims ${takes}; ${grouped(bytes.length - ends)} follow it`);
  }
  return null;
}

/** A name from the file, cut to what a sentence can carry. */
const named = (name: string): string => name.replaceAll(/[^\w-]/gu, '?').slice(0, 40);

const cornersOf = ({ properties }: PlyElement): PlyProperty | undefined =>
  properties.find(({ name, count }) => count !== undefined && (name === 'vertex_indices' || name === 'vertex_index'));

function readerOf(element: PlyElement, source: Source, into: Gather, highest: Highest) {
  const { name, properties } = element;
  const corners = name === 'face' ? cornersOf(element) : undefined;
  const wrong = (row: number, message: string): Fault => fault(source.place(element, row, source.mark()), message);
  const axis = properties.map((each) => (name === 'vertex' ? ['x', 'y', 'z'].indexOf(each.name) : -1));
  const at = [0, 0, 0];
  return (row: number): Fault | null => {
    for (let i = 0; i < properties.length; i++) {
      const property = properties[i]!;
      if (property.count === undefined) {
        const value = source.number(property.type);
        if (axis[i]! >= 0) at[axis[i]!] = value;
        continue;
      }
      const length = source.number(property.count);
      if (!Number.isSafeInteger(length) || length < 0) return wrong(row, 'a list without its length');
      if (property === corners && length < 3) return wrong(row, `a face of ${length} corners`);
      let [first, before] = [0, 0];
      for (let k = 0; k < length; k++) {
        const vertex = source.number(property.type);
        if (property !== corners) {
          if (Number.isNaN(vertex)) return wrong(row, 'a list that ends too soon');
          continue;
        }
        if (!Number.isSafeInteger(vertex) || vertex < 0) return wrong(row, 'a corner that is no vertex');
        if (vertex > highest.vertex) Object.assign(highest, { vertex, row, mark: source.mark() });
        if (k === 0) first = vertex;
        else if (k > 1) into.triangle(first, before, vertex);
        before = vertex;
      }
    }
    if (name !== 'vertex') return null;
    const trouble = into.vertex(at[0]!, at[1]!, at[2]!);
    return trouble === null ? null : wrong(row, trouble);
  };
}

/** A row a line; lines with nothing on them do not count. */
function fromText(bytes: Uint8Array, { ends, lines }: PlyHead): Source {
  const text = textOf(bytes, ends);
  let begun = false;
  const line = (counted: number): string => `line ${counted + lines - 1}`;
  return {
    number: () => text.number(),
    begin() {
      if (begun) text.nextLine();
      begun = true;
      while (text.atLineEnd()) if (!text.nextLine()) return fault(line(text.line()), CUT_SHORT);
      return null;
    },
    mark: () => text.line(),
    place: (_, __, mark) => line(mark),
    at: () => text.at(),
  };
}

function fromBytes(bytes: Uint8Array, { format, ends }: PlyHead): Source {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const little = format === 'little';
  let at = ends;
  let start = ends;
  return {
    number(type) {
      const from = at;
      at += bytesOf(type);
      return at > bytes.length ? NaN : numberAt(view, from, type, little);
    },
    begin() {
      start = at;
      return at < bytes.length ? null : fault(`byte ${at}`, CUT_SHORT);
    },
    mark: () => start,
    place: ({ name }, row, mark) => `${named(name)} ${grouped(row + 1)}, byte ${mark}`,
    at: () => at,
  };
}

function numberAt(view: DataView, at: number, type: PlyType, little: boolean): number {
  switch (type) {
    case 'char':
    case 'int8':
      return view.getInt8(at);
    case 'uchar':
    case 'uint8':
      return view.getUint8(at);
    case 'short':
    case 'int16':
      return view.getInt16(at, little);
    case 'ushort':
    case 'uint16':
      return view.getUint16(at, little);
    case 'int':
    case 'int32':
      return view.getInt32(at, little);
    case 'uint':
    case 'uint32':
      return view.getUint32(at, little);
    case 'float':
    case 'float32':
      return view.getFloat32(at, little);
    case 'double':
    case 'float64':
      return view.getFloat64(at, little);
  }
}
