/**
 * STL, as text and as bytes: 3D Systems, StereoLithography Interface Specification (1989). As bytes: 80 of anything, the number of triangles,
 * and 50 bytes for each, least byte first: normal, three corners, two bytes more. Normals are not used: the corners' order says the same.
 */
import { fault, quoted, type Fault } from '../job/fault.ts';
import { gather, grouped, type Gather } from './gather.ts';
import { textOf, type Text } from './text.ts';
import { MOST_SCANNED, type Reading } from './types.ts';

const [HEAD, TRIANGLE] = [84, 50];

/** Triangles, or lines, from one report to the next. */
const STRIDE = 16_384;

const WHOLE = { every: 1 } as const;

/** Whether it is that as bytes: its size is what its number of triangles says, or its start is no text, whatever word it begins with. */
export function isBinaryStl(bytes: Uint8Array): boolean {
  if (bytes.length >= HEAD && bytes.length === HEAD + TRIANGLE * claimedBy(bytes)) return true;
  const start = bytes.subarray(0, 2 * HEAD);
  return start.includes(0) || !/^\s*solid\b/u.test(String.fromCharCode(...start));
}

const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
const claimedBy = (bytes: Uint8Array): number => viewOf(bytes).getUint32(80, true);

/** Of a file that is bytes. */
export function* readBinaryStl(bytes: Uint8Array): Reading {
  if (bytes.length < HEAD)
    return no(fault('', `it ends after ${bytes.length} bytes, and its head alone takes ${HEAD}`));
  const claimed = claimedBy(bytes);
  const there = bytes.length - HEAD;
  if (claimed * TRIANGLE > there) {
    return no(
      fault(
        'byte 80',
        `it claims ${grouped(claimed)} triangles, which take ${grouped(claimed * TRIANGLE)} bytes; ${grouped(there)} follow`,
      ),
    );
  }
  if (there - claimed * TRIANGLE >= TRIANGLE) {
    return no(fault('byte 80', `it claims ${grouped(claimed)} triangles, and more bytes follow than these take`));
  }
  const into = gather(WHOLE);
  if (claimed > MOST_SCANNED) {
    into.countOnly(claimed);
    return into.done();
  }
  const view = viewOf(bytes);
  for (let i = 0; i < claimed; i++) {
    if (i % STRIDE === 0) yield i / claimed;
    for (let corner = 0; corner < 3; corner++) {
      const at = HEAD + TRIANGLE * i + 12 * (corner + 1);
      const trouble = into.vertex(
        view.getFloat32(at, true),
        view.getFloat32(at + 4, true),
        view.getFloat32(at + 8, true),
      );
      if (trouble !== null) return no(fault(`triangle ${grouped(i + 1)}, byte ${at}`, trouble));
    }
    into.triangle(3 * i, 3 * i + 1, 3 * i + 2);
  }
  return into.done();
}

/** Of a file that is text. Where its lines break does not matter. */
export function* readTextStl(bytes: Uint8Array): Reading {
  const text = textOf(bytes);
  const into = gather(WHOLE);
  let isOpen = false;
  for (let lines = 0; ; lines++) {
    if (lines % STRIDE === 0) yield text.at() / bytes.length;
    if (!toNextWord(text)) break;
    if (text.passes('facet')) {
      const trouble = readFacet(text, into);
      if (trouble !== null) return no(trouble);
      continue;
    }
    const begins = text.passes('solid');
    if (!begins && !text.passes('endsolid')) {
      return no(fault(`line ${text.line()}`, `${saidOf(text.word())} where a facet or the end should stand`));
    }
    isOpen = begins;
    if (!text.nextLine()) break; // past its name
  }
  if (isOpen) {
    return no(
      fault(`line ${text.line()}`, `it ends after ${grouped(into.triangles())} triangles, and without its endsolid`),
    );
  }
  return into.done();
}

const no = (why: Fault) => ({ ok: false, fault: why }) as const;

/** False at the end of the file. */
function toNextWord(text: Text): boolean {
  while (text.atLineEnd()) if (!text.nextLine()) return false;
  return true;
}

const BEFORE = ['outer', 'loop'] as const;
const AFTER = ['endloop', 'endfacet'] as const;

function readFacet(text: Text, into: Gather): Fault | null {
  const wants = (word: string): Fault | null => {
    if (toNextWord(text) && text.passes(word)) return null;
    return fault(`line ${text.line()}`, `${saidOf(text.word())} where ${word} should stand`);
  };
  const normal = wants('normal');
  if (normal !== null) return normal;
  for (let i = 0; i < 3; i++) if (toNextWord(text)) text.number(); // some programs write nan for the normal of a triangle without area
  for (const word of BEFORE) {
    const trouble = wants(word);
    if (trouble !== null) return trouble;
  }
  const first = into.vertices();
  for (let corner = 0; corner < 3; corner++) {
    const trouble = wants('vertex');
    if (trouble !== null) return trouble;
    const wrong = into.vertex(nextNumber(text), nextNumber(text), nextNumber(text));
    if (wrong !== null) return fault(`line ${text.line()}`, wrong);
  }
  for (const word of AFTER) {
    const trouble = wants(word);
    if (trouble !== null) return trouble;
  }
  into.triangle(first, first + 1, first + 2);
  return null;
}

const nextNumber = (text: Text): number => (toNextWord(text) ? text.number() : NaN);

const saidOf = (word: string | null): string => (word === null ? 'the end of the file' : quoted(word));
