/**
 * Edits of certificates. One has no id, as nothing refers to it: its index in the list names it. An edit at an index that
 * is not there gives the same job back.
 */
import type { Certificate } from '../job/kinds/certificate.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import type { Job } from '../job/types.ts';
import { patched } from './records.ts';

/** It comes last. */
export const addCertificate = (job: Job, certificate: Certificate): Job => ({
  ...job,
  certificates: [...job.certificates, certificate],
});

/** The certificate with these fields; no section, and an empty note, take the field away. */
export function updateCertificate(job: Job, index: number, fields: Partial<Certificate>): Job {
  const certificates = mapKeeping(job.certificates, (each, at) => {
    if (at !== index) return each;
    const changed = patched<Certificate>(each, fields);
    if (changed.section !== '' && changed.note !== '') return changed;
    const { section, note, ...rest } = changed;
    return { ...rest, ...(section && { section }), ...(note && { note }) };
  });
  return certificates === job.certificates ? job : { ...job, certificates };
}

export const removeCertificate = (job: Job, index: number): Job =>
  job.certificates[index] === undefined ? job : { ...job, certificates: job.certificates.toSpliced(index, 1) };
