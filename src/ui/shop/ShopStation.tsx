/** Shop: the tubes to make, and for the selected one everything that is set and marked at bender, notcher and tape. */
import { useEffect, useRef, type ReactNode } from 'react';
import type { Derived } from '../../core/derive.ts';
import { feedOf } from '../../core/solve/feed.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useWorkspace } from '../../store/workspace.ts';
import { Length } from '../fields/Readings.tsx';
import { Section } from '../kit/Section.tsx';
import { sectionInWords } from '../../core/job/sizes.ts';
import type { Column } from '../table/columns.tsx';
import { EditTable } from '../table/EditTable.tsx';
import { isNarrow, useNarrow } from '../kit/useNarrow.ts';
import { BendKey, BentRecord } from '../bending/AsBent.tsx';
import { BendTable } from './BendTable.tsx';
import { EndRecipe } from './EndRecipe.tsx';
import { errorsOf } from '../../core/checks/faults.ts';
import { KeptOrder } from '../bending/KeptOrder.tsx';
import { PullLog } from './PullLog.tsx';
import { Rehearse } from './Rehearse.tsx';
import { RunOut } from './RunOut.tsx';
import ShopBench from './ShopBench.tsx';
import { Slips } from './Slips.tsx';
import { TakeAway } from './TakeAway.tsx';
import { TapeMarks } from './TapeMarks.tsx';
import { TubeFacts, TubeHead } from './TubeHead.tsx';
import { useFeed } from '../bending/useFeed.ts';
import '../kit/ui.css';
import '../bending/shop.css';

export default function ShopStation(): ReactNode {
  const derived = useWorkspace((state) => state.derived);
  const selection = useWorkspace((state) => state.selection);
  const select = useWorkspace((state) => state.select);
  const first = derived.tubes[0];
  const tube = selection?.kind === 'tube' ? derived.byId.get(selection.id) : undefined;

  const narrow = useNarrow();
  const sheet = useRef<HTMLElement>(null);

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
      <Totals derived={derived} />
      <EditTable
        caption="Tubes in build order"
        rows={derived.tubes}
        columns={TUBE_COLUMNS}
        rowId={(row) => row.id}
        rowName={(row) => row.name}
        selected={tube?.id ?? null}
        onSelect={(row) => {
          select({ kind: 'tube', id: row.id });
          // On a telephone the sheet lies below the list: it is brought up, once it is drawn.
          if (isNarrow()) requestAnimationFrame(() => sheet.current?.scrollIntoView({ block: 'start' }));
        }}
      />
      {tube && (
        <article ref={sheet} className="card" aria-label={`Tube ${tube.number}, ${tube.name}`}>
          <TubeHead tube={tube} />
          <BendKey tube={tube} />
          {narrow ? (
            <>
              <Ends tube={tube} />
              <ShopBench />
              <Bends tube={tube} />
              <TubeFacts tube={tube} />
            </>
          ) : (
            <>
              <TubeFacts tube={tube} />
              <Bends tube={tube} />
              <Ends tube={tube} />
            </>
          )}
        </article>
      )}
      {tube && <Rehearse tube={tube} />}
      <PullLog tube={tube} />
      <Section title="Files to take away" open>
        <TakeAway />
      </Section>
      <p className="caution">
        Rule book, inspector and licensed practice decide. Strip zinc, paint and sealer before welding; batteries off. A
        hole saw grabs at odd angles. A long tube whips when it is bent.
      </p>
    </div>
  );
}

const Ends = ({ tube }: { tube: SolvedTube }): ReactNode => (
  <>
    <EndRecipe tube={tube} which={0} />
    <EndRecipe tube={tube} which={1} />
  </>
);

const Bends = ({ tube }: { tube: SolvedTube }): ReactNode =>
  tube.bends.length === 0 ? (
    <KeptOrder tube={tube} />
  ) : (
    <>
      <BentRecord tube={tube} />
      <RunOut tube={tube} />
      <BendTable tube={tube} />
      <TapeMarks tube={tube} />
      <Slips tube={tube} />
    </>
  );

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
  { header: 'kg', numeric: true, show: (tube) => <span className="figure">{tube.mass.toFixed(2)}</span> },
];

function SectionSize({ tube }: { tube: SolvedTube }): ReactNode {
  const unit = useWorkspace((state) => state.job.lengthUnit);
  return <span className="small under">{sectionInWords(tube.section, unit)}</span>;
}

/** A tube that should not be cut says so where its length is looked up. */
function Blank({ tube }: { tube: SolvedTube }): ReactNode {
  const off = useWorkspace((state) => errorsOf(state.derived.findings, tube.id).length > 0);
  const { cutLength } = useFeed(tube);
  return off ? <span className="blank-off">× not yet</span> : <Length mm={cutLength} parts={32} />;
}

function Totals({ derived: { job, tubes } }: { derived: Derived }): ReactNode {
  const sum = (of: (tube: SolvedTube) => number): number => tubes.reduce((total, tube) => total + of(tube), 0);
  return (
    <dl className="totals">
      <div>
        <dt>Tubes</dt>
        <dd className="figure">{tubes.length}</dd>
      </div>
      <div>
        <dt>Blanks, end to end</dt>
        <dd>
          <Length mm={sum((tube) => feedOf(job, tube).cutLength)} parts={32} withUnit />
        </dd>
      </div>
      <div>
        <dt>Mass, coped</dt>
        <dd className="figure">
          {sum((tube) => tube.mass).toFixed(1)}
          <span className="figure-unit"> kg</span>
        </dd>
      </div>
    </dl>
  );
}
