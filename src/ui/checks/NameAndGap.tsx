/** What a box and a driver are called, and how far tubes are to keep from them. */
import type { ReactNode } from 'react';
import { updateEnvelope } from '../../core/edit/envelopes.ts';
import type { Envelope } from '../../core/job/kinds/envelope.ts';
import { LengthField, TextField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';

export const NameAndGap = ({ envelope: { id, name, gap } }: { envelope: Envelope }): ReactNode => (
  <>
    <TextField
      label="Name"
      value={name}
      {...jobEdit<string>(`Rename ${name}`, (job, value) => updateEnvelope(job, id, { name: value }))}
    />
    <LengthField
      label="Gap to keep"
      value={gap}
      {...jobEdit<number>(`Gap of ${name}`, (job, value) => updateEnvelope(job, id, { gap: value }))}
    />
  </>
);
