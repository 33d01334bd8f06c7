/** A certificate and its key, as https needs them. */
import { readFileSync } from 'node:fs';
import { createSecureContext } from 'node:tls';

/**
 * Reads the pair. What is wrong with it is told in a sentence.
 *
 * @param {{ readonly cert: string, readonly key: string }} files
 * @returns {{ readonly trouble: string } | { readonly cert: Buffer, readonly key: Buffer }}
 */
export function readPair(files) {
  /** @type {Record<string, Buffer>} */
  const read = {};
  for (const [name, file] of Object.entries(files)) {
    try {
      read[name] = readFileSync(file);
    } catch (error) {
      return { trouble: `--${name} ${file} cannot be read (${/** @type {NodeJS.ErrnoException} */ (error).code}).` };
    }
  }
  const pair = /** @type {{ cert: Buffer, key: Buffer }} */ (read);
  for (const part of [{ cert: pair.cert }, { key: pair.key }]) {
    const [name] = /** @type {['cert' | 'key']} */ (Object.keys(part));
    try {
      createSecureContext(part);
    } catch {
      const what = name === 'cert' ? 'certificate' : 'private key without a password';
      return { trouble: `--${name} ${files[name]} is no ${what} in PEM, the text form.` };
    }
  }
  try {
    createSecureContext(pair);
    return pair;
  } catch {
    return { trouble: `--cert ${files.cert} and --key ${files.key} are no pair: the key is another certificate's.` };
  }
}
