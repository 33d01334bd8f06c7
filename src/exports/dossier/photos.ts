/** The photos, six to a page, each with its caption, its day and the tubes that it shows. */
import type { Photo } from '../../core/job/kinds/photo.ts';
import { shownName } from '../../core/job/shown.ts';
import { readJpeg } from '../../core/photo/jpeg.ts';
import { photoNotPrinted, photosNotHere } from '../../core/words/dossier.ts';
import { wrapped } from '../../drawing/fit.ts';
import { box, FAINT, SMALL, text } from '../../drawing/ink.ts';
import type { Image, PictureSheet } from '../../drawing/pdf.ts';
import type { Mark } from '../../drawing/types.ts';
import { FOOT_HEIGHT } from '../sheets/cautions.ts';
import type { Context } from '../sheets/context.ts';
import { contentHeight, MARGIN, type Part } from '../sheets/page.ts';
import { opened, said } from '../sheets/parts.ts';
import { numbersOf } from './tubes.ts';

/** The pictures by their sums, as far as they are there. */
export type Photos = ReadonlyMap<string, Uint8Array>;

const ACROSS = 2;
const DOWN = 3;
const BETWEEN = 6;
const HEAD = 9;
/** Lines of a caption, and from one to the next. */
const LINES = 3;
const LINE = 4;

export interface Pictures {
  readonly sheets: readonly PictureSheet[];
  /** Of the photos that are not printed; null where all are. */
  readonly missing: Part | null;
  /** The same in a sentence, for whoever asked. */
  readonly note: string | null;
}

export function pictures(context: Context, photos: Photos): Pictures {
  const { job } = context.derived;
  const shown: Picture[] = [];
  const absent: string[] = [];
  const broken: string[] = [];
  for (const photo of job.photos) {
    const bytes = photos.get(photo.sum);
    if (bytes === undefined) absent.push(shownName(photo.name));
    else {
      const read = readJpeg(bytes);
      if (read.ok) shown.push({ photo, ...read });
      else broken.push(photoNotPrinted(shownName(photo.name), read.why));
    }
  }
  const sentences = [...(absent.length === 0 ? [] : [photosNotHere(absent)]), ...broken];
  const page = ACROSS * DOWN;
  return {
    sheets: Array.from({ length: Math.ceil(shown.length / page) }, (_, i) =>
      photoSheet(context, shown.slice(i * page, (i + 1) * page), i * page),
    ),
    missing:
      sentences.length === 0 ? null : opened(context, 'Photos that are not here', [], said(context, ...sentences)),
    note: sentences.length === 0 ? null : sentences.join(' '),
  };
}

interface Picture {
  readonly photo: Photo;
  readonly width: number;
  readonly height: number;
  readonly bytes: Uint8Array;
}

function photoSheet(context: Context, shown: readonly Picture[], before: number): PictureSheet {
  const { paper, width } = context;
  const top = paper.height - MARGIN;
  const cell = {
    width: (width - (ACROSS - 1) * BETWEEN) / ACROSS,
    height: (contentHeight(paper) - FOOT_HEIGHT - HEAD) / DOWN,
  };
  const space = { width: cell.width, height: cell.height - LINES * LINE - 4 };
  const marks: Mark[] = [text(MARGIN, top - 4.6, 'Photos', { size: 5, bold: true })];
  const images: Image[] = shown.map(({ bytes, ...picture }, i) => {
    const left = MARGIN + (i % ACROSS) * (cell.width + BETWEEN);
    const high = top - HEAD - Math.floor(i / ACROSS) * cell.height;
    const scale = Math.min(space.width / picture.width, space.height / picture.height);
    const [across, up] = [picture.width * scale, picture.height * scale];
    marks.push(
      box(left, high, across, up, FAINT),
      ...captionOf(context, picture.photo, before + i + 1).map((line, k) =>
        text(left, high - up - 4 - k * LINE, line, { bold: k === 0 }),
      ),
    );
    return { bytes, left, top: high, width: across, height: up };
  });
  return { name: 'Photos', width: paper.width, height: paper.height, marks, images };

  function captionOf({ letters, derived }: Context, { name, on, tubes = [] }: Photo, number: number): string[] {
    const there = tubes.flatMap((id) => derived.byId.get(id) ?? []);
    const shows = there.length === 0 ? '' : `Shows ${there.length === 1 ? 'tube' : 'tubes'} ${numbersOf(there)}.`;
    return [
      ...wrapped(letters, `${number} ${shownName(name)}`, cell.width, SMALL, true, 1),
      ...wrapped(letters, [on === undefined ? '' : `${on}.`, shows].join(' ').trim(), cell.width, SMALL, false, 2),
    ];
  }
}
