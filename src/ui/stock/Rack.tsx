/** What there is to cut from and what can be bought, how it is sawn, and lengths that are cut beside the tubes. */
import { useMemo, type ReactNode } from 'react';
import {
  addSpare,
  addStick,
  addTestPieces,
  removeSpare,
  removeStick,
  setSawing,
  updateSpare,
  updateStick,
} from '../../core/edit/stock.ts';
import { NOT_WHOLE } from '../../core/job/fault.ts';
import type { Spare } from '../../core/job/kinds/spare.ts';
import type { Stick } from '../../core/job/kinds/stick.ts';
import { FIRST_KERF, FIRST_KEPT, type Sawing } from '../../core/job/kinds/stock.ts';
import { GREATEST_COST, MOST_STICKS } from '../../core/job/limits.ts';
import { shownName } from '../../core/job/shown.ts';
import { withRack } from '../../core/shop/rack.ts';
import { stickInWords } from '../../core/words/stock.ts';
import { formatLength } from '../../core/units/length.ts';
import { shopRecord, useDocument, useShop } from '../../store/page.ts';
import { LengthField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { numberKind, orNothing, type ValueKind } from '../fields/kinds.ts';
import { Command } from '../kit/Command.tsx';
import { Delete } from '../fields/Delete.tsx';
import { Section } from '../kit/Section.tsx';
import { choiceColumn, lengthColumn, textColumn, valueColumn, type Column } from '../table/columns.tsx';
import { EditTable } from '../table/EditTable.tsx';

export function Rack(): ReactNode {
  const hasSections = useDocument((state) => state.job.sections.length > 0);
  if (!hasSections)
    return (
      <p className="empty">
        <strong>No section yet.</strong> A stick is of a section of tube: add one in Frame first.
      </p>
    );
  return (
    <>
      <h3>Sticks</h3>
      <Sticks />
      <h3>At the saw</h3>
      <AtTheSaw />
      <h3>Spares and test pieces</h3>
      <Spares />
    </>
  );
}

function Sticks(): ReactNode {
  const sticks = useDocument((state) => state.job.stickSorts);
  const sections = useDocument((state) => state.job.sections);
  const unit = useDocument((state) => state.job.lengthUnit);
  const isRackKnown = useShop((state) => state.shop.sticks.length > 0);
  const shop = useShop((state) => state.shop);
  const columns = useMemo(
    (): Column<Stick>[] => [
      sectionColumn<Stick>('Change a stick', sections, (job, { id }, section) => updateStick(job, id, { section })),
      lengthColumn<Stick>(unit, {
        header: 'Length',
        size: true,
        step: 'Change a stick',
        value: ({ length }) => length,
        change: (job, { id }, length) => updateStick(job, id, { length }),
      }),
      valueColumn<Stick, number | null>(COUNT_OR_BUY, {
        header: 'On rack',
        step: 'Change a stick',
        value: ({ count }) => count ?? null,
        change: (job, { id }, count) => updateStick(job, id, { count }),
      }),
      valueColumn<Stick, number | null>(COST, {
        header: 'Cost each',
        step: 'Change a stick',
        value: ({ cost }) => cost ?? null,
        change: (job, { id }, cost) => updateStick(job, id, { cost }),
      }),
      textColumn<Stick>({
        header: 'Batch',
        mayBeEmpty: true,
        step: 'Change a stick',
        value: ({ batch }) => batch ?? '',
        change: (job, { id }, batch) => updateStick(job, id, { batch }),
      }),
    ],
    [sections, unit],
  );
  const named = (stick: Stick): string => {
    const section = sections.find(({ id }) => id === stick.section);
    return `${shownName(section?.name ?? '')} ${stickInWords(stick, unit)}`;
  };
  return (
    <>
      <p className="small">
        What stands on the rack, left-overs too, with how many there are; and each length that can be bought, with
        nothing under “On rack”. Without a cost, the plan uses the least length.
      </p>
      {sticks.length > 0 && (
        <EditTable
          caption="Sticks to cut from"
          rows={sticks}
          columns={columns}
          tight
          rowId={({ id }) => id}
          rowName={named}
        />
      )}
      <p className="row">
        {sections.map(({ id, name }) => (
          <Command key={id} step="Add a stick" run={(job) => addStick(job, id)}>
            Add a stick of {shownName(name)}
          </Command>
        ))}
      </p>
      {isRackKnown && (
        <p>
          <Command quiet step="The rack as in the shop record" run={(job) => withRack(job, shop)}>
            Take the rack from the shop record
          </Command>
        </p>
      )}
      {sticks.length > 0 && (
        <Section title="Delete sticks from this list">
          {sticks.map((stick) => (
            <Delete key={stick.id} id={stick.id} name={named(stick)} remove={(job) => removeStick(job, stick.id)} />
          ))}
        </Section>
      )}
    </>
  );
}

const whole = numberKind(0, MOST_STICKS, 1);
const COUNT: ValueKind<number> = {
  ...whole,
  read(text) {
    const entered = whole.read(text);
    return entered.ok && !Number.isInteger(entered.value) ? { ok: false, why: NOT_WHOLE } : entered;
  },
};
const anyCount = orNothing(COUNT);
const TO_BUY = 'to buy';
const COUNT_OR_BUY: ValueKind<number | null> = {
  ...anyCount,
  show: (count) => (count === null ? TO_BUY : anyCount.show(count)),
  read: (text) => anyCount.read(text.trim() === TO_BUY ? '' : text),
};
const COST = orNothing(numberKind(0, GREATEST_COST, 0.01));

function sectionColumn<Row extends { readonly section: string }>(
  step: string,
  sections: readonly { readonly id: string; readonly name: string }[],
  change: Parameters<typeof choiceColumn<Row>>[0]['change'],
): Column<Row> {
  return choiceColumn<Row>({
    header: 'Section',
    step,
    value: ({ section }) => section,
    choices: () => sections.map(({ id, name }) => ({ value: id, label: shownName(name) })),
    change,
  });
}

const SAWING: readonly { readonly key: keyof Sawing; readonly label: string; readonly first: number }[] = [
  { key: 'kerf', label: 'The saw takes (kerf)', first: FIRST_KERF },
  { key: 'squareOff', label: 'Squared off a stick first', first: 0 },
  { key: 'keepFrom', label: 'Left-over kept from', first: FIRST_KEPT },
];

function AtTheSaw(): ReactNode {
  const stock = useDocument((state) => state.job.stock);
  const sawing = useShop((state) => state.shop.sawing);
  const isShops = SAWING.every(({ key, first }) => (stock?.[key] ?? first) === (sawing?.[key] ?? first));
  const { kerf = FIRST_KERF, squareOff = 0, keepFrom = FIRST_KEPT } = stock ?? {};
  return (
    <>
      <div className="trio">
        {SAWING.map(({ key, label, first }) => (
          <LengthField
            key={key}
            label={label}
            value={stock?.[key] ?? first}
            {...jobEdit<number>('Change how it is sawn', (job, mm) => setSawing(job, { [key]: mm }))}
          />
        ))}
      </div>
      {!isShops && (
        <p>
          <button
            type="button"
            className="press press-quiet"
            onClick={() => shopRecord.getState().change((shop) => ({ ...shop, sawing: { kerf, squareOff, keepFrom } }))}
          >
            Saw every new job so
          </button>
        </p>
      )}
    </>
  );
}

/** A row of the list, by its place. */
interface SpareRow extends Spare {
  readonly at: number;
}

function Spares(): ReactNode {
  const spares = useDocument((state) => state.job.spares);
  const sections = useDocument((state) => state.job.sections);
  const unit = useDocument((state) => state.job.lengthUnit);
  const rows = useMemo(() => spares.map((spare, at): SpareRow => ({ ...spare, at })), [spares]);
  const columns = useMemo(
    (): Column<SpareRow>[] => [
      sectionColumn<SpareRow>('Change a spare', sections, (job, { at }, section) => updateSpare(job, at, { section })),
      lengthColumn<SpareRow>(unit, {
        header: 'Length',
        size: true,
        step: 'Change a spare',
        value: ({ length }) => length,
        change: (job, { at }, length) => updateSpare(job, at, { length }),
      }),
      valueColumn<SpareRow, number>(COUNT, {
        header: 'How many',
        step: 'Change a spare',
        value: ({ count }) => count,
        change: (job, { at }, count) => updateSpare(job, at, { count }),
      }),
      textColumn<SpareRow>({
        header: 'Of batch',
        mayBeEmpty: true,
        step: 'Change a spare',
        value: ({ batch }) => batch ?? '',
        change: (job, { at }, batch) => updateSpare(job, at, { batch }),
      }),
    ],
    [sections, unit],
  );
  const first = sections[0]!.id;
  return (
    <>
      <p className="small">
        Cut beside the tubes: a strut to have in hand, and a piece of each batch to pull and read before the first hoop.
      </p>
      {rows.length > 0 && (
        <EditTable
          caption="Spares and test pieces"
          rows={rows}
          columns={columns}
          rowId={({ at }) => `spare ${at}`}
          rowName={({ length, at }) => `spare ${at + 1}, ${formatLength(length, unit).text} ${unit}`}
        />
      )}
      <p className="row">
        <Command step="Add a spare" run={(job) => addSpare(job, { section: first, length: SPARE, count: 1 })}>
          Add a spare
        </Command>
        <Command quiet step="Test pieces" run={addTestPieces}>
          A test piece of each batch
        </Command>
      </p>
      {rows.length > 0 && (
        <Section title="Delete spares">
          {rows.map(({ at, length }) => (
            <Delete
              key={at}
              id={`spare ${at}`}
              name={`spare ${at + 1}, ${formatLength(length, unit).text} ${unit}`}
              remove={(job) => removeSpare(job, at)}
            />
          ))}
        </Section>
      )}
    </>
  );
}

/** mm: a foot, to begin with. */
const SPARE = 304.8;
