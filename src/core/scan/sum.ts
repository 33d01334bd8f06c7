/** What a scan's data are kept under: a number made of all bytes of its file, so that the same file is known again. It tells files apart, and guards nothing. */

/** Two rounds with other factors, in hexadecimal; the multiplications of MurmurHash3's end, which is in the public domain. */
export function sumOf(bytes: Uint8Array): string {
  let [a, b] = [bytes.length, 0x9e3779b9];
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const whole = bytes.length - (bytes.length % 4);
  for (let at = 0; at < bytes.length; at += at < whole ? 4 : 1) {
    const word = at < whole ? view.getUint32(at, true) : bytes[at]!;
    a = Math.imul(a ^ word, 0x85ebca6b);
    a ^= a >>> 13;
    b = Math.imul((b << 5) ^ (b >>> 27) ^ word, 0xc2b2ae35);
  }
  return [a, b, bytes.length].map((part) => (part >>> 0).toString(16).padStart(8, '0')).join('');
}
