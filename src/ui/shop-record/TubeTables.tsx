/** What a job takes over: dies, sections, and the log of pulls by die and section. */
import { useState, type ReactNode } from 'react';
import type { Pull } from '../../core/job/kinds/pull.ts';
import type { Section } from '../../core/job/kinds/section.ts';
import { shownName } from '../../core/job/shown.ts';
import type { ShopDie } from '../../core/shop/kinds/die.ts';
import { steelInWords } from '../../core/springback/steels.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { useShop } from '../../store/page.ts';
import { LimitLength } from '../fields/Readings.tsx';
import { RecordTable, type Column } from './RecordTable.tsx';

const DIE_COLUMNS: readonly Column<ShopDie>[] = [
  { title: 'Die', show: ({ name }) => shownName(name) },
  { title: 'For tube, OD', isNumber: true, show: ({ outerDiameter }) => <LimitLength mm={outerDiameter} /> },
  { title: 'CLR', isNumber: true, show: ({ centrelineRadius }) => <LimitLength mm={centrelineRadius} /> },
  { title: 'Clamp before', isNumber: true, show: ({ clampOffset }) => <LimitLength mm={clampOffset} /> },
  { title: 'Up to', isNumber: true, show: ({ greatestAngle }) => `${greatestAngle}°` },
];

export function DieTable(): ReactNode {
  const dies = useShop((state) => state.shop.dies);
  return (
    <RecordTable
      caption="Dies of the shop"
      list="dies"
      records={dies}
      nameOf={({ name }) => `die ${shownName(name)}`}
      columns={DIE_COLUMNS}
    />
  );
}

const SECTION_COLUMNS: readonly Column<Section>[] = [
  { title: 'Section', show: ({ name }) => shownName(name) },
  { title: 'OD', isNumber: true, show: ({ outerDiameter }) => <LimitLength mm={outerDiameter} /> },
  { title: 'Wall', isNumber: true, show: ({ wall }) => <LimitLength mm={wall} /> },
  { title: 'Material', show: (section) => steelInWords(section) || '–' },
  {
    title: 'Sticks of',
    isNumber: true,
    show: ({ stick }) => (stick === undefined ? '–' : <LimitLength mm={stick} />),
  },
];

export function SectionTable(): ReactNode {
  const sections = useShop((state) => state.shop.sections);
  return (
    <RecordTable
      caption="Sections of the shop"
      list="sections"
      records={sections}
      nameOf={({ name }) => `section ${shownName(name)}`}
      columns={SECTION_COLUMNS}
    />
  );
}

export function PullTable(): ReactNode {
  const { pulls, dies, sections } = useShop((state) => state.shop);
  if (pulls.length === 0) return <p className="small">None yet.</p>;
  const named = (list: readonly { id: string; name: string }[], id: string): string =>
    shownName(list.find((record) => record.id === id)?.name ?? id);
  const pairs = pulls.filter(
    ({ die, section }, at) => pulls.findIndex((pull) => pull.die === die && pull.section === section) === at,
  );
  return pairs.map(({ die, section }) => (
    <PullsOf
      key={JSON.stringify([die, section])}
      called={`${named(dies, die)}, tube ${named(sections, section)}`}
      pulls={pulls}
      places={pulls.flatMap((pull, at) => (pull.die === die && pull.section === section ? [at] : []))}
    />
  ));
}

/** Folded: a log may be long. Each pull can be taken out by itself, such as one that was misread. */
function PullsOf(props: { called: string; pulls: readonly Pull[]; places: readonly number[] }): ReactNode {
  const { called, pulls, places } = props;
  const [open, setOpen] = useState(false);
  const those = places.map((at) => pulls[at]!);
  const angles = those.map(({ net }) => net);
  const [least, most] = [Math.min(...angles), Math.max(...angles)];
  return (
    <details className="record-pulls" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <strong>{called}</strong>: {those.length} {those.length === 1 ? 'pull' : 'pulls'}, finished angles{' '}
        {least === most ? `${least}°` : `${least}° to ${most}°`}
      </summary>
      {open && (
        <RecordTable
          caption={`Pulls of ${called}`}
          list="pulls"
          records={those}
          places={places}
          nameOf={({ pulled, net }) => `the pull to ${pulled}° that came out as ${net}°`}
          columns={PULL_COLUMNS}
        />
      )}
    </details>
  );
}

const PULL_COLUMNS: readonly Column<Pull>[] = [
  { title: 'Pulled', show: ({ pulled }) => `${pulled}°` },
  { title: 'Finished', isNumber: true, show: ({ net }) => `${net}°` },
  { title: 'Opened by', isNumber: true, show: ({ pulled, net }) => `${formatAngle(pulled - net, 1)}°` },
  { title: 'Day', show: ({ on }) => on || '–' },
  { title: 'Batch', show: ({ batch }) => shownName(batch ?? '') || '–' },
];
