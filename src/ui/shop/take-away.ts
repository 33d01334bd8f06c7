/** What can be taken away, in words for whoever takes it, and the settings that are kept on this machine. */
import { isFolder, FORMATS, type Format, type Product } from '../../exports/products/catalogue.ts';
import { HUNDRED, type PrintChoice } from '../kit/print.ts';

export interface Kind {
  readonly format: Format | 'json';
  readonly title: string;
  readonly holds: string;
}

/** In the order in which they are offered. */
export const KINDS: readonly Kind[] = [
  {
    format: 'pdf',
    title: 'To print',
    holds:
      'a sheet a tube with a cover, templates to wind round the ends, flat tubes at full size in sheets to join, what the cage is set up by with a tape, boxes to fill in at the car, what is sawn from which stick, pieces of the feet',
  },
  {
    format: 'csv',
    title: 'For a spreadsheet',
    holds: 'tubes, bends, corner points, the notcher recipe of each cut, and what is sawn from which stick',
  },
  {
    format: 'dxf',
    title: 'For a laser or plasma table',
    holds: 'flat patterns of the ends; flat tubes as they lie on the floor; pieces of the feet; gussets',
  },
  {
    format: 'svg',
    title: 'For a vinyl cutter',
    holds: 'the same patterns, one file an end, and one a piece of a foot',
  },
  {
    format: 'step',
    title: 'Solids for CAD',
    holds: 'exact bodies, copes cut. Takes a while; the 23 MB that make them are loaded once',
  },
  { format: 'gltf', title: '3D to look at', holds: 'for viewers and web pages, in metres' },
  { format: 'stl', title: '3D as a plain mesh', holds: 'closed shells, in millimetres' },
  {
    format: 'dossier',
    title: 'For the inspector',
    holds:
      'one paper: tubes with their batches, bends as made, joints to tick, feet, what was found and what was not looked at, photos, lines to sign',
  },
  {
    format: 'quote',
    title: 'Order and quote',
    holds:
      'what is to be bought, also for a spreadsheet; the quote as the customer gets it, and the shop’s own page with every rate and boxes for what it took',
  },
  { format: 'json', title: 'For other programs', holds: 'everything derived, with profiles. In every zip' },
];

/** What a button that takes a product is called: the file, or that it is a zip of several. */
export const productName = (product: Product): string => (isFolder(product) ? `${product}, as a zip` : product);

const IN_PARTS = ['dossier', 'sheets', 'tack-up', 'measuring', 'cut-list', 'feet', 'gussets'];

/** What one piece of a product is, for the progress; the sheets have their cover as well. */
export function pieceOf(product: Product): string {
  if (IN_PARTS.some((name) => product.startsWith(name))) return 'part';
  return product === 'wraps' || product.startsWith('wraps.') ? 'end' : 'tube';
}

/** What was kept of the formats chosen for the zip; all at first. */
export function readChosen(kept: unknown): readonly Format[] {
  return Array.isArray(kept) ? FORMATS.filter((format) => kept.includes(format)) : FORMATS;
}

/** Under this name a zip is saved. */
export const zipName = (jobFile: string): string => jobFile.replace(/(?:\.cagewright)?\.json$/u, '.zip');

/** How the next print is scaled, in words; null where it is not. */
export function correctionInWords({ across, up }: PrintChoice): string | null {
  if (across === HUNDRED && up === HUNDRED) return null;
  const share = (measured: number): string => `${((HUNDRED / measured) * 100).toFixed(2)} %`;
  return `The next print is scaled to ${share(across)} across and ${share(up)} up.`;
}
