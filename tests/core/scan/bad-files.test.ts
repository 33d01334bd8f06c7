/** Files that are wrong in every way that one meets, or that somebody makes up: one line says what is wrong and where, and nothing throws. */
import { describe, expect, it } from 'vitest';
import { MOST_SCANNED } from '../../../src/core/scan/types.ts';
import { drawn } from '../../draws.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';
import { binaryStl, glbFile, objFile, plyFile, rawGlb, textStl } from './files.ts';
import { faultIn, read } from './reading.ts';
import { ball, soupOf, type Shape } from './shapes.ts';

const SMALL = ball(500, [0, 0, 600], 6, 4);
const text = (...lines: readonly string[]): Uint8Array => new TextEncoder().encode(lines.join('\n'));

const plyHead = (vertices: number, faces: number, format = 'ascii') => [
  'ply',
  `format ${format} 1.0`,
  `element vertex ${vertices}`,
  'property float x',
  'property float y',
  'property float z',
  `element face ${faces}`,
  'property list uchar int vertex_indices',
  'end_header',
];

const FLOATS = new Uint8Array(Float32Array.from([0, 0, 0, 1, 0, 0, 0, 1, 0]).buffer);

/** One triangle, with pieces of it changed. */
const glb = (change: object, data: Uint8Array = FLOATS): Uint8Array =>
  rawGlb(
    {
      asset: { version: '2.0' },
      scenes: [{ nodes: [0] }],
      nodes: [{ mesh: 0 }],
      meshes: [{ primitives: [{ attributes: { POSITION: 0 } }] }],
      accessors: [{ bufferView: 0, componentType: 5126, count: 3, type: 'VEC3' }],
      bufferViews: [{ buffer: 0, byteLength: 36 }],
      buffers: [{ byteLength: 36 }],
      ...change,
    },
    data,
  );

const withBytes = (file: Uint8Array, at: number, ...bytes: readonly number[]): Uint8Array => {
  const copy = file.slice();
  copy.set(bytes, at);
  return copy;
};

const BAD: readonly (readonly [string, string, Uint8Array, RegExp])[] = [
  ['nothing', 'a.ply', new Uint8Array(), /^it is empty$/u],
  ['something else', 'a.docx', text('hello'), /neither OBJ, PLY, STL nor GLB/u],
  [
    'a picture called PLY',
    'a.ply',
    Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 1, 2, 3),
    /^byte 0: it does not begin as a PLY/u,
  ],
  ['a glTF of several files', 'a.gltf', text('{}'), /save it as one GLB/u],

  ['an OBJ of nothing', 'a.obj', text('# made up', 'g body'), /no triangles and no points/u],
  ['OBJ, a word for a number', 'a.obj', text('v 0 0 0', 'v 1 two 0'), /^line 2: a coordinate that is no number$/u],
  ['OBJ, nan', 'a.obj', text('v nan 0 0'), /^line 1: a coordinate that is no number$/u],
  ['OBJ, beyond all numbers', 'a.obj', text('v 1e999 0 0'), /^line 1: a coordinate that is no number$/u],
  ['OBJ, a place on earth', 'a.obj', text('v 4512345.5 0 0'), /^line 1: .*farthest that is taken/u],
  ['OBJ, two numbers', 'a.obj', text('v 0 0'), /^line 1: a coordinate/u],
  [
    'OBJ, a vertex that never comes',
    'a.obj',
    text('v 0 0 0', 'v 1 0 0', 'f 1 2 9'),
    /^line 3: no vertex 9: there are 2$/u,
  ],
  ['OBJ, before the first', 'a.obj', text('v 0 0 0', 'f -1 -2 -3'), /^line 2: no vertex -2$/u],
  ['OBJ, vertex 0', 'a.obj', text('v 0 0 0', 'f 0 1 1'), /^line 2: no vertex 0$/u],
  ['OBJ, two corners', 'a.obj', text('v 0 0 0', 'v 1 0 0', 'f 1 2'), /^line 3: a face of 2 corners$/u],
  ['OBJ, no corner', 'a.obj', text('v 0 0 0', 'f 1 x 1'), /^line 2: "x" is no corner/u],

  ['PLY, a head without end', 'a.ply', text('ply', 'format ascii 1.0'), /^line 2: it ends before its end_header$/u],
  ['PLY, no form', 'a.ply', text(...plyHead(0, 0).toSpliced(1, 1), ''), /nothing says whether/u],
  ['PLY, an unknown form', 'a.ply', text('ply', 'format morse 1.0', 'end_header', ''), /^line 2: no format "morse"$/u],
  [
    'PLY, an unknown type',
    'a.ply',
    text('ply', 'format ascii 1.0', 'element vertex 1', 'property real x', 'end_header', ''),
    /^line 4: no type "real"$/u,
  ],
  [
    'PLY without places',
    'a.ply',
    text('ply', 'format ascii 1.0', 'element vertex 1', 'property float x', 'end_header', '1'),
    /no x, y and z/u,
  ],
  [
    'PLY without a number',
    'a.ply',
    text('ply', 'format ascii 1.0', 'element vertex many', 'end_header', ''),
    /^line 3: "vertex" without a number/u,
  ],
  [
    'PLY that claims 4 GB',
    'a.ply',
    text(...plyHead(358_000_000, 0, 'binary_little_endian'), ''),
    /claims 358 000 000 of vertex, which take 4 296 000 000 bytes/u,
  ],
  [
    'PLY as text that claims as much',
    'a.ply',
    text(...plyHead(358_000_000, 0), '0 0 0'),
    /claims 358 000 000 of vertex/u,
  ],
  [
    'PLY that claims more than there are numbers',
    'a.ply',
    text(...plyHead(1e300, 0), '0 0 0'),
    /^line 3: "vertex" without a number/u,
  ],
  [
    'PLY, a list as long as the world',
    'a.ply',
    text(
      'ply',
      'format ascii 1.0',
      'element vertex 1',
      'property float x',
      'property float y',
      'property float z',
      'property list uint int marks',
      'end_header',
      '0 0 0 4000000000 1 2 3',
    ),
    /a list that ends too soon/u,
  ],
  [
    'PLY, a vertex that is not there',
    'a.ply',
    text(...plyHead(3, 1), '0 0 0', '1 0 0', '0 1 0', '3 0 1 7'),
    /^line 13: no vertex 7: they go from 0, and there are 3$/u,
  ],
  [
    'PLY, a vertex below none',
    'a.ply',
    text(...plyHead(3, 1), '0 0 0', '1 0 0', '0 1 0', '3 0 1 -1'),
    /^line 13: a corner that is no vertex$/u,
  ],
  [
    'PLY, cut short',
    'a.ply',
    text(...plyHead(3, 1), '0 0 0', '1 0 0', '0 1 0 9 9 9 9'),
    /it ends before all is there/u,
  ],
  ['PLY, nan', 'a.ply', text(...plyHead(2, 0), '0 0 0', '0 nan 0'), /^line 11: a coordinate that is no number$/u],
  [
    'PLY, strips',
    'a.ply',
    text(
      ...plyHead(1, 0).toSpliced(8, 0, 'element tristrips 1', 'property list int int vertex_indices'),
      '0 0 0',
      '3 0 0 0',
    ),
    /strips of triangles/u,
  ],
  ['PLY of nothing', 'a.ply', text(...plyHead(0, 0), ''), /no triangles and no points/u],

  [
    'STL that claims 4 GB',
    'a.stl',
    binaryStl(SMALL, 80_000_000),
    /^byte 80: it claims 80 000 000 triangles, which take 4 000 000 000 bytes; 1 800 follow/u,
  ],
  [
    'STL that claims too few',
    'a.stl',
    binaryStl(SMALL, 3).map((byte, i) => (i < 80 ? 0 : byte)),
    /^byte 80: it claims 3 triangles, and more bytes follow/u,
  ],
  ['STL of half a head', 'a.stl', new Uint8Array(40), /^it ends after 40 bytes/u],
  ['STL of no triangles', 'a.stl', new Uint8Array(84), /no triangles and no points/u],
  [
    'STL, a place that is none',
    'a.stl',
    withBytes(binaryStl(SMALL), 84 + 50 + 12, 0, 0, 0xc0, 0x7f),
    /^triangle 2, byte 146: a coordinate that is no number$/u,
  ],
  ['STL as text, cut short', 'a.stl', textStl(SMALL).subarray(0, 300), /it ends|where .* should stand|no number/u],
  [
    'STL as text without its end',
    'a.stl',
    text(
      'solid a',
      'facet normal 0 0 1',
      'outer loop',
      'vertex 0 0 0',
      'vertex 1 0 0',
      'vertex 0 1 0',
      'endloop',
      'endfacet',
    ),
    /without its endsolid$/u,
  ],
  [
    'STL as text of four corners',
    'a.stl',
    text('solid a', 'facet normal 0 0 1', 'outer loop', 'vertex 0 0 0', 'vertex 1 0 0', 'vertex 0 1 0', 'vertex 1 1 0'),
    /^line 7: "vertex" where endloop should stand$/u,
  ],
  ['STL as text, nothing but its name', 'a.stl', text('solid a', 'endsolid a'), /no triangles and no points/u],

  ['GLB, cut in its head', 'a.glb', glb({}).subarray(0, 15), /in the middle of its head/u],
  ['GLB of version 1', 'a.glb', withBytes(glb({}), 4, 1), /^byte 4: of version 1/u],
  [
    'GLB that claims 4 GB',
    'a.glb',
    withBytes(glb({}), 8, 255, 255, 255, 255),
    /^byte 8: it claims 4 294 967 295 bytes/u,
  ],
  [
    'GLB whose JSON claims as much',
    'a.glb',
    withBytes(glb({}), 12, 255, 255, 255, 255),
    /^byte 12: it claims 4 294 967 295 bytes/u,
  ],
  ['GLB of no JSON', 'a.glb', rawGlb('{ "asset": '), /^its JSON: line 1/u],
  ['GLB nested without end', 'a.glb', rawGlb('['.repeat(50_000)), /nested more than/u],
  ['GLB that reaches for what every object has', 'a.glb', rawGlb('{"__proto__": {"a": 1}}'), /not allowed as a name/u],
  [
    'GLB with data elsewhere',
    'a.glb',
    glb({ buffers: [{ byteLength: 36, uri: 'https://example.org/a.bin' }] }),
    /^buffers\[0\]: its data stand in another file/u,
  ],
  [
    'GLB with data in its JSON',
    'a.glb',
    glb({ buffers: [{ byteLength: 36, uri: 'data:;base64,AAAA' }] }),
    /^buffers\[0\]: .*not fetched/u,
  ],
  [
    'GLB that is packed',
    'a.glb',
    glb({ extensionsRequired: ['KHR_draco_mesh_compression'] }),
    /packed with "KHR_draco_mesh_compression"/u,
  ],
  [
    'GLB with more places than data',
    'a.glb',
    glb({ accessors: [{ bufferView: 0, componentType: 5126, count: 400_000_000, type: 'VEC3' }] }),
    /accessors\[0\]: does not lie within the 36 bytes/u,
  ],
  [
    'GLB, a piece beyond the data',
    'a.glb',
    glb({ bufferViews: [{ buffer: 0, byteOffset: 24, byteLength: 36 }] }),
    /does not lie within/u,
  ],
  [
    'GLB, less than nothing',
    'a.glb',
    glb({ accessors: [{ bufferView: 0, componentType: 5126, count: -3, type: 'VEC3' }] }),
    /does not lie within/u,
  ],
  [
    'GLB, no such piece',
    'a.glb',
    glb({ accessors: [{ bufferView: 8, componentType: 5126, count: 3, type: 'VEC3' }] }),
    /no bufferView/u,
  ],
  ['GLB, no such mesh', 'a.glb', glb({ nodes: [{ mesh: 3 }] }), /^nodes\[0\]: no such mesh$/u],
  [
    'GLB, a node in itself',
    'a.glb',
    glb({ nodes: [{ mesh: 0, children: [0] }] }),
    /^nodes\[0\]: stands in the scene twice$/u,
  ],
  ['GLB, a node that is none', 'a.glb', glb({ scenes: [{ nodes: ['first'] }] }), /there is none/u],
  [
    'GLB, a turn of three numbers',
    'a.glb',
    glb({ nodes: [{ mesh: 0, rotation: [0, 0, 1] }] }),
    /^nodes\[0\]: a place that is no number$/u,
  ],
  ['GLB of nothing', 'a.glb', glb({ nodes: [{}] }), /no triangles and no points/u],
  [
    'GLB, a place that is none',
    'a.glb',
    glb({}, withBytes(FLOATS, 12, 0, 0, 0xc0, 0x7f)),
    /^meshes\[0\].primitives\[0\], vertex 1: a coordinate/u,
  ],
  [
    'GLB, a vertex that is not there',
    'a.glb',
    glb(
      {
        meshes: [{ primitives: [{ attributes: { POSITION: 0 }, indices: 1 }] }],
        accessors: [
          { bufferView: 0, componentType: 5126, count: 3, type: 'VEC3' },
          { bufferView: 1, componentType: 5121, count: 3, type: 'SCALAR' },
        ],
        bufferViews: [
          { buffer: 0, byteLength: 36 },
          { buffer: 0, byteOffset: 36, byteLength: 3 },
        ],
      },
      Uint8Array.from([...FLOATS, 0, 1, 77, 0]),
    ),
    /triangle 0: no vertex 77: they go from 0, and there are 3$/u,
  ],
];

describe('a bad file', () => {
  it.each(BAD)('%s', (_, name, bytes, says) => {
    const line = faultIn(name, bytes);
    expect(line).toMatch(says);
    expect(line).not.toMatch(/\n|undefined|NaN|\[object/u);
  });

  it('of too many triangles says how many', () => {
    const file = new Uint8Array(84 + 50 * (MOST_SCANNED + 1));
    new DataView(file.buffer).setUint32(80, MOST_SCANNED + 1, true);
    expect(faultIn('a.stl', file)).toMatch(/^it holds 500 001 triangles, and 500 000 are the most/u);
  });

  it('one mesh that stands in the scene ten thousand times is counted, not read', () => {
    const faces = Array.from({ length: 900 }, () => [0, 1, 2]).flat();
    const data = Uint8Array.from([...FLOATS, ...faces]);
    const nodes = Array.from({ length: 10_000 }, () => ({ mesh: 0 }));
    const file = glb(
      {
        scenes: [{ nodes: nodes.map((_, i) => i) }],
        nodes,
        meshes: [{ primitives: [{ attributes: { POSITION: 0 }, indices: 1 }] }],
        accessors: [
          { bufferView: 0, componentType: 5126, count: 3, type: 'VEC3' },
          { bufferView: 1, componentType: 5121, count: 2700, type: 'SCALAR' },
        ],
        bufferViews: [
          { buffer: 0, byteLength: 36 },
          { buffer: 0, byteOffset: 36, byteLength: 2700 },
        ],
      },
      data,
    );
    expect(faultIn('a.glb', file)).toMatch(/^it holds 9 000 000 triangles/u);
  });
});

describe('a file that is cut anywhere, or has any byte changed', () => {
  const files = async (): Promise<readonly (readonly [string, Uint8Array])[]> => [
    ['a.obj', objFile(SMALL)],
    ['a.ply', plyFile(SMALL, 'ascii')],
    ['a.ply', plyFile(SMALL, 'binary_little_endian')],
    ['a.ply', plyFile(SMALL, 'binary_big_endian')],
    ['a.stl', textStl(SMALL)],
    ['a.stl', binaryStl(SMALL)],
    ['a.glb', await glbFile(SMALL)],
  ];
  /** What is read of a file that was cut: a form that says its size is then refused, text without one may hold less, but nothing wrong. */
  const isRight = (name: string, bytes: Uint8Array, whole: readonly number[]): boolean => {
    const came = read(name, bytes);
    if (!came.ok) return came.fault.message.length > 0;
    const soup = soupOf(came.data);
    return came.data.kind === 'points'
      ? name === 'a.obj'
      : soup.every((part, i) => part === whole[i] || i >= soup.length - 9);
  };

  it('is refused, or what stands in it is read', async () => {
    for (const [name, file] of await files()) {
      const came = read(name, file);
      const whole = came.ok ? soupOf(came.data) : [];
      const draw = drawFrom(31);
      for (let i = 0; i < drawn(60, 3000); i++) {
        const cut = file.subarray(0, Math.floor(draw.between(0, file.length)));
        expect(isRight(name, cut, whole), `${name} cut at ${cut.length}`).toBe(true);
        const changed = file.slice();
        for (let k = 0; k < 1 + (i % 4); k++)
          changed[Math.floor(draw.between(0, file.length))] = Math.floor(draw.between(0, 256));
        const from = read(name, changed);
        if (from.ok) expect(soupOf(from.data).every(Number.isFinite)).toBe(true);
        else expect(from.fault.message).not.toBe('');
      }
    }
  });

  it('of nothing but noise is refused, whatever it is called and begins with', () => {
    const draw = drawFrom(77);
    const starts = ['', 'glTF', 'ply\n', 'ply\nformat ascii 1.0\n', 'solid a\n', 'v 1 2 3\nf '];
    for (let i = 0; i < drawn(300, 20_000); i++) {
      const noise = Uint8Array.from({ length: Math.floor(draw.between(0, 400)) }, () =>
        Math.floor(draw.between(0, 256)),
      );
      const bytes = Uint8Array.from([...new TextEncoder().encode(draw.oneOf(starts)), ...noise]);
      const came = read(draw.oneOf(['a.obj', 'a.ply', 'a.stl', 'a.glb', 'a']), bytes);
      if (!came.ok) expect(came.fault.message).not.toBe('');
      else expect(soupOf(came.data).every(Number.isFinite)).toBe(true);
    }
  });

  it('forms that say their size are never read short', () => {
    const shapes: readonly Shape[] = [SMALL, { vertices: SMALL.vertices, faces: [] }];
    for (const shape of shapes) {
      const file = plyFile(shape, 'binary_little_endian');
      for (let cut = 0; cut < file.length; cut += 7) expect(read('a.ply', file.subarray(0, cut)).ok).toBe(false);
    }
    const stl = binaryStl(SMALL);
    for (let cut = 0; cut < stl.length; cut += 11) expect(read('a.stl', stl.subarray(0, cut)).ok).toBe(false);
  });
});
