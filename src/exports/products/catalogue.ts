/** What can be taken away, as data: formats by the names that the command line knows, and the files of each. */

import type { Job } from '../../core/job/types.ts';

export const FORMATS = ['pdf', 'csv', 'dxf', 'svg', 'step', 'gltf', 'stl', 'dossier', 'quote'] as const;
export type Format = (typeof FORMATS)[number];

/** What is made in one piece: a file, or a folder of flat patterns. */
export type Product = keyof typeof PRODUCTS;

/** In the order in which they are offered; `json` is always written. */
export const PRODUCTS = {
  'fabrication.json': 'json',
  'sheets.pdf': 'pdf',
  'wraps.pdf': 'pdf',
  'layout.pdf': 'pdf',
  'tack-up.pdf': 'pdf',
  'measuring.pdf': 'pdf',
  'cut-list.pdf': 'pdf',
  'feet.pdf': 'pdf',
  'tubes.csv': 'csv',
  'bends.csv': 'csv',
  'xyz.csv': 'csv',
  'copes.csv': 'csv',
  'stock.csv': 'csv',
  'wraps.dxf': 'dxf',
  'layout.dxf': 'dxf',
  'feet.dxf': 'dxf',
  'gussets.dxf': 'dxf',
  wraps: 'svg',
  feet: 'svg',
  'cage.step': 'step',
  'cage.glb': 'gltf',
  'cage.stl': 'stl',
  'dossier.pdf': 'dossier',
  'quote.pdf': 'quote',
  'quote-shop.pdf': 'quote',
  'order.pdf': 'quote',
  'order.csv': 'quote',
} as const satisfies Readonly<Record<string, Format | 'json'>>;

/** Whether it is a folder of files, which a zip takes. */
export const isFolder = (product: Product): product is 'wraps' | 'feet' => product === 'wraps' || product === 'feet';

/** There is no plan of what to cut from nothing. */
const isThere = (product: Product, { stickSorts }: Pick<Job, 'stickSorts'>): boolean =>
  (product !== 'stock.csv' && product !== 'cut-list.pdf') || stickSorts.length > 0;

/** What these formats write of the job, `fabrication.json` first. */
export const productsOf = (formats: readonly (Format | 'json')[], job: Pick<Job, 'stickSorts'>): readonly Product[] =>
  (Object.keys(PRODUCTS) as Product[]).filter((product) => {
    const format = PRODUCTS[product];
    return (format === 'json' || formats.includes(format)) && isThere(product, job);
  });

/** The files of one format. */
export const productsIn = (format: Format | 'json', job: Pick<Job, 'stickSorts'>): readonly Product[] =>
  (Object.keys(PRODUCTS) as Product[]).filter((product) => PRODUCTS[product] === format && isThere(product, job));
