/** The typefaces that paper is set in, read from their package. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const folder = join(import.meta.dirname, '../../node_modules/dejavu-fonts-ttf/ttf');

export const fonts = {
  regular: new Uint8Array(readFileSync(join(folder, 'DejaVuSansCondensed.ttf'))),
  bold: new Uint8Array(readFileSync(join(folder, 'DejaVuSansCondensed-Bold.ttf'))),
};
