/** What only the shop has: sticks on the rack, notchers, hole saws; each with a form for one more. */
import { NOT_WHOLE } from '../../core/job/fault.ts';
import { useState, type ReactNode } from 'react';
import { shownName } from '../../core/job/shown.ts';
import type { Saw } from '../../core/shop/kinds/saw.ts';
import { GREATEST_COST, MOST_STICKS, type Stick } from '../../core/shop/kinds/stick.ts';
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

export function NotcherTable(): ReactNode {
  const notchers = useShop((state) => state.shop.notchers);
  const [takesOffset, setTakesOffset] = useState(false);
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
          { title: 'Takes an offset', show: (notcher) => (notcher.takesOffset ? 'yes' : 'no') },
        ]}
      />
      <AddForm
        title="Add a notcher"
        fields={{
          name: { label: 'What it is called', kind: textKind(false) },
          greatestOffSquare: { label: 'Off square, up to', unit: '°', kind: numberKind(0, 90, 1) },
        }}
        add={(notcher) =>
          shopRecord
            .getState()
            .change((shop) => ({ ...shop, notchers: [...shop.notchers, { ...notcher, takesOffset }] }))
        }
      >
        <label className="record-tick">
          <input type="checkbox" checked={takesOffset} onChange={(event) => setTakesOffset(event.target.checked)} />
          Takes a tube that passes the run’s centreline
        </label>
      </AddForm>
    </>
  );
}

const SAW_COLUMNS: readonly Column<Saw>[] = [
  { title: 'Diameter', show: ({ diameter }) => <LimitLength mm={diameter} /> },
];

export function SawTable(): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const saws = useShop((state) => state.shop.saws);
  return (
    <>
      <RecordTable caption="Hole saws" list="saws" records={saws} nameOf={() => 'hole saw'} columns={SAW_COLUMNS} />
      <AddForm
        title="Add a hole saw"
        fields={{ diameter: { label: 'Diameter', unit, kind: sizeKind(unit) } }}
        add={({ diameter }) =>
          shopRecord.getState().change((shop) => ({ ...shop, saws: [...shop.saws, { diameter }] }))
        }
      />
    </>
  );
}
