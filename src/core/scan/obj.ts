/**
 * OBJ: Wavefront, Advanced Visualizer Manual, appendix B1, Object Files (1995). Read are v, f and p; colours, textures, normals, groups and
 * curves are passed over, and no file that it names is opened.
 */
import { fault, quoted, type Fault } from '../job/fault.ts';
import { gather, grouped, type Gather } from './gather.ts';
import { textOf, type Text } from './text.ts';
import type { Reading, Thinning } from './types.ts';

/** Lines from one report to the next. */
const STRIDE = 16_384;

/** A face with more than three corners is taken as triangles about its first one. A file without faces is a cloud. */
export function* readObj(bytes: Uint8Array, thinning: Thinning): Reading {
  const text = textOf(bytes);
  const into = gather(thinning);
  const face = faceReader(text, into);
  for (let lines = 0; ; lines++) {
    if (lines % STRIDE === 0) yield text.at() / bytes.length;
    const trouble = text.passes('v') ? readVertex(text, into) : text.passes('f') ? face.read() : null;
    if (trouble !== null) return { ok: false, fault: trouble };
    if (!text.nextLine()) break;
  }
  const ahead = face.ahead();
  return ahead === null ? into.done() : { ok: false, fault: ahead };
}

function readVertex(text: Text, into: Gather): Fault | null {
  const line = text.line();
  const wrong = into.vertex(text.number(), text.number(), text.number());
  return wrong === null ? null : fault(`line ${line}`, wrong);
}

function faceReader(text: Text, into: Gather) {
  /** The highest vertex that a face has named, and where. */
  let farthest = { vertex: -1, line: 0 };

  function read(): Fault | null {
    const line = text.line();
    let [first, before, corners] = [0, 0, 0];
    while (!text.atLineEnd()) {
      if (text.passes('\\') && text.nextLine()) continue; // the line goes on in the next one
      const n = text.whole();
      if (Number.isNaN(n)) return fault(`line ${line}`, `${quoted(text.word() ?? '')} is no corner of a face`);
      const vertex = n > 0 ? n - 1 : into.vertices() + n;
      if (n === 0 || vertex < 0) return fault(`line ${line}`, `no vertex ${n}`);
      if (vertex > farthest.vertex) farthest = { vertex, line };
      corners += 1;
      if (corners === 1) first = vertex;
      else if (corners > 2) into.triangle(first, before, vertex);
      before = vertex;
    }
    return corners > 2 ? null : fault(`line ${line}`, `a face of ${corners} corners`);
  }

  return {
    read,
    /** A face may name a vertex that comes after it; one that never came is a fault. */
    ahead(): Fault | null {
      if (farthest.vertex < into.vertices()) return null;
      const there = grouped(into.vertices());
      return fault(`line ${farthest.line}`, `no vertex ${grouped(farthest.vertex + 1)}: there are ${there}`);
    },
  };
}
