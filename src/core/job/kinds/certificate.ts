/** What a certificate says of a heat of tube: by its heat a member is traced to it. */
import * as v from 'valibot';
import { batchKey, isSameBatch } from '../batch.ts';
import { MOST_CERTIFICATES } from '../limits.ts';
import type { SectionId } from '../reference.ts';
import type { Kind } from './kind.ts';

export interface Certificate {
  /** Of which size of tube; absent: of whatever is cut from that heat. */
  readonly section?: SectionId;
  /** Heat or batch, as it stands on the tube and with its members. */
  readonly batch: string;
  /** What the paper is called or numbered. */
  readonly certificate: string;
  readonly note?: string;
}

export const certificateKind: Kind<Certificate> = {
  inWords: 'a certificate',
  shape: v.looseObject({
    section: v.exactOptional(v.string()),
    batch: v.string(),
    certificate: v.optional(v.string(), ''),
    note: v.exactOptional(v.string()),
  }),
  keys: ['section batch certificate note'],
  most: MOST_CERTIFICATES,
  beyondShape: ({ section }, at) =>
    section === undefined ? [] : [{ place: `${at}.section`, list: 'sections', to: section }],
};

/** Those of a tube's heat, and of its section where they name one, in the order of the job. */
export const certificatesOf = (
  certificates: readonly Certificate[],
  { batch, section }: { readonly batch?: string; readonly section: SectionId },
): readonly Certificate[] =>
  batchKey(batch) === null
    ? []
    : certificates.filter(
        (each) => isSameBatch(each.batch, batch) && (each.section === undefined || each.section === section),
      );
