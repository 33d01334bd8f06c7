/** What a zip of many files says of those that could not be made: a text in it, and a sentence for whoever asked. */
import { isFolder, type Product } from './catalogue.ts';
import type { ExportFile } from '../shared/files.ts';

export interface Missing {
  readonly product: Product;
  /** In a sentence. */
  readonly why: string;
}

const inZip = (product: Product): string => (isFolder(product) ? `the folder ${product}` : product);

export const missingNote = ({ product, why }: Missing): string => `Without ${inZip(product)}: ${why}`;

/** Lies beside the files, so that whoever gets the zip knows too. */
export const missingFile = (missing: readonly Missing[]): ExportFile => ({
  fileName: 'NOT IN THIS ZIP.txt',
  bytes: new TextEncoder().encode(
    [
      'These files were asked for and are not in this zip. The others are complete.',
      ...missing.map(({ product, why }) => `${inZip(product)}\r\n    ${why}`),
      'What is missing can be taken by itself in the Shop, under "Files".\r\n',
    ].join('\r\n\r\n'),
  ),
});
