/** Pictures that are taken and those that are not: size, notes of the camera, and files that are broken or made to do harm. */
import { describe, expect, it } from 'vitest';
import { readJpeg } from '../../../src/core/photo/jpeg.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';
import { drawn } from '../../draws.ts';
import { FRAME, smallJpeg, withPart } from './small-jpeg.ts';

const why = (bytes: Uint8Array): string => {
  const read = readJpeg(bytes);
  return read.ok ? 'taken' : read.why;
};

/** The picture with one byte exchanged. */
function withByte(at: number, value: number): Uint8Array {
  const bytes = smallJpeg();
  bytes[at] = value;
  return bytes;
}

describe('a picture', () => {
  it('says its size and comes back as it is', () => {
    expect(readJpeg(smallJpeg())).toEqual({ ok: true, width: 24, height: 18, bytes: smallJpeg() });
  });

  it.each([
    ['where it was taken and by what', 0xe1, 'Exif\0\0 GPS 47.1 N'],
    ['a second note', 0xe2, 'ICC_PROFILE'],
    ['a comment', 0xfe, 'taken by'],
  ])('loses %s', (_, marker, words) => {
    expect(readJpeg(withPart(marker, words))).toEqual({ ok: true, width: 24, height: 18, bytes: smallJpeg() });
  });

  it('loses what stands behind it: a second picture with notes of its own', () => {
    const two = new Uint8Array([...smallJpeg(), ...withPart(0xe1, 'Exif\0\0 GPS 47.1 N')]);
    expect(readJpeg(two)).toEqual({ ok: true, width: 24, height: 18, bytes: smallJpeg() });
  });

  it('keeps the note by which its colours are told', () => {
    const adobe = withPart(0xee, 'Adobe\0d\0\0\0\0\x01');
    expect(readJpeg(adobe)).toMatchObject({ ok: true, bytes: adobe });
  });
});

describe('what is no picture to keep is refused, and why', () => {
  const whole = smallJpeg();
  it.each([
    ['nothing', new Uint8Array(), 'no JPEG.'],
    ['a text', new TextEncoder().encode('<svg onload="x">'), 'no JPEG.'],
    ['one of another kind', new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10]), 'no JPEG.'],
    ['one broken off in its head', whole.subarray(0, FRAME + 3), 'broken off: no picture in it.'],
    ['one broken off in its picture', whole.subarray(0, -9), 'broken off: its end is not there.'],
    ['a part longer than the file', withByte(4, 0xff), 'broken: a part of it is longer than the file.'],
    [
      'a part of no length',
      new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0, 1, 0, 0]),
      'broken: a part of it is longer than the file.',
    ],
    ['a part that begins nowhere', withByte(20, 0), 'broken: a part of it does not begin where it should.'],
    ['one without a size', withByte(FRAME + 6, 0), 'broken: it has no size.'],
    [
      'one that is larger than it may be',
      withByte(FRAME + 5, 0x40),
      '24 by 16402 pixels: more than 1600 are not kept.',
    ],
    ['four colours', withByte(FRAME + 9, 4), 'in colours that cannot be printed.'],
    ['twelve bits', withByte(FRAME + 4, 12), 'in colours that cannot be printed.'],
    ['packed without loss', withByte(FRAME + 1, 0xc3), 'packed in a way that cannot be printed.'],
    ['packed by arithmetic', withByte(FRAME + 1, 0xc9), 'packed in a way that cannot be printed.'],
    ['no head before the picture', withByte(FRAME + 1, 0xec), 'broken: it does not say how large it is.'],
    ['9 MB', new Uint8Array(9 * 1024 * 1024), 'more than 8 MB, no picture that is kept here.'],
  ])('%s', (_, bytes, words) => {
    expect(why(bytes)).toBe(words);
  });

  it('two sizes', () => {
    const frame = whole.subarray(FRAME, FRAME + 19);
    const twice = new Uint8Array([...whole.subarray(0, FRAME), ...frame, ...whole.subarray(FRAME)]);
    expect(why(twice)).toBe('broken: it says twice how large it is.');
  });
});

it('with bytes exchanged, left out and put in it is read to an end, and never comes back larger than it may be', () => {
  for (let seed = 0; seed < drawn(2000, 200_000); seed++) {
    const draw = drawFrom(seed);
    const bytes = Array.from(smallJpeg());
    for (let k = draw.between(1, 6); k >= 1; k--) {
      const at = Math.floor(draw.between(2, bytes.length));
      const value = draw.chance(0.5) ? draw.oneOf([0, 1, 0xff, 0xc0, 0xda, 0xd9]) : Math.floor(draw.between(0, 256));
      bytes.splice(at, draw.oneOf([0, 1, 2]), value);
    }
    const read = readJpeg(new Uint8Array(bytes));
    if (!read.ok) continue;
    expect(Math.max(read.width, read.height), `seed ${seed}`).toBeLessThanOrEqual(1600);
    expect(Math.min(read.width, read.height), `seed ${seed}`).toBeGreaterThan(0);
    // Once without notes it stays so.
    expect(readJpeg(read.bytes), `seed ${seed}`).toEqual(read);
  }
});
