/** Edits of photos: what a job knows of one. The picture itself is not the job's. */
import type { Photo } from '../job/kinds/photo.ts';
import type { PhotoId, TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { nextId } from './ids.ts';
import { appendRecord, changeRecord, takeOut, updateRecord } from './records.ts';

/** It comes last. The same picture twice is one photo: the same job. */
export const addPhoto = (job: Job, photo: Omit<Photo, 'id'>): Job =>
  job.photos.some(({ sum }) => sum === photo.sum)
    ? job
    : appendRecord(job, 'photos', { id: nextId(job, 'photos'), ...photo });

export const namePhoto = (job: Job, id: PhotoId, name: string): Job => updateRecord(job, 'photos', id, { name });

/** The day that it was taken; '' when nobody knows. */
export const datePhoto = (job: Job, id: PhotoId, on: string): Job =>
  changeRecord(job, 'photos', id, (photo) => {
    if (on !== '') return photo.on === on ? photo : { ...photo, on };
    if (!('on' in photo)) return photo;
    const { on: _, ...rest } = photo;
    return rest;
  });

/** Says that it shows the tube, or that it does not. */
export const showsTube = (job: Job, id: PhotoId, tube: TubeRef, shows: boolean): Job =>
  changeRecord(job, 'photos', id, (photo) => {
    const { tubes = [], ...rest } = photo;
    if (tubes.includes(tube) === shows) return photo;
    const now = shows ? [...tubes, tube] : tubes.filter((each) => each !== tube);
    return now.length === 0 ? rest : { ...rest, tubes: now };
  });

export const removePhoto = (job: Job, id: PhotoId): Job => takeOut(job, 'photos', new Set([id]));
