/** Certificates of material, by heat: every entry edited where it stands. */
import { batchesOnce, isSameBatch } from '../../core/job/batch.ts';
import { useEffect, useMemo, useRef, type ReactNode } from 'react';
import { addCertificate, removeCertificate, updateCertificate } from '../../core/edit/certificates.ts';
import type { Certificate } from '../../core/job/kinds/certificate.ts';
import type { Section } from '../../core/job/kinds/section.ts';
import { shownName } from '../../core/job/shown.ts';
import { useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { choiceColumn, textColumn, type Column } from '../table/columns.tsx';
import { EditTable } from '../table/EditTable.tsx';

interface Row {
  readonly certificate: Certificate;
  /** In the list: what names it. */
  readonly index: number;
}

const STEP = 'Change a certificate';

export function Certificates(): ReactNode {
  const certificates = useDocument((state) => state.job.certificates);
  const members = useDocument((state) => state.job.members);
  const sections = useDocument((state) => state.job.sections);
  const rows = useMemo(() => certificates.map((certificate, index) => ({ certificate, index })), [certificates]);
  const columns = useMemo(() => columnsFor(sections), [sections]);
  const batches = batchesOnce(members);
  const list = useRef<HTMLDivElement>(null);
  const isAdded = useRef(false);
  // The new one is typed next: its batch, or its certificate where the batch is known.
  useEffect(() => {
    if (!isAdded.current) return;
    isAdded.current = false;
    const cells = list.current?.querySelector<HTMLTableRowElement>('tbody tr:last-child')?.cells;
    cells?.[certificates.at(-1)?.batch === '' ? 0 : 1]?.focus();
  }, [certificates]);
  const bare = batches.filter((one) => certificates.every(({ batch }) => !isSameBatch(batch, one)));
  return (
    <>
      <p className="small">
        The batch of a tube, its heat number, is typed in the Frame, with the member, or in Stock, with the stick that
        was sawn. Certificates of that batch stand beside the tube in the dossier.
      </p>
      <div ref={list}>
        {rows.length > 0 && (
          <EditTable
            caption="Batches and certificates"
            rows={rows}
            columns={columns}
            firstLine={3}
            rowId={({ index }) => String(index)}
            rowName={({ index }) => `certificate ${index + 1}`}
          />
        )}
      </div>
      <p className="row">
        {(bare.length === 0 ? [''] : bare).map((batch) => (
          <Command
            key={batch}
            quiet
            step="Add a certificate"
            run={(job) => addCertificate(job, { batch, certificate: '' })}
            onDone={() => {
              isAdded.current = true;
            }}
          >
            {bare.length === 0 ? 'Add a certificate' : `Add one for ${shownName(batch)}`}
          </Command>
        ))}
      </p>
    </>
  );
}

const columnsFor = (sections: readonly Section[]): readonly Column<Row>[] => [
  textColumn<Row>({
    header: 'Batch',
    mayBeEmpty: true,
    step: STEP,
    value: ({ certificate }) => certificate.batch,
    change: (job, { index }, batch) => updateCertificate(job, index, { batch }),
  }),
  textColumn<Row>({
    header: 'Certificate',
    mayBeEmpty: true,
    step: STEP,
    value: ({ certificate }) => certificate.certificate,
    change: (job, { index }, certificate) => updateCertificate(job, index, { certificate }),
  }),
  choiceColumn<Row>({
    header: 'Of tube',
    step: STEP,
    value: ({ certificate }) => certificate.section ?? '',
    choices: () => [{ value: '', label: 'any' }, ...sections.map(({ id, name }) => ({ value: id, label: name }))],
    change: (job, { index }, section) => updateCertificate(job, index, { section }),
  }),
  textColumn<Row>({
    header: 'Note',
    mayBeEmpty: true,
    step: STEP,
    value: ({ certificate }) => certificate.note ?? '',
    change: (job, { index }, note) => updateCertificate(job, index, { note }),
  }),
  {
    header: 'Delete',
    numeric: true,
    show: ({ index }) => (
      <Command
        quiet
        destroys={String(index)}
        step="Delete a certificate"
        label={`Delete certificate ${index + 1}`}
        run={(job) => removeCertificate(job, index)}
      >
        ×
      </Command>
    ),
  },
];
