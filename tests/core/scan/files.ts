/** Scan files as other programs write them: by the specifications, with nothing of the readers in them. */
import { Document, WebIO } from '@gltf-transform/core';
import type { Shape, Triple } from './shapes.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

const joined = (...parts: readonly Uint8Array[]): Uint8Array => new Uint8Array(Buffer.concat(parts));

/** Colours after the places and groups between the faces, as scanners write them. */
export function objFile({ vertices, faces }: Shape): Uint8Array {
  const lines = [
    '# made up',
    'mtllib scan.mtl',
    ...vertices.map(([x, y, z]) => `v ${x} ${y} ${z} 0.5 0.25 0.125`),
    'vt 0 0',
    'vn 0 0 1',
    'g body',
    ...faces.map((face, i) => {
      const corner = (vertex: number) =>
        i % 3 === 0 ? `${vertex + 1}/1/1` : i % 3 === 1 ? `${vertex + 1}//1` : `${vertex - vertices.length}`;
      return `f ${face.map(corner).join(' ')}`;
    }),
  ];
  return bytes(`${lines.join('\n')}\n`);
}

export type PlyForm = 'ascii' | 'binary_little_endian' | 'binary_big_endian';

/** Doubles, with a colour beside each, an element that nobody knows before them, and a flag behind each face. */
export function plyFile({ vertices, faces }: Shape, form: PlyForm, end = '\n'): Uint8Array {
  const head = [
    'ply',
    `format ${form} 1.0`,
    'comment made up',
    'element camera 1',
    'property float range',
    `element vertex ${vertices.length}`,
    'property uchar red',
    'property double x',
    'property double y',
    'property double z',
    'property float quality',
    ...(faces.length === 0
      ? []
      : [`element face ${faces.length}`, 'property list uchar int vertex_indices', 'property short flag']),
    'end_header',
    '',
  ].join(end);
  if (form === 'ascii') {
    const rows = [
      '12.5',
      ...vertices.map(([x, y, z]) => `200 ${x} ${y} ${z} 0.75`),
      ...faces.map((face) => `3 ${face.join(' ')} -7`),
    ];
    return bytes(`${head}${rows.join(end)}${end}`);
  }
  const little = form === 'binary_little_endian';
  const view = new DataView(new ArrayBuffer(4 + 29 * vertices.length + 15 * faces.length));
  view.setFloat32(0, 12.5, little);
  vertices.forEach((vertex, i) => {
    const at = 4 + 29 * i;
    view.setUint8(at, 200);
    vertex.forEach((part, axis) => view.setFloat64(at + 1 + 8 * axis, part, little));
    view.setFloat32(at + 25, 0.75, little);
  });
  faces.forEach((face, i) => {
    const at = 4 + 29 * vertices.length + 15 * i;
    view.setUint8(at, 3);
    face.forEach((vertex, k) => view.setInt32(at + 1 + 4 * k, vertex, little));
    view.setInt16(at + 13, -7, little);
  });
  return joined(bytes(head), new Uint8Array(view.buffer));
}

export function textStl({ vertices, faces }: Shape): Uint8Array {
  const facets = faces.map((face) =>
    [
      'facet normal 0 0 1',
      '  outer loop',
      ...face.map((vertex) => `    vertex ${vertices[vertex]!.map((part) => part.toExponential()).join(' ')}`),
      '  endloop',
      'endfacet',
    ].join('\r\n'),
  );
  return bytes(['solid made up', ...facets, 'endsolid made up', ''].join('\r\n'));
}

/** `claimed`: what its head says, where that is a lie. */
export function binaryStl({ vertices, faces }: Shape, claimed = faces.length): Uint8Array {
  const view = new DataView(new ArrayBuffer(84 + 50 * faces.length));
  bytes('solid, though it is none').forEach((byte, i) => view.setUint8(i, byte));
  view.setUint32(80, claimed, true);
  faces.forEach((face, i) =>
    face.forEach((vertex, k) =>
      vertices[vertex]!.forEach((part, axis) => view.setFloat32(84 + 50 * i + 12 * (k + 1) + 4 * axis, part, true)),
    ),
  );
  return new Uint8Array(view.buffer);
}

export interface Stand {
  readonly translation?: Triple;
  readonly rotation?: [number, number, number, number];
  readonly scale?: Triple;
}

/** By the library that the program writes its own GLB with; two nodes, the shape below both. */
export async function glbFile({ vertices, faces }: Shape, outer: Stand = {}, inner: Stand = {}): Promise<Uint8Array> {
  const document = new Document();
  const buffer = document.createBuffer();
  const positions = document
    .createAccessor()
    .setType('VEC3')
    .setArray(Float32Array.from(vertices.flat()))
    .setBuffer(buffer);
  const primitive = document.createPrimitive().setAttribute('POSITION', positions);
  if (faces.length === 0) primitive.setMode(0);
  else {
    const indices = vertices.length < 65536 ? Uint16Array.from(faces.flat()) : Uint32Array.from(faces.flat());
    primitive.setIndices(document.createAccessor().setType('SCALAR').setArray(indices).setBuffer(buffer));
  }
  const put = (name: string, { translation = [0, 0, 0], rotation = [0, 0, 0, 1], scale = [1, 1, 1] }: Stand) =>
    document.createNode(name).setTranslation(translation).setRotation(rotation).setScale(scale);
  const below = put('inner', inner).setMesh(document.createMesh().addPrimitive(primitive));
  document.createScene().addChild(put('outer', outer).addChild(below));
  return new WebIO().writeBinary(document);
}

/** A GLB of any JSON and any data, as wrong as one likes. */
export function rawGlb(json: unknown, data: Uint8Array = new Uint8Array()): Uint8Array {
  const text = typeof json === 'string' ? json : JSON.stringify(json);
  const padded = bytes(text.padEnd(Math.ceil(text.length / 4) * 4));
  const head = new DataView(new ArrayBuffer(20));
  const total = 20 + padded.length + 8 + data.length;
  [0x46546c67, 2, total, padded.length, 0x4e4f534a].forEach((word, i) => head.setUint32(4 * i, word, true));
  const chunk = new DataView(new ArrayBuffer(8));
  chunk.setUint32(0, data.length, true);
  chunk.setUint32(4, 0x004e4942, true);
  return joined(new Uint8Array(head.buffer), padded, new Uint8Array(chunk.buffer), data);
}
