/** What only the shop has: sticks on the rack, notchers, hole saws; each with a form for one more. */
import { NOT_WHOLE } from '../../core/job/fault.ts';
import { useState, type ReactNode } from 'react';
import { shownName } from '../../core/job/shown.ts';
import { GREATEST_STEP, LEAST_STEP } from '../../core/job/kinds/notcher.ts';
import type { Saw } from '../../core/job/kinds/saw.ts';
import { GREATEST_COST, MOST_STICKS } from '../../core/job/limits.ts';
import type { Stick } from '../../core/shop/kinds/stick.ts';
import { shopRecord, useDocument, useShop } from '../../store/page.ts';
import { SelectField } from '../fields/Fields.tsx';
import { numberKind, orNothing, sizeKind, textKind } from '../fields/kinds.ts';
import { LimitLength } from '../fields/Readings.tsx';
import { AddForm } from './AddForm.tsx';
import { RecordTable, type Column } from './RecordTable.tsx';

const LENGTH: Column<Stick> = { title: 'Length', isNumber: true, show: ({ length }) => <LimitLength mm={length} /> };

export function StickTable(): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const { sticks, sections } = useShop((state) => state.shop);
  const [chosen, choose] = useState('');
  const section = sections.find(({ id }) => id === chosen) ?? sections[0];
  const nameOf = (id: string): string => shownName(sections.find((one) => one.id === id)?.name ?? id);
  return (
    <>
      <RecordTable
        caption="Sticks of the shop"
        list="sticks"
        records={sticks}
        nameOf={(stick) => `sticks of ${nameOf(stick.section)}`}
        columns={[
          { title: 'Section', show: (stick) => nameOf(stick.section) },
          LENGTH,
          { title: 'Sticks', isNumber: true, show: ({ count }) => count },
          { title: 'Batch', show: ({ batch }) => (batch === undefined ? '–' : shownName(batch)) },
          { title: 'Cost of one', isNumber: true, show: ({ cost }) => cost ?? '–' },
        ]}
      />
      {section === undefined ? (
        <p className="small">A stick is of a section: take sections in first.</p>
      ) : (
        <AddForm
          title="Put sticks on the rack"
          fields={{
            length: { label: 'Length', unit, kind: sizeKind(unit) },
            count: { label: 'How many', kind: COUNT },
            batch: { label: 'Batch', kind: textKind(true), mayBeEmpty: true },
            cost: { label: 'Cost of one', kind: orNothing(numberKind(0, GREATEST_COST, 1)), mayBeEmpty: true },
          }}
          add={({ length, count, batch, cost }) =>
            shopRecord.getState().change((shop) => ({
              ...shop,
              sticks: [
                ...shop.sticks,
                { section: section.id, length, count, ...(batch !== '' && { batch }), ...(cost !== null && { cost }) },
              ],
            }))
          }
        >
          <SelectField
            label="Section"
            value={section.id}
            choices={sections.map(({ id }) => ({ value: id, label: nameOf(id) }))}
            onChoose={choose}
          />
        </AddForm>
      )}
    </>
  );
}

const whole = numberKind(1, MOST_STICKS, 1);
const COUNT: typeof whole = {
  ...whole,
  read(text) {
    const entered = whole.read(text);
    return entered.ok && !Number.isInteger(entered.value) ? { ok: false, why: NOT_WHOLE } : entered;
  },
};

/** Which way the head of a notcher is swung: as it looks from where the drill is worked. */
const LEANS = [
  { value: '', label: 'not said' },
  { value: 'over-tube', label: 'back over the tube' },
  { value: 'past-end', label: 'out past the end' },
  { value: 'either', label: 'either way' },
] as const;

export function NotcherTable(): ReactNode {
  const notchers = useShop((state) => state.shop.notchers);
  const [takesOffset, setTakesOffset] = useState(false);
  const [leans, lean] = useState<(typeof LEANS)[number]['value']>('');
  return (
    <>
      <RecordTable
        caption="Notchers"
        list="notchers"
        records={notchers}
        nameOf={({ name }) => `notcher ${shownName(name)}`}
        columns={[
          { title: 'Notcher', show: ({ name }) => shownName(name) },
          { title: 'Off square, up to', isNumber: true, show: ({ greatestOffSquare }) => `${greatestOffSquare}°` },
          {
            title: 'Scale read to',
            isNumber: true,
            show: ({ step }) => (step === undefined ? 'any angle' : `${step}°`),
          },
          { title: 'Drill leans', show: ({ leans }) => LEANS.find(({ value }) => value === (leans ?? ''))!.label },
          { title: 'Takes an offset', show: (notcher) => (notcher.takesOffset ? 'yes' : 'no') },
        ]}
      />
      <AddForm
        title="Add a notcher"
        fields={{
          name: { label: 'What it is called', kind: textKind(false) },
          greatestOffSquare: { label: 'Off square, up to', unit: '°', kind: numberKind(0, 90, 1) },
          step: {
            label: 'Scale read to',
            unit: '°',
            kind: orNothing(numberKind(LEAST_STEP, GREATEST_STEP, 1)),
            mayBeEmpty: true,
          },
        }}
        add={({ step, ...notcher }) =>
          shopRecord.getState().change((shop) => ({
            ...shop,
            notchers: [
              ...shop.notchers,
              { ...notcher, takesOffset, ...(step !== null && { step }), ...(leans !== '' && { leans }) },
            ],
          }))
        }
      >
        <SelectField
          label="Set off square, its drill leans"
          value={leans}
          choices={LEANS}
          onChoose={(value) => lean(LEANS.find((one) => one.value === value)!.value)}
        />
        <label className="record-tick">
          <input type="checkbox" checked={takesOffset} onChange={(event) => setTakesOffset(event.target.checked)} />
          Takes a tube that passes the run’s centreline
        </label>
      </AddForm>
    </>
  );
}

const SAW_COLUMNS: readonly Column<Saw>[] = [
  { title: 'Diameter', isNumber: true, show: ({ diameter }) => <LimitLength mm={diameter} /> },
  {
    title: 'Cuts deep',
    isNumber: true,
    show: ({ reach }) => (reach === undefined ? 'not said' : <LimitLength mm={reach} />),
  },
];

export function SawTable(): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const saws = useShop((state) => state.shop.saws);
  return (
    <>
      <RecordTable caption="Hole saws" list="saws" records={saws} nameOf={() => 'hole saw'} columns={SAW_COLUMNS} />
      <AddForm
        title="Add a hole saw"
        fields={{
          diameter: { label: 'Diameter', unit, kind: sizeKind(unit) },
          reach: { label: 'Cuts deep', unit, kind: orNothing(sizeKind(unit)), mayBeEmpty: true },
        }}
        add={({ diameter, reach }) =>
          shopRecord
            .getState()
            .change((shop) => ({ ...shop, saws: [...shop.saws, { diameter, ...(reach !== null && { reach }) }] }))
        }
      />
    </>
  );
}
