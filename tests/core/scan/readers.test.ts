/** The readers against files written by the specifications, and against three's own loaders: corner for corner the same triangles. */
import { describe, expect, it } from 'vitest';
import type { BufferGeometry, Mesh } from 'three';
import { OBJLoader } from 'three/examples/jsm/loaders/OBJLoader.js';
import { PLYLoader } from 'three/examples/jsm/loaders/PLYLoader.js';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { drawn } from '../../draws.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';
import { countOf } from '../../../src/core/scan/types.ts';
import { binaryStl, glbFile, objFile, plyFile, rawGlb, textStl, type PlyForm } from './files.ts';
import { dataIn, read } from './reading.ts';
import { asFloats, ball, cloud, soupOf, soupOfShape, type Shape } from './shapes.ts';

const BALL = ball(612.34567891, [100, -40, 900], 17, 9);
const CLOUD: Shape = { vertices: cloud(500, [4000, 1700, 1300], 7), faces: [] };

/** What three makes of it, as corner after corner. */
function soupOfThree(geometry: BufferGeometry): number[] {
  const flat = geometry.index === null ? geometry : geometry.toNonIndexed();
  return Array.from(flat.getAttribute('position').array, Math.fround);
}

const buffer = (bytes: Uint8Array): ArrayBuffer => bytes.slice().buffer;

describe('a mesh comes out as it was written', () => {
  it('OBJ, to the last bit', () => {
    const file = objFile(BALL);
    expect(soupOf(dataIn('a.obj', file))).toEqual(soupOfShape(BALL));
    const three = new OBJLoader().parse(new TextDecoder().decode(file)).children[0] as Mesh;
    expect(soupOfThree(three.geometry)).toEqual(soupOfShape(asFloats(BALL)));
  });

  it.each<PlyForm>(['ascii', 'binary_little_endian', 'binary_big_endian'])('PLY, %s, to the last bit', (form) => {
    const file = plyFile(BALL, form);
    expect(soupOf(dataIn('a.ply', file))).toEqual(soupOfShape(BALL));
    expect(soupOfThree(new PLYLoader().parse(buffer(file)))).toEqual(soupOfShape(asFloats(BALL)));
  });

  it('PLY with lines that end in a return and a new line', () => {
    for (const form of ['ascii', 'binary_little_endian'] as const) {
      expect(soupOf(dataIn('a.ply', plyFile(BALL, form, '\r\n')))).toEqual(soupOfShape(BALL));
    }
  });

  it('STL, as text and as bytes, also where its head says solid', () => {
    const flat = asFloats(BALL);
    expect(soupOf(dataIn('a.stl', textStl(BALL)))).toEqual(soupOfShape(BALL));
    expect(soupOf(dataIn('A.STL', binaryStl(BALL)))).toEqual(soupOfShape(flat));
    for (const file of [textStl(BALL), binaryStl(BALL)]) {
      expect(soupOfThree(new STLLoader().parse(buffer(file)))).toEqual(soupOfShape(flat));
    }
  });

  it('STL corners in one place are one vertex', () => {
    const { positions, triangles } = dataIn('a.stl', binaryStl(BALL));
    expect(positions.length / 3).toBe(BALL.vertices.length);
    expect(triangles.length / 3).toBe(BALL.faces.length);
  });

  it('GLB, where its nodes put it', async () => {
    const file = await glbFile(BALL);
    expect(soupOf(dataIn('a.glb', file))).toEqual(soupOfShape(asFloats(BALL)));
    // A quarter turn about x after a stretch of two, then a shift, below a shift of its own node.
    const half = Math.SQRT1_2;
    const stands = await glbFile(
      BALL,
      { translation: [1000, 0, 0] },
      { translation: [0, 5, 0], rotation: [half, 0, 0, half], scale: [2, 2, 2] },
    );
    const wanted = asFloats(BALL).vertices.map(([x, y, z]) => [1000 + 2 * x, 5 - 2 * z, 2 * y]);
    const { positions } = dataIn('a.glb', stands);
    const got = new Set(
      Array.from({ length: positions.length / 3 }, (_, i) =>
        [...positions.subarray(3 * i, 3 * i + 3)].map((part) => part.toFixed(6)).join(' '),
      ),
    );
    for (const place of wanted) expect(got).toContain(place.map((part) => part.toFixed(6)).join(' '));
  });

  it('GLB strips and fans, and a matrix', () => {
    const places = Float32Array.from([0, 0, 0, 1, 0, 0, 0, 1, 0, 1, 1, 0]);
    const data = new Uint8Array(places.buffer);
    const json = (mode: number) => ({
      asset: { version: '2.0' },
      scene: 0,
      scenes: [{ nodes: [0] }],
      // Column after column: x and y change places, and all is shifted by 10 along x.
      nodes: [{ mesh: 0, matrix: [0, 1, 0, 0, 1, 0, 0, 0, 0, 0, 1, 0, 10, 0, 0, 1] }],
      meshes: [{ primitives: [{ attributes: { POSITION: 0 }, mode }] }],
      accessors: [{ bufferView: 0, componentType: 5126, count: 4, type: 'VEC3' }],
      bufferViews: [{ buffer: 0, byteLength: data.length }],
      buffers: [{ byteLength: data.length }],
    });
    const [o, x, y, xy] = [
      [10, 0, 0],
      [10, 1, 0],
      [11, 0, 0],
      [11, 1, 0],
    ] as const;
    expect(soupOf(dataIn('a.glb', rawGlb(json(5), data)))).toEqual([o, x, y, y, x, xy].flat());
    expect(soupOf(dataIn('a.glb', rawGlb(json(6), data)))).toEqual([o, x, y, o, y, xy].flat());
  });

  it('GLB places in whole numbers, stretched by their node', () => {
    const data = new Uint8Array(24);
    const view = new DataView(data.buffer);
    // Three corners of 16 bits, normalized: the most, none, half, and the least that there is, which counts as the least but one.
    [32767, 0, 0, 0, 16384, 0, -32768, 0, -32767].forEach((value, i) =>
      view.setInt16(8 * Math.floor(i / 3) + 2 * (i % 3), value, true),
    );
    const json = {
      asset: { version: '2.0' },
      extensionsRequired: ['KHR_mesh_quantization'],
      nodes: [{ mesh: 0, scale: [2, 2, 2] }],
      meshes: [{ primitives: [{ attributes: { POSITION: 0 } }] }],
      accessors: [{ bufferView: 0, componentType: 5122, normalized: true, count: 3, type: 'VEC3' }],
      bufferViews: [{ buffer: 0, byteLength: 24, byteStride: 8 }],
      buffers: [{ byteLength: 24 }],
    };
    expect(soupOf(dataIn('a.glb', rawGlb(json, data)))).toEqual([2, 0, 0, 0, (2 * 16384) / 32767, 0, -2, 0, -2]);
  });

  it('faces of more corners as triangles about the first', () => {
    const square = 'v 0 0 0\nv 1 0 0\nv 1 1 0\nv 0 1 0\nf 1 2 3 \\\n4\n';
    const soup = [0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 0, 0, 1, 1, 0, 0, 1, 0];
    expect(soupOf(dataIn('a.obj', new TextEncoder().encode(square)))).toEqual(soup);
    const ply = [
      'ply\nformat ascii 1.0\nelement face 1\nproperty list uchar uint vertex_index\nelement vertex 4',
      'property float z\nproperty float y\nproperty float x\nend_header\n4 0 1 2 3\n\n0 0 0\n0 0 1\n0 1 1\n0 1 0',
    ].join('\n');
    expect(soupOf(dataIn('a.ply', new TextEncoder().encode(ply)))).toEqual(soup);
  });
});

describe('a cloud', () => {
  it('comes out as it was written', async () => {
    for (const [name, file] of [
      ['a.obj', objFile(CLOUD)],
      ['a.ply', plyFile(CLOUD, 'ascii')],
      ['a.ply', plyFile(CLOUD, 'binary_big_endian')],
    ] as const) {
      const data = dataIn(name, file);
      expect(data.kind).toBe('points');
      expect(soupOf(data)).toEqual(soupOfShape(CLOUD));
    }
    expect(soupOf(dataIn('a.glb', await glbFile(CLOUD)))).toEqual(soupOfShape(asFloats(CLOUD)));
  });

  it('that is too large says how large, and can be read every n-th point', () => {
    const many: Shape = { vertices: Array.from({ length: 1_000_001 }, (_, i) => [i % 1000, i % 77, 1]), faces: [] };
    const file = plyFile(many, 'binary_little_endian');
    const refused = read('a.ply', file);
    expect(refused).toMatchObject({
      ok: false,
      points: 1_000_001,
      fault: { message: expect.stringContaining('1 000 001 points') as string },
    });
    expect(refused).toMatchObject({ fault: { message: expect.stringContaining('Every 3rd point') as string } });
    const thinned = dataIn('a.ply', file, 3);
    expect(countOf(thinned)).toBe(333_334);
    expect([...thinned.positions.subarray(3, 6)]).toEqual([...many.vertices[3]!]);
  });
});

describe('numbers in text', () => {
  it('are those that the language reads, however they are written', () => {
    const written = [
      '1',
      '-0.5',
      '+12.25',
      '.5',
      '5.',
      '1e3',
      '-2.5E-2',
      '0.1',
      '123456.789012345',
      '0.30000000000000004',
      '9007199254740993',
      '00012.5',
      '1234567890123456e-10',
    ];
    const obj = written.map((each) => `v ${each} 0 0`).join('\n');
    const { positions } = dataIn(
      'a.obj',
      new TextEncoder().encode(obj.replace('9007199254740993', '900719.9254740993')),
    );
    const wanted = written.map((each) => Number(each.replace('9007199254740993', '900719.9254740993')));
    expect(Array.from({ length: written.length }, (_, i) => positions[3 * i])).toEqual(wanted);
  });

  it('drawn ones too', () => {
    const draw = drawFrom(8);
    const written = Array.from({ length: drawn(2000, 50_000) }, () => {
      const value = draw.between(-1, 1) * 10 ** draw.between(-8, 6);
      const digits = Math.floor(draw.between(0, 20));
      return draw.oneOf([
        String(value),
        value.toFixed(digits),
        value.toExponential(digits),
        value.toPrecision(digits + 1),
      ]);
    });
    const { positions } = dataIn('a.obj', new TextEncoder().encode(written.map((each) => `v ${each} 0 0`).join('\n')));
    expect(Array.from({ length: written.length }, (_, i) => positions[3 * i])).toEqual(
      written.map((each) => Number(each) + 0),
    );
  });
});
