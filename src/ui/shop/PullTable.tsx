/** The pulls that were logged, every entry edited where it stands. */
import { useMemo, type ReactNode } from 'react';
import { removePull, updatePull } from '../../core/edit/pulls.ts';
import type { Pull } from '../../core/job/kinds/pull.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { Command } from '../kit/Command.tsx';
import { bendAngleColumn, dayColumn, textColumn, type Column } from '../table/columns.tsx';
import { EditTable } from '../table/EditTable.tsx';

export interface LoggedPull {
  readonly pull: Pull;
  /** In the whole log: what names it. */
  readonly index: number;
}

interface Row extends LoggedPull {
  /** Counted from 1 in this list. */
  readonly number: number;
  readonly doubted: boolean;
}

const STEP = 'Change a pull';

/** `doubted`: indices in `logged` of those that cannot be right as they stand, with commas between. */
export function PullTable(props: { logged: readonly LoggedPull[]; doubted: string; caption: string }): ReactNode {
  const { logged, doubted } = props;
  const rows = useMemo((): readonly Row[] => {
    const inDoubt = new Set(doubted.split(','));
    return logged.map((one, at) => ({ ...one, number: at + 1, doubted: inDoubt.has(String(at)) }));
  }, [logged, doubted]);
  return (
    <EditTable
      caption={`Pulls, ${props.caption}`}
      rows={rows}
      columns={COLUMNS}
      firstLine={4}
      rowId={({ index }) => String(index)}
      rowName={({ number }) => `pull ${number}`}
    />
  );
}

const COLUMNS: readonly Column<Row>[] = [
  {
    header: 'Pull',
    show: ({ number, doubted }) => (
      <span className={doubted ? 'notice-warning' : undefined}>
        {doubted && <span aria-label="in doubt">▲ </span>}
        {number}
      </span>
    ),
  },
  bendAngleColumn<Row>({
    header: 'Pulled',
    step: STEP,
    value: ({ pull }) => pull.pulled,
    change: (job, { index }, pulled) => updatePull(job, index, { pulled }),
  }),
  bendAngleColumn<Row>({
    header: 'Finished',
    step: STEP,
    value: ({ pull }) => pull.net,
    change: (job, { index }, net) => updatePull(job, index, { net }),
  }),
  {
    header: 'Opened by',
    numeric: true,
    show: ({ pull }) => <span className="figure">{`${formatAngle(pull.pulled - pull.net, 1)}°`}</span>,
  },
  dayColumn<Row>({
    header: 'Day',
    step: STEP,
    value: ({ pull }) => pull.on,
    change: (job, { index }, on) => updatePull(job, index, { on }),
  }),
  textColumn<Row>({
    header: 'Batch',
    mayBeEmpty: true,
    step: STEP,
    value: ({ pull }) => pull.batch ?? '',
    change: (job, { index }, batch) => updatePull(job, index, { batch }),
  }),
  {
    header: 'Delete',
    numeric: true,
    show: ({ index, number }) => (
      <Command
        quiet
        destroys={String(index)}
        step="Delete a pull"
        label={`Delete pull ${number}`}
        run={(job) => removePull(job, index)}
      >
        ×
      </Command>
    ),
  },
];
