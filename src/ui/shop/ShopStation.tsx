/** Shop: the tubes to make, and for the selected one everything that is set and marked at bender, notcher and tape. */
import { cutOnCarInWords } from '../../core/words/ends.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { massFigure, massUnit, totalMassInWords } from '../../core/units/mass.ts';
import { SAW_GRABS, STRIP, TUBE_WHIPS, WHO_DECIDES } from '../../core/words/cautions.ts';
import { useEffect, useRef, type ReactNode } from 'react';
import type { Derived } from '../../core/derive.ts';
import { feedOf } from '../../core/solve/feed.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useDocument, useEditor, useResults } from '../../store/page.ts';
import { Length } from '../fields/Readings.tsx';
import { useKept } from '../kit/kept.ts';
import { Tabs, type Tab } from '../kit/Tabs.tsx';
import { sectionInWords } from '../../core/job/sizes.ts';
import type { Column } from '../table/columns.tsx';
import { EditTable } from '../table/EditTable.tsx';
import { isNarrow, useNarrow } from '../kit/useNarrow.ts';
import { BentRecord } from '../bending/AsBent.tsx';
import { BentAlready } from '../bending/BentAlready.tsx';
import { BendTable } from './BendTable.tsx';
import { EndRecipe } from './EndRecipe.tsx';
import { errorsOf } from '../../core/checks/faults.ts';
import { KeptOrder } from '../bending/KeptOrder.tsx';
import { PullLog, usePullDrafts, type PullDrafts } from './PullLog.tsx';
import { Rehearse } from './Rehearse.tsx';
import { RunOut } from './RunOut.tsx';
import ShopBench from './ShopBench.tsx';
import { Slips } from './Slips.tsx';
import { TakeAway } from './TakeAway.tsx';
import { TapeMarks } from './TapeMarks.tsx';
import { MADE_COLUMN, MadeSoFar } from './MadeSoFar.tsx';
import { ToMakeKey } from './ToMakeKey.tsx';
import { ToolsNote } from './ToolsNote.tsx';
import { TubeFacts, TubeHead } from './TubeHead.tsx';
import { WastePaper } from './WastePaper.tsx';
import { useToBeBent } from '../bending/useToBeBent.ts';
import { useFeed } from '../bending/useFeed.ts';
import { useTaking, type Taking } from './useTaking.ts';
import '../kit/ui.css';
import '../kit/draw.css';
import './shop.css';

export default function ShopStation(): ReactNode {
  const derived = useDocument((state) => state.derived);
  const selection = useEditor((state) => state.selection);
  const select = useEditor((state) => state.select);
  const first = derived.tubes[0];
  const tube = selection?.kind === 'tube' ? derived.byId.get(selection.id) : undefined;

  const [part, show] = useKept('shop-part', readPart);
  // Held here: whoever looks at another part meanwhile finds how far the files are, and can still stop them; and a pull half typed.
  const taking = useTaking();
  const typed = usePullDrafts();
  const head = useRef<HTMLDivElement>(null);
  // Whoever comes into the shop stands before some tube; what is chosen after that is the person's own affair.
  const entered = useRef(false);
  useEffect(() => {
    if (!entered.current && tube === undefined && first !== undefined) select({ kind: 'tube', id: first.id });
    entered.current = true;
  }, [tube, first, select]);

  if (first === undefined) {
    return (
      <div className="station">
        <p className="empty">
          <strong>No tubes yet.</strong> Draw the first member in Frame: two nodes and a section are enough, and its cut
          length stands here.
        </p>
      </div>
    );
  }
  return (
    <div className="station">
      <ToMakeKey />
      <div ref={head}>{tube && <TubeHead tube={tube} />}</div>
      <Tabs label="Parts of the Shop" tabs={PARTS} shown={part} onShow={show}>
        <Part
          part={part}
          tube={tube}
          taking={taking}
          typed={typed}
          // On a telephone the list lies below the head: that is brought up, once it is drawn.
          chosen={() => isNarrow() && requestAnimationFrame(() => head.current?.scrollIntoView({ block: 'start' }))}
        />
      </Tabs>
      {part !== 'files' && (
        <p className="small">
          Print next, under Files: the sheets, one a tube, for saw and bender; then the wraps at 100 %, for the ends
          that are coped.
        </p>
      )}
      <p className="caution">{`${WHO_DECIDES} ${STRIP} ${SAW_GRABS} ${TUBE_WHIPS}`}</p>
    </div>
  );
}

const PARTS = [
  { name: 'tubes', title: 'Tubes' },
  { name: 'ends', title: 'Ends' },
  { name: 'marks', title: 'Marks' },
  { name: 'bending', title: 'Bending' },
  { name: 'pulls', title: 'Pulls' },
  { name: 'files', title: 'Files' },
] as const satisfies readonly Tab<string>[];
type PartName = (typeof PARTS)[number]['name'];

/** Which part was looked at last: whoever marks one tube after another finds the next one's marks. */
const readPart = (kept: unknown): PartName => PARTS.find(({ name }) => name === kept)?.name ?? 'tubes';

/** What is of no tube comes first; the others need one. */
function Part(props: {
  part: PartName;
  tube: SolvedTube | undefined;
  taking: Taking;
  typed: PullDrafts;
  chosen: () => void;
}): ReactNode {
  const { part, tube, taking, typed, chosen } = props;
  switch (part) {
    case 'tubes':
      return <Tubes selected={tube} chosen={chosen} />;
    case 'pulls':
      return <PullLog tube={tube} typed={typed} />;
    case 'files':
      return <TakeAway taking={taking} />;
    default:
      return tube === undefined ? (
        <p className="empty">Choose a tube, in the list under Tubes or in the bay.</p>
      ) : (
        <PartOfTube part={part} tube={tube} />
      );
  }
}

function PartOfTube({ part, tube }: { part: 'ends' | 'marks' | 'bending'; tube: SolvedTube }): ReactNode {
  const narrow = useNarrow();
  const plan = useToBeBent(tube);
  const onCar = cutOnCarInWords(tube);
  const isBent = tube.bends.length > 0;
  switch (part) {
    case 'ends':
      return (
        <>
          <ToolsNote />
          {onCar !== null && <p className="notice-warning">{onCar}</p>}
          <EndRecipe tube={tube} which={0} />
          <EndRecipe tube={tube} which={1} />
          {narrow && <ShopBench />}
          <TubeFacts tube={tube} />
        </>
      );
    case 'marks':
      return isBent ? (
        <>
          <TapeMarks tube={plan} />
          <Slips tube={plan} />
        </>
      ) : (
        <p className="empty">A straight tube has no bends to mark.</p>
      );
    case 'bending':
      return isBent ? (
        <>
          <BentRecord tube={tube} />
          <BentAlready tube={plan} />
          <BendTable tube={plan} />
          <RunOut tube={plan} />
          <Rehearse tube={plan} />
        </>
      ) : (
        <>
          <p className="empty">A straight tube: nothing to bend.</p>
          <KeptOrder tube={tube} />
        </>
      );
  }
}

function Tubes({ selected, chosen }: { selected: SolvedTube | undefined; chosen: () => void }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const select = useEditor((state) => state.select);
  return (
    <>
      <Totals derived={derived} />
      <WastePaper />
      {selected && <MadeSoFar tube={selected} />}
      <EditTable
        caption="Tubes in build order"
        rows={derived.tubes}
        columns={COLUMNS_IN[derived.job.lengthUnit]}
        rowId={(row) => row.id}
        rowName={(row) => row.name}
        selected={selected?.id ?? null}
        onSelect={(row) => {
          select({ kind: 'tube', id: row.id });
          chosen();
        }}
      />
    </>
  );
}

const TUBE_COLUMNS: readonly Column<SolvedTube>[] = [
  { header: 'No.', numeric: true, show: (tube) => <span className="number-tag">{tube.number}</span> },
  {
    header: 'Tube',
    show: (tube) => (
      <>
        {tube.name}
        <SectionSize tube={tube} />
      </>
    ),
  },
  { header: 'Blank', numeric: true, show: (tube) => <Blank tube={tube} /> },
];

const massColumn = (unit: LengthUnit): Column<SolvedTube> => ({
  header: massUnit(unit),
  numeric: true,
  show: (tube) => <span className="figure">{massFigure(tube.mass, unit)}</span>,
});
const COLUMNS_IN: Readonly<Record<LengthUnit, readonly Column<SolvedTube>[]>> = {
  in: [...TUBE_COLUMNS, massColumn('in'), MADE_COLUMN],
  mm: [...TUBE_COLUMNS, massColumn('mm'), MADE_COLUMN],
};

function SectionSize({ tube }: { tube: SolvedTube }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  return <span className="small under">{sectionInWords(tube.section, unit)}</span>;
}

/** A tube that should not be cut says so where its length is looked up. */
function Blank({ tube }: { tube: SolvedTube }): ReactNode {
  const off = useResults((state) => errorsOf(state.findings, tube.id).length > 0);
  const { cutLength } = useFeed(tube);
  return off ? <span className="blank-off">× not yet</span> : <Length mm={cutLength} />;
}

function Totals({ derived: { job, tubes } }: { derived: Derived }): ReactNode {
  const sum = (of: (tube: SolvedTube) => number): number => tubes.reduce((total, tube) => total + of(tube), 0);
  return (
    <p className="totals">
      <strong>{tubes.length}</strong> {tubes.length === 1 ? 'tube' : 'tubes'}, blanks end to end{' '}
      <strong>
        <Length mm={sum((tube) => feedOf(job, tube).cutLength)} withUnit />
      </strong>
      ,{' '}
      <strong>
        {totalMassInWords(
          sum((tube) => tube.mass),
          job.lengthUnit,
        )}
      </strong>{' '}
      coped
    </p>
  );
}
