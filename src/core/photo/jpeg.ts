/**
 * A JPEG as it is kept and printed (ITU-T T.81): its size read off its markers, and its bytes without what a camera notes beside the picture: place, day, camera, thumbnail.
 * What is in the picture itself is not decoded here. A file is nobody's friend: every length is checked before it is gone by.
 */

/** Pixels either way of a picture that is kept. */
export const LONGEST_SIDE = 1600;
/** Bytes of one that is kept: a picture of that size that is hardly packed at all. */
export const GREATEST_PHOTO = 8 * 1024 * 1024;

export type Jpeg =
  | { readonly ok: true; readonly width: number; readonly height: number; readonly bytes: Uint8Array }
  /** A sentence. */
  | { readonly ok: false; readonly why: string };

const refused = (why: string): Jpeg => ({ ok: false, why });

const MARK = 0xff;
const BEGINS = 0xd8;
const ENDS = 0xd9;
const SCAN = 0xda;
/** Baseline, extended and progressive, packed by Huffman: what a PDF may hold. */
const FRAMES = [0xc0, 0xc1, 0xc2];
/** Others of the frame kinds: lossless, in steps of size, arithmetic; not the tables C4, C8 and CC. */
const OTHER_FRAMES = [0xc3, 0xc5, 0xc6, 0xc7, 0xc9, 0xca, 0xcb, 0xcd, 0xce, 0xcf];
/** Application notes 1 to 15 and comments; note 0 is the size of a pixel, note 14 how colours are told. */
const isNote = (marker: number): boolean => (marker > 0xe0 && marker <= 0xef && marker !== 0xee) || marker === 0xfe;

/** The picture's size and its bytes without notes; or why it is not taken. */
export function readJpeg(bytes: Uint8Array): Jpeg {
  if (bytes.length > GREATEST_PHOTO) return refused('more than 8 MB, no picture that is kept here.');
  if (bytes[0] !== MARK || bytes[1] !== BEGINS) return refused('no JPEG.');
  const kept: [number, number][] = [[0, 2]];
  let size: { readonly width: number; readonly height: number } | null = null;
  let at = 2;
  let scanned = false;
  while (at + 2 <= bytes.length) {
    if (bytes[at] !== MARK) return refused('broken: a part of it does not begin where it should.');
    const marker = bytes[at + 1]!;
    // Any number of these may stand before a marker.
    if (marker === MARK) {
      at += 1;
      continue;
    }
    // What a camera puts behind the picture, another one or more notes, is none of it.
    if (marker === ENDS && scanned && size !== null) {
      return { ok: true, ...size, bytes: joined(bytes, [...kept, [at, at + 2]]) };
    }
    if (at + 4 > bytes.length) break;
    const length = bytes[at + 2]! * 256 + bytes[at + 3]!;
    const end = at + 2 + length;
    if (length < 2 || end > bytes.length) return refused('broken: a part of it is longer than the file.');
    if (OTHER_FRAMES.includes(marker)) return refused('packed in a way that cannot be printed.');
    if (FRAMES.includes(marker)) {
      const frame = readFrame(bytes, at, length);
      if (typeof frame === 'string') return refused(frame);
      if (size !== null) return refused('broken: it says twice how large it is.');
      size = frame;
    }
    if (marker === SCAN) {
      if (size === null) return refused('broken: it does not say how large it is.');
      scanned = true;
      const next = scanEnd(bytes, end);
      kept.push([at, next]);
      at = next;
      continue;
    }
    if (!isNote(marker)) kept.push([at, end]);
    at = end;
  }
  return refused(scanned ? 'broken off: its end is not there.' : 'broken off: no picture in it.');
}

/** Where the next marker stands behind a scan's packed data, in which FF is followed by 0 or by a mark to start again from; the file's end where there is none. */
function scanEnd(bytes: Uint8Array, from: number): number {
  for (let at = from; at + 2 <= bytes.length; at++) {
    const next = bytes[at + 1]!;
    if (bytes[at] === MARK && next !== 0 && next !== MARK && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  return bytes.length;
}

/** The size that a frame's head says, or why it cannot be. */
function readFrame(
  bytes: Uint8Array,
  at: number,
  length: number,
): { readonly width: number; readonly height: number } | string {
  if (length < 8) return 'broken: its head is too short.';
  const [bits, height, width, colours] = [
    bytes[at + 4]!,
    bytes[at + 5]! * 256 + bytes[at + 6]!,
    bytes[at + 7]! * 256 + bytes[at + 8]!,
    bytes[at + 9]!,
  ];
  if (bits !== 8 || (colours !== 1 && colours !== 3)) return 'in colours that cannot be printed.';
  if (width === 0 || height === 0) return 'broken: it has no size.';
  if (Math.max(width, height) > LONGEST_SIDE)
    return `${width} by ${height} pixels: more than ${LONGEST_SIDE} are not kept.`;
  return { width, height };
}

function joined(bytes: Uint8Array, stretches: readonly (readonly [number, number])[]): Uint8Array {
  const whole = new Uint8Array(stretches.reduce((sum, [from, to]) => sum + to - from, 0));
  let at = 0;
  for (const [from, to] of stretches) {
    whole.set(bytes.subarray(from, to), at);
    at += to - from;
  }
  return whole;
}
