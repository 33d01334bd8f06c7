/**
 * A table whose every number is edited where it stands. A cell has focus or has its field open: arrows move the focus,
 * Enter, F2 or a second press opens the field, and so does typing. In a field, Enter commits and goes down, Tab commits
 * and goes on, Escape gives the old value back. A block copied from a spreadsheet is pasted from the focused cell on, as
 * one undo step; every cell that was refused is named. Where rows can be marked, Space marks the row, Shift with an arrow or a press the rows
 * up to there, Ctrl with a press one more, Ctrl + A all; on a touch screen the boxes do, which stand there while marking is on.
 */
import { shownName } from '../../core/job/shown.ts';
import {
  useCallback,
  useEffect,
  useRef,
  useState,
  type ClipboardEvent,
  type KeyboardEvent,
  type ReactNode,
} from 'react';
import { useDocument } from '../../store/page.ts';
import type { Leaving, Note } from '../fields/EntryField.tsx';
import { placeBlock } from './block.ts';
import { editIn, type Column } from './columns.tsx';
import type { Marks } from './marks.ts';
import { MoreRows } from './MoreRows.tsx';
import { TableRow, widthInLine, type Cell, type Hands, type OpenCell } from './TableRow.tsx';
import { readBlock } from './paste.ts';

interface EditTableProps<Row> {
  /** Spoken before the table is entered. */
  readonly caption: string;
  readonly rows: readonly Row[];
  readonly columns: readonly Column<Row>[];
  rowId(row: Row): string;
  rowName(row: Row): string;
  readonly selected?: string | null;
  /** A table of more columns than the panel is wide sets each row in two lines, this many columns in the first. */
  readonly firstLine?: number;
  /** Set a little smaller and closer: a column more than the panel would hold. */
  readonly tight?: boolean;
  /** Absent: its rows cannot be marked. */
  readonly marks?: Marks;
  onSelect?(row: Row): void;
}

export function EditTable<Row>(props: EditTableProps<Row>): ReactNode {
  const { rows, columns, selected = null, firstLine, marks } = props;
  const [active, setActive] = useState<Cell>({ row: 0, column: 0 });
  const [open, setOpen] = useState<OpenCell | null>(null);
  const [note, setNote] = useState<Note | null>(null);
  const [refusals, setRefusals] = useState<readonly string[]>([]);
  const list = useRef<HTMLDivElement>(null);
  const body = useRef<HTMLTableSectionElement>(null);
  const edit = useDocument((state) => state.edit);

  const selectedRow = rows.findIndex((row) => props.rowId(row) === selected);
  useEffect(() => {
    if (selectedRow >= 0) showWithin(body.current?.rows[selectedRow]);
  }, [selectedRow]);

  const boxes = marks?.on ? 1 : 0;
  const focusCell = (row: number, column: number): void => body.current?.rows[row]?.cells[column + boxes]?.focus();
  const idsBetween = (a: number, b: number): readonly string[] =>
    rows.slice(Math.min(a, b), Math.max(a, b) + 1).map((row) => props.rowId(row));

  function moveTo(row: number, column: number): void {
    const to = { row: clamp(row, rows.length), column: clamp(column, columns.length) };
    setActive(to);
    focusCell(to.row, to.column);
  }

  function openCell(cell: OpenCell): void {
    if (editIn(columns[cell.column], rows[cell.row]!) === undefined) return;
    setRefusals([]);
    setNote(null);
    setOpen(cell);
  }

  function leave(cell: Cell, how: Leaving): void {
    setOpen((now) => (now?.row === cell.row && now.column === cell.column ? null : now));
    if (how === 'blur') return;
    if (how === 'escape') setNote(null);
    const on = cell.row * columns.length + cell.column + (how === 'tab' ? 1 : how === 'back-tab' ? -1 : 0);
    // The cell takes focus again once its field is gone.
    requestAnimationFrame(() => {
      if (how === 'enter') moveTo(cell.row + 1, cell.column);
      else if (on < 0 || on >= rows.length * columns.length) moveTo(cell.row, cell.column);
      else moveTo(Math.floor(on / columns.length), on % columns.length);
    });
  }

  function onKeyDown(event: KeyboardEvent, cell: Cell): void {
    if (event.target !== event.currentTarget || event.altKey) return;
    if (marks !== undefined && markingKey(event, cell, marks)) {
      event.preventDefault();
      event.stopPropagation();
      return;
    }
    if (event.ctrlKey || event.metaKey) return;
    const move = MOVES[event.key];
    if (move !== undefined) {
      event.preventDefault();
      event.stopPropagation();
      moveTo(cell.row + move[0], cell.column + move[1]);
    } else if (event.key === 'Tab') {
      const column = cell.column + (event.shiftKey ? -1 : 1);
      // Past the row's last cell Tab leaves the table, so that it never traps.
      if (column < 0 || column >= columns.length) return;
      event.preventDefault();
      moveTo(cell.row, column);
    } else if (event.key === 'Enter' || event.key === 'F2') {
      event.preventDefault();
      openCell(cell);
    } else if (event.key.length === 1 && event.key !== ' ') {
      event.preventDefault();
      event.stopPropagation();
      openCell({ ...cell, startWith: event.key });
    }
  }

  /** Whether the key was one that marks. */
  function markingKey(event: KeyboardEvent, cell: Cell, { marked, toggle, add, clear }: Marks): boolean {
    const { key } = event;
    if (event.ctrlKey || event.metaKey) {
      if (key.toLowerCase() !== 'a') return false;
      add(idsBetween(0, rows.length - 1));
    } else if (key === ' ') {
      toggle(props.rowId(rows[cell.row]!));
    } else if (event.shiftKey && (key === 'ArrowUp' || key === 'ArrowDown')) {
      const to = clamp(cell.row + (key === 'ArrowUp' ? -1 : 1), rows.length);
      add(idsBetween(cell.row, to));
      moveTo(to, cell.column);
    } else if (key === 'Escape' && marked.size > 0) {
      clear();
    } else return false;
    return true;
  }

  function onPaste(event: ClipboardEvent): void {
    const text = event.clipboardData.getData('text/plain');
    // One value pasted into an open field is that field's own affair.
    if (open !== null && !/[\t\r\n]/u.test(text)) return;
    event.preventDefault();
    const from = open ?? active;
    setOpen(null);
    const outcome = placeBlock(
      {
        rowNames: rows.map((row) => shownName(props.rowName(row))),
        headers: columns.map((column) => column.header),
        read: (row, column, cell) => editIn(columns[column], rows[row]!)?.paste(rows[row]!, cell) ?? null,
      },
      from.row,
      from.column,
      readBlock(text),
    );
    const faults = outcome.cells === 0 ? [] : edit(`Paste ${outcome.cells} cells`, outcome.change);
    setNote(null);
    setRefusals([...faults.map((fault) => `Nothing pasted: ${fault.message}`), ...outcome.refusals]);
  }

  const keepNote = useCallback(
    (next: Note | null) => setNote((now) => (next === null && now?.refused ? now : next)),
    [],
  );

  const hands = useRef<Hands | null>(null);
  hands.current = {
    take(cell) {
      setActive(cell);
      if (cell.row !== selectedRow) props.onSelect?.(rows[cell.row]!);
    },
    pressAgain(cell) {
      // Escape dropped the selection and left the focus here: the press then selects the row again.
      if (props.onSelect && cell.row !== selectedRow) props.onSelect(rows[cell.row]!);
      else openCell(cell);
    },
    leave,
    keyDown: onKeyDown,
    mark(row, upTo) {
      if (upTo) marks?.add(idsBetween(active.row, row));
      else marks?.toggle(props.rowId(rows[row]!));
    },
    note: keepNote,
  };
  // Rows that went away took the focusable cell with them: the first one stands in.
  const tabStop = active.row < rows.length ? active : { row: 0, column: 0 };

  return (
    <div className="table-frame">
      <div ref={list} className="table-scroll" onPaste={onPaste}>
        <table
          role="grid"
          aria-label={props.caption}
          aria-multiselectable={marks !== undefined}
          className={`table${firstLine === undefined ? '' : ' table-two-lines'}${props.tight ? ' table-tight' : ''}`}
        >
          <thead>
            <tr>
              {marks?.on && (
                <th scope="col" className="mark-cell">
                  <span className="spoken-only">Marked</span>
                </th>
              )}
              {columns.map((column, index) => (
                <th
                  key={column.header}
                  scope="col"
                  className={column.numeric ? 'number' : undefined}
                  style={widthInLine(index, columns.length, firstLine)}
                >
                  {column.header}
                  {column.means && <span className="table-means">{column.means}</span>}
                </th>
              ))}
            </tr>
          </thead>
          <tbody ref={body}>
            {rows.map((row, index) => {
              const isOpen = open?.row === index;
              return (
                <TableRow
                  key={props.rowId(row)}
                  id={props.rowId(row)}
                  marked={marks?.on ? marks.marked.has(props.rowId(row)) : undefined}
                  row={row}
                  index={index}
                  name={shownName(props.rowName(row))}
                  columns={columns}
                  firstLine={firstLine}
                  chosen={index === selectedRow}
                  tabStop={tabStop.row === index ? tabStop.column : null}
                  open={isOpen ? open : null}
                  note={isOpen ? note : null}
                  canMark={marks !== undefined}
                  hands={hands}
                />
              );
            })}
          </tbody>
        </table>
      </div>
      <MoreRows list={list} count={rows.length} />
      <Refusals lines={note?.refused && open === null ? [note.text] : refusals} />
    </div>
  );
}

/** Scrolls the list's own box only, so that the panel stays where it is. */
function showWithin(row: HTMLTableRowElement | undefined): void {
  const box = row?.closest('.scroll-box, .table-scroll');
  if (!row || !box) return;
  const head = row.closest('table')?.tHead?.offsetHeight ?? 0;
  const [seen, shown] = [row.getBoundingClientRect(), box.getBoundingClientRect()];
  if (seen.top < shown.top + head) box.scrollTop -= shown.top + head - seen.top;
  else if (seen.bottom > shown.bottom) box.scrollTop += seen.bottom - shown.bottom;
}

const MOVES: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

const clamp = (index: number, count: number): number => Math.max(0, Math.min(index, count - 1));

/** What was not taken, cell by cell; stays in view at the foot of the list until the next cell is opened. */
function Refusals({ lines }: { lines: readonly string[] }): ReactNode {
  if (lines.length === 0) return null;
  return (
    <div className="refusals" role="alert">
      {lines.map((line) => (
        <p key={line}>
          <span aria-hidden="true">▲ </span>
          {line}
        </p>
      ))}
    </div>
  );
}
