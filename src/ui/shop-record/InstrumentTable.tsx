/** What the shop measures cars with: each with what it reads, and how surely. */
import { useState, type ReactNode } from 'react';
import { GREATEST_SIGMA, LEAST_SIGMA, type MeasurementKind } from '../../core/job/kinds/measurement.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Instrument } from '../../core/shop/kinds/instrument.ts';
import { KIND_WORDS } from '../../core/words/ways.ts';
import { shopRecord, useDocument, useShop } from '../../store/page.ts';
import { deviationKind, numberKind, textKind } from '../fields/kinds.ts';
import { AddForm } from './AddForm.tsx';
import { RecordTable } from './RecordTable.tsx';

const KINDS = Object.keys(KIND_WORDS) as readonly MeasurementKind[];

const isOfSlopes = ({ reads }: Pick<Instrument, 'reads'>): boolean => reads.includes('inclination');

export function InstrumentTable(): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const instruments = useShop((state) => state.shop.instruments);
  const [reads, setReads] = useState<readonly MeasurementKind[]>(['distance', 'width']);
  const lengths = deviationKind(unit, GREATEST_SIGMA);
  return (
    <>
      <RecordTable
        caption="Instruments"
        list="instruments"
        records={instruments}
        nameOf={({ name }) => `instrument ${shownName(name)}`}
        columns={[
          { title: 'Instrument', show: ({ name }) => shownName(name) },
          { title: 'Reads', show: (each) => each.reads.map((kind) => KIND_WORDS[kind]).join(', ') },
          {
            title: 'Sure to',
            isNumber: true,
            show: (each) => (isOfSlopes(each) ? `${each.sigma}°` : `${lengths.show(each.sigma)} ${unit}`),
          },
        ]}
      />
      <AddForm
        title="Add an instrument"
        fields={{
          name: { label: 'Its name', kind: textKind(false) },
          sigma: isOfSlopes({ reads })
            ? { label: 'Sure to, one standard deviation', unit: '°', kind: numberKind(LEAST_SIGMA, 45, 0.1) }
            : { label: 'Sure to, one standard deviation', unit, kind: lengths },
        }}
        add={({ name, sigma }) =>
          shopRecord
            .getState()
            .change((shop) => ({ ...shop, instruments: [...shop.instruments, { name, reads, sigma }] }))
        }
      >
        <fieldset className="fields">
          <legend className="small">What it reads</legend>
          {KINDS.map((kind) => (
            <label key={kind} className="record-tick">
              <input
                type="checkbox"
                checked={reads.includes(kind)}
                onChange={({ target }) =>
                  setReads(target.checked ? [...reads, kind] : reads.filter((other) => other !== kind))
                }
              />
              {KIND_WORDS[kind]}
            </label>
          ))}
        </fieldset>
      </AddForm>
    </>
  );
}
