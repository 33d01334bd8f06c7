/** What a job takes over: dies, sections, and the log of pulls by die and section. */
import type { ReactNode } from 'react';
import type { Section } from '../../core/job/kinds/section.ts';
import { shownName } from '../../core/job/shown.ts';
import type { ShopDie } from '../../core/shop/kinds/die.ts';
import { steelInWords } from '../../core/springback/steels.ts';
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
  return (
    <div className="record-scroll">
      <table className="table table-plain">
        <caption className="spoken-only">Pulls by die and section</caption>
        <thead>
          <tr>
            <th scope="col">Die</th>
            <th scope="col">Section</th>
            <th scope="col" className="number">
              Pulls
            </th>
            <th scope="col" className="number">
              Finished angles
            </th>
          </tr>
        </thead>
        <tbody>
          {pairs.map(({ die, section }) => {
            const those = pulls.filter((pull) => pull.die === die && pull.section === section);
            const angles = those.map(({ net }) => net);
            const [least, most] = [Math.min(...angles), Math.max(...angles)];
            return (
              <tr key={JSON.stringify([die, section])}>
                <th scope="row">{named(dies, die)}</th>
                <td>{named(sections, section)}</td>
                <td className="number">{those.length}</td>
                <td className="number">{least === most ? `${least}°` : `${least}° to ${most}°`}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
