/** A photo of the work. The job names it only: the picture itself is kept beside the job, by its sum. */
import * as v from 'valibot';
import { MOST_PHOTOS, MOST_SEEN } from '../limits.ts';
import type { PhotoId, TubeRef } from '../reference.ts';
import { atMost } from './faults.ts';
import { named } from './fields.ts';
import type { Kind } from './kind.ts';

export interface Photo {
  readonly id: PhotoId;
  /** What it is captioned with. */
  readonly name: string;
  /** What the picture is kept under: of the bytes of its file as they are kept. */
  readonly sum: string;
  /** When it was taken, as 2026-03-02. */
  readonly on?: string;
  /** The tubes that it shows. */
  readonly tubes?: readonly TubeRef[];
}

/** As core/scan/sum.ts makes them. Files are looked for under it: no sign of a path is let pass. */
const SUM = /^[0-9a-f]{24}$/u;

/** The tubes are no references: a photo stays when its tube goes. */
export const photoKind: Kind<Photo> = {
  word: 'photo',
  letter: 'photo',
  shape: v.looseObject({
    ...named,
    sum: v.pipe(v.string(), v.regex(SUM, 'is no sum of a picture: 24 figures, 0 to 9 and a to f')),
    on: v.exactOptional(v.string()),
    tubes: v.exactOptional(v.array(v.string())),
  }),
  keys: ['id name sum on tubes'],
  most: MOST_PHOTOS,
  beyondShape: ({ tubes = [] }, at) => atMost(MOST_SEEN, tubes, `${at}.tubes`),
};
