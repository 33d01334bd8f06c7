/**
 * Steels that tube is sold in, by the name a section's `material` carries. Yield strengths are the least that the
 * standard allows; they serve the first guess at springback and are never shown as a certificate.
 */
import { shownName } from '../job/shown.ts';

export interface Steel {
  readonly id: string;
  readonly name: string;
  /** N/mm2. */
  readonly yield: number;
  readonly source: string;
  /** Of strip, with a seam along it that was not drawn out afterwards. */
  readonly welded?: true;
}

const KSI = 6.894757;

/** The steels that an estimate is given for, with the source of their values. */
export const STEELS: readonly Steel[] = [
  { id: 'dom-1020', name: '1020 DOM, as drawn', yield: 60 * KSI, source: 'ASTM A513 type 5, as drawn (from memory)' },
  {
    id: 'dom-1020-sr',
    name: '1020 DOM, stress relieved',
    yield: 55 * KSI,
    source: 'ASTM A513 type 5, stress relieved',
  },
  {
    id: 'erw-1020',
    name: '1020 ERW, as welded',
    yield: 38 * KSI,
    source: 'ASTM A513 type 1a, as welded (from memory)',
    welded: true,
  },
  { id: '4130-n', name: '4130, normalised', yield: 60 * KSI, source: 'ASTM A519 (from memory)' },
  { id: 'e235-n', name: 'E235+N', yield: 235, source: 'EN 10305-1' },
  { id: 'e235-n-welded', name: 'E235+N, welded', yield: 235, source: 'EN 10305-3 (from memory)', welded: true },
  { id: 'e355-n', name: 'E355+N', yield: 355, source: 'EN 10305-1' },
];

/** N/mm2, of steel: EN 10305 tube and DOM alike lie at 205 000 to 210 000. */
export const YOUNGS_MODULUS = 205_000;

/** The steel of that name; undefined where it is not known here. */
export const steelOf = (material: string): Steel | undefined => STEELS.find((steel) => steel.id === material);

/** Whether the tube has a seam that is to be kept off the inside and the outside of a bend: by its steel, or by the section's own word for it. */
export const isSeamed = ({ material }: { readonly material: string }): boolean =>
  steelOf(material)?.welded ?? SEAMED.test(material);

const SEAMED = /\b(?:erw|hrew|crew|welded|seamed)\b/iu;

/** The steel's name in the trade; the section's own word where no steel of that name is known here. */
export const steelInWords = ({ material }: { readonly material: string }): string =>
  steelOf(material)?.name ?? shownName(material);
