/** A picture of 24 by 18 pixels, made by an image program, and pictures with other heads made of it. */
const WRITTEN = `
/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDACgcHiMeGSgjISMtKygwPGRBPDc3PHtYXUlkkYCZlo+AjIqgtObDoKrarYqMyP/L2u71
////m8H////6/+b9//j/2wBDASstLTw1PHZBQXb4pYyl+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4+Pj4
+Pj4+Pj4+Pj/wAARCAASABgDAREAAhEBAxEB/8QAFwABAAMAAAAAAAAAAAAAAAAAAAIDBP/EABUQAQEAAAAAAAAAAAAAAAAAAAAS
/8QAFwEBAQEBAAAAAAAAAAAAAAAAAAQBBf/EABURAQEAAAAAAAAAAAAAAAAAAAAT/9oADAMBAAIRAxEAPwDHTJulQomUKJlFVLpo
qFEyhRMogqTAAP/Z`;

export const smallJpeg = (): Uint8Array => new Uint8Array(Buffer.from(WRITTEN, 'base64'));

/** Where the head of the frame begins, after its marker and length. */
export const FRAME = smallJpeg().findIndex((byte, i, all) => byte === 0xff && all[i + 1] === 0xc0);

/** With a part put in behind the first two bytes. */
export const withPart = (marker: number, words: string): Uint8Array => {
  const body = new TextEncoder().encode(words);
  const whole = smallJpeg();
  const length = body.length + 2;
  return new Uint8Array([0xff, 0xd8, 0xff, marker, length >> 8, length & 255, ...body, ...whole.subarray(2)]);
};

/** Made another one in one place: the sum is another, the picture nearly the same. */
export function otherJpeg(which: number): Uint8Array {
  return withPart(0xfe, `picture ${which}`);
}
