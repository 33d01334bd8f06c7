/** Rule sheets that the shop keeps for other jobs; Checks puts them there, and offers them. */
import type { ReactNode } from 'react';
import type { RuleSheet } from '../../core/job/kinds/rule-sheet.ts';
import { sheetInWords } from '../../core/words/rule-book.ts';
import { useShop } from '../../store/page.ts';
import { RecordTable, type Column } from './RecordTable.tsx';

const COLUMNS: readonly Column<RuleSheet>[] = [
  { title: 'Sheet', show: sheetInWords },
  { title: 'Articles', isNumber: true, show: ({ checks }) => checks.length },
  { title: 'Gone through', show: ({ on }) => on },
];

export function SheetTable(): ReactNode {
  const rules = useShop((state) => state.shop.rules);
  return (
    <RecordTable
      caption="Rule sheets of the shop"
      list="rules"
      records={rules}
      nameOf={sheetInWords}
      columns={COLUMNS}
    />
  );
}
