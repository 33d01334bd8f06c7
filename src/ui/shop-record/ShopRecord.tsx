/** What the shop record holds, in plain tables, and what can be done with it as a whole. */
import { useState, type ReactNode } from 'react';
import { sameData } from '../../core/job/equal.ts';
import type { Fault } from '../../core/job/fault.ts';
import { FIRST_MARKING } from '../../core/job/kinds/marking.ts';
import { FIRST_FOOT_TRIM } from '../../core/job/kinds/foot-trim.ts';
import { FIRST_TORCH_ROOM } from '../../core/job/kinds/fitting.ts';
import { GREATEST_BENCH_SAW } from '../../core/job/kinds/tools.ts';
import type { Rates } from '../../core/job/kinds/rates.ts';
import type { Shop } from '../../core/shop/types.ts';
import { FIRST_TORCH_GAP } from '../../core/job/kinds/torch-gap.ts';
import { allThatDiffers } from '../../core/shop/differences.ts';
import { given } from '../../core/shop/exchange.ts';
import { FIRST_SCATTER, GREATEST_SCATTER } from '../../core/job/kinds/scatter.ts';
import { tapeReading, tapesOf } from '../../core/units/tape.ts';
import { FROM, MARKED } from '../../core/words/marks.ts';
import { benderInWords } from '../../core/words/shop.ts';
import { shopRecord, useDocument, useShop } from '../../store/page.ts';
import { LengthField } from '../fields/Fields.tsx';
import { EntryField } from '../fields/EntryField.tsx';
import { deviationKind, numberKind, orNothing } from '../fields/kinds.ts';
import { RateFields } from '../fields/RateFields.tsx';
import { FaultList } from '../kit/FaultList.tsx';
import { Section } from '../kit/Section.tsx';
import { SheetTable } from './SheetTable.tsx';
import { InstrumentTable } from './InstrumentTable.tsx';
import { NotcherTable, SawTable, StickTable } from './ToolTables.tsx';
import { DieTable, PullTable, SectionTable } from './TubeTables.tsx';
import './record.css';

export default function ShopRecord(props: {
  save: () => void;
  /** Lets the person pick a file and puts it in the record's place; calls back with what is wrong with it. */
  pick: (answered: (fileName: string, faults: readonly Fault[]) => void) => void;
}): ReactNode {
  const [refused, setRefused] = useState<{ fileName: string; faults: readonly Fault[] } | null>(null);
  const shop = useShop((state) => state.shop);
  const before = useShop((state) => state.before);
  const { takeFromJob, goBack } = shopRecord.getState();
  return (
    <div className="record">
      <p>
        What stays in the shop whatever job is on the bench. A new job begins with it, and holds from then on all that
        it uses: a change here changes no job that was begun before. A pull that is logged in a job is logged here too,
        once its die and section are here.
      </p>
      <div className="record-keys">
        <FromJob take={takeFromJob} />
        <button type="button" className="press" onClick={props.save}>
          Save as file
        </button>
        <button
          type="button"
          className="press"
          onClick={() =>
            props.pick((fileName, faults) => setRefused(faults.length === 0 ? null : { fileName, faults }))
          }
        >
          Open a file
        </button>
        {before !== null && (
          <button type="button" className="press" onClick={goBack}>
            Put back what was here before
          </button>
        )}
      </div>
      {refused !== null && (
        <section className="notice-warning" role="alert">
          <p>
            <strong>{refused.fileName} was not opened.</strong> The shop record is untouched.
          </p>
          <FaultList faults={refused.faults} />
        </section>
      )}
      <Section title="Dies" count={shop.dies.length} open>
        <DieTable />
      </Section>
      <Section title="Bender" count={shop.bender === undefined ? 0 : 1} open>
        <BenderRows />
      </Section>
      <Section title="Tube sections" count={shop.sections.length} open>
        <SectionTable />
      </Section>
      <Section title="Log of pulls" count={shop.pulls.length} open>
        <PullTable />
      </Section>
      <Section title="Sticks on the rack" count={shop.sticks.reduce((sum, { count }) => sum + count, 0)} open>
        <StickTable />
      </Section>
      <Section title="Notchers" count={shop.notchers.length} open>
        <NotcherTable />
      </Section>
      <Section title="Saws" count={shop.saws.length} open>
        <SawTable />
        <div className="fields">
          <BenchSaw />
        </div>
      </Section>
      <Section title="Instruments" count={shop.instruments.length} open>
        <InstrumentTable />
      </Section>
      <Section title="Rule sheets" count={shop.rules.length} open>
        <SheetTable />
      </Section>
      <Section title="Rates and prices" onlyOpen>
        <ShopRates />
      </Section>
      <Section title="Marks, scatter, torch, feet" open>
        <HabitRows />
        <div className="fields">
          <TorchGap />
          <TorchRoom />
          <FootTrim />
        </div>
      </Section>
    </div>
  );
}

function FromJob({ take }: { take: () => void }): ReactNode {
  const shop = useShop((state) => state.shop);
  const job = useDocument((state) => state.job);
  // Of a job with two machines the second is never the shop's.
  const isMore = !sameData(given(shop, job, allThatDiffers(shop, job)), shop);
  return (
    <>
      <button type="button" className="press press-live" disabled={!isMore} onClick={take}>
        Take this job’s dies, sections and pulls into the shop
      </button>
      {!isMore && <span className="small">The shop has all that this job has.</span>}
    </>
  );
}

function BenderRows(): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const bender = useShop((state) => state.shop.bender);
  if (bender === undefined) {
    return <p className="small">None yet. It is set up with a die in Frame, and taken in from there.</p>;
  }
  return <Rows rows={benderInWords(bender, unit)} />;
}

function HabitRows(): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const { from, mark, fine } = useShop((state) => state.shop.marking ?? FIRST_MARKING);
  const { angle, rotation, mark: place } = useShop((state) => state.shop.scatter ?? FIRST_SCATTER);
  const labelOf = (choices: readonly { value: string; label: string }[], value: string): string =>
    choices.find((choice) => choice.value === value)?.label ?? '';
  return (
    <Rows
      rows={[
        ['marks are taken from', labelOf(FROM, from)],
        ['mark each bend’s', labelOf(MARKED, mark)],
        ['tape in', `${tapeReading(tapesOf(unit)[fine ? 1 : 0], unit, fine).text} ${unit}`],
        ['scatter of a bend, one standard deviation', `${angle}°`],
        ['of a rotation', `${rotation}°`],
        ['of a mark', `${deviationKind(unit, GREATEST_SCATTER).show(place)} ${unit}`],
      ]}
    />
  );
}

/** What a new job is given; jobs that were begun before keep theirs. */
function TorchGap(): ReactNode {
  const torchGap = useShop((state) => state.shop.torchGap ?? FIRST_TORCH_GAP);
  return (
    <LengthField
      label="Torch gap of a new job"
      value={torchGap}
      commit={(value) => shopRecord.getState().change((shop) => ({ ...shop, torchGap: value }))}
    />
  );
}

function TorchRoom(): ReactNode {
  const torchRoom = useShop((state) => state.shop.torchRoom ?? FIRST_TORCH_ROOM);
  return (
    <LengthField
      label="Torch room above a joint"
      value={torchRoom}
      commit={(value) => shopRecord.getState().change((shop) => ({ ...shop, torchRoom: value }))}
    />
  );
}

/** What a cage starter and an end that is put on a foot are given; ends that stand on one already keep theirs. */
function FootTrim(): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const footTrim = useShop((state) => state.shop.footTrim ?? FIRST_FOOT_TRIM[unit]);
  return (
    <LengthField
      label="Left long at a foot"
      value={footTrim}
      commit={(value) => shopRecord.getState().change((shop) => ({ ...shop, footTrim: value }))}
    />
  );
}

/** What a new job is quoted with. */
function ShopRates(): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const rates = useShop((state) => state.shop.rates ?? NO_RATES);
  return (
    <RateFields
      rates={rates}
      unit={unit}
      commit={(_, next) => shopRecord.getState().change(({ rates: _before, ...shop }) => withRates(shop, next))}
    />
  );
}

const NO_RATES: Rates = {};

const withRates = (shop: Shop, rates: Rates): Shop => (sameData(rates, NO_RATES) ? shop : { ...shop, rates });

/** Up to what angle a plain cut at a foot or a mitre is sawn. */
function BenchSaw(): ReactNode {
  const benchSaw = useShop((state) => state.shop.benchSaw ?? null);
  return (
    <EntryField
      label="Bench saw, off square up to"
      unit="°"
      kind={orNothing(numberKind(0, GREATEST_BENCH_SAW, 1))}
      value={benchSaw}
      commit={(value) =>
        shopRecord
          .getState()
          .change(({ benchSaw: _before, ...shop }) => (value === null ? shop : { ...shop, benchSaw: value }))
      }
    />
  );
}

const Rows = ({ rows }: { rows: readonly (readonly [string, string])[] }): ReactNode => (
  <table className="table table-plain record-rows">
    <tbody>
      {rows.map(([label, value]) => (
        <tr key={label}>
          <th scope="row">{label}</th>
          <td>{value}</td>
        </tr>
      ))}
    </tbody>
  </table>
);
