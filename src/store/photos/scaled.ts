/**
 * A picture from a file, no larger than it is kept, encoded anew as JPEG: what a camera noted beside it, place among it, stays behind. The browser decodes it; one that it
 * cannot is refused.
 */
import { LONGEST_SIDE } from '../../core/photo/jpeg.ts';

/** Of a camera's file. */
const GREATEST_FILE = 60 * 1024 * 1024;
/** Of the encoding, from 0 to 1: no edge of a weld is smeared. */
const QUALITY = 0.85;

/** Answers bytes, or why there are none, in words that go on after the file's name. */
export type Scale = (file: File) => Promise<Uint8Array | string>;

export const scaled: Scale = async (file) => {
  if (file.size > GREATEST_FILE) return 'is larger than 60 MB.';
  const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => null);
  if (bitmap === null) return 'cannot be read as a picture.';
  const share = Math.min(1, LONGEST_SIDE / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.floor(bitmap.width * share));
  canvas.height = Math.max(1, Math.floor(bitmap.height * share));
  const context = canvas.getContext('2d');
  if (context === null) return 'cannot be drawn: the browser has no room for it.';
  // What is clear in it is paper.
  context.fillStyle = 'white';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', QUALITY));
  return blob === null ? 'cannot be encoded anew.' : new Uint8Array(await blob.arrayBuffer());
};
