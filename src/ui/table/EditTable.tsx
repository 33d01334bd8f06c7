/**
 * A table whose every number is edited where it stands. A cell has focus or has its field open: arrows move the focus,
 * Enter, F2 or a second press opens the field, and so does typing. In a field, Enter commits and goes down, Tab commits
 * and goes on, Escape gives the old value back. A block copied from a spreadsheet is pasted from the focused cell on, as
 * one undo step; every cell that was refused is named.
 *
 * A row is drawn again only when its record, its columns or what stands open in it changes: a drag in the bay previews
 * many times a second, and a long list must not be drawn anew for each.
 */
import { shownName } from '../../core/job/shown.ts';
import {
  memo,
  useCallback,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
  type ClipboardEvent,
  type CSSProperties,
  type KeyboardEvent,
  type ReactNode,
  type RefObject,
} from 'react';
import { useDocument } from '../../store/page.ts';
import type { Leaving, Note } from '../fields/EntryField.tsx';
import { placeBlock } from './block.ts';
import type { Column } from './columns.tsx';
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
  onSelect?(row: Row): void;
}

interface Cell {
  readonly row: number;
  readonly column: number;
}

interface OpenCell extends Cell {
  readonly startWith?: string;
}

/** What a row's cells call; the latest are held by reference, so that a row need not be drawn anew for them. */
interface Hands {
  take(cell: Cell): void;
  pressAgain(cell: Cell): void;
  leave(cell: Cell, how: Leaving): void;
  keyDown(event: KeyboardEvent, cell: Cell): void;
  note(next: Note | null): void;
}

export function EditTable<Row>(props: EditTableProps<Row>): ReactNode {
  const { rows, columns, selected = null, firstLine } = props;
  const [active, setActive] = useState<Cell>({ row: 0, column: 0 });
  const [open, setOpen] = useState<OpenCell | null>(null);
  const [note, setNote] = useState<Note | null>(null);
  const [refusals, setRefusals] = useState<readonly string[]>([]);
  const body = useRef<HTMLTableSectionElement>(null);
  const edit = useDocument((state) => state.edit);

  const selectedRow = rows.findIndex((row) => props.rowId(row) === selected);
  useEffect(() => {
    if (selectedRow >= 0) showWithin(body.current?.rows[selectedRow]);
  }, [selectedRow]);

  const focusCell = (row: number, column: number): void => body.current?.rows[row]?.cells[column]?.focus();

  function moveTo(row: number, column: number): void {
    const to = { row: clamp(row, rows.length), column: clamp(column, columns.length) };
    setActive(to);
    focusCell(to.row, to.column);
  }

  function openCell(cell: OpenCell): void {
    if (columns[cell.column]?.edit === undefined) return;
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
    if (event.target !== event.currentTarget || event.ctrlKey || event.metaKey || event.altKey) return;
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
        read: (row, column, cell) => columns[column]?.edit?.paste(rows[row]!, cell) ?? null,
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
    note: keepNote,
  };
  // Rows that went away took the focusable cell with them: the first one stands in.
  const tabStop = active.row < rows.length ? active : { row: 0, column: 0 };

  return (
    <div className="table-frame">
      <div className="table-scroll" onPaste={onPaste}>
        <table
          role="grid"
          aria-label={props.caption}
          className={firstLine === undefined ? 'table' : 'table table-two-lines'}
        >
          <thead>
            <tr>
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
                  row={row}
                  index={index}
                  name={shownName(props.rowName(row))}
                  columns={columns}
                  firstLine={firstLine}
                  chosen={index === selectedRow}
                  tabStop={tabStop.row === index ? tabStop.column : null}
                  open={isOpen ? open : null}
                  note={isOpen ? note : null}
                  hands={hands}
                />
              );
            })}
          </tbody>
        </table>
      </div>
      <Refusals lines={note?.refused && open === null ? [note.text] : refusals} />
    </div>
  );
}

interface TableRowProps<Row> {
  readonly row: Row;
  readonly index: number;
  readonly name: string;
  readonly columns: readonly Column<Row>[];
  readonly firstLine: number | undefined;
  readonly chosen: boolean;
  /** The column that Tab comes to in this row, if it is this row. */
  readonly tabStop: number | null;
  readonly open: OpenCell | null;
  readonly note: Note | null;
  readonly hands: RefObject<Hands | null>;
}

const TableRow = memo(function TableRow<Row>(props: TableRowProps<Row>): ReactNode {
  const { row, index, columns, chosen, open, note, hands } = props;
  return (
    <tr aria-selected={chosen} className={chosen ? 'chosen' : undefined}>
      {columns.map((column, columnIndex) => {
        const cell = { row: index, column: columnIndex };
        const isOpen = open?.column === columnIndex;
        return (
          <td
            key={column.header}
            tabIndex={props.tabStop === columnIndex ? 0 : -1}
            className={`${column.numeric ? 'number' : 'word'}${column.small ? ' small' : ''}`}
            style={widthInLine(columnIndex, columns.length, props.firstLine)}
            aria-readonly={column.edit ? undefined : true}
            onKeyDown={(event) => hands.current?.keyDown(event, cell)}
            onFocus={(event) => {
              if (event.target === event.currentTarget) hands.current?.take(cell);
            }}
            onMouseDown={(event) => {
              // The second press on a cell opens it; the first one only takes the focus.
              if (!isOpen && document.activeElement === event.currentTarget) {
                event.preventDefault();
                hands.current?.pressAgain(cell);
              }
            }}
          >
            {isOpen && column.edit ? (
              <>
                <span className="cell-under" aria-hidden="true">
                  {column.show(row)}
                </span>
                <div className="cell-field">
                  {column.edit.open(row, {
                    label: `${column.header}, ${props.name}`,
                    ...(open.startWith !== undefined && { startWith: open.startWith }),
                    onLeave: (how) => hands.current?.leave(cell, how),
                    onNote: (next) => hands.current?.note(next),
                  })}
                  {note && <CellNote note={note} />}
                </div>
              </>
            ) : (
              column.show(row)
            )}
          </td>
        );
      })}
    </tr>
  );
}) as <Row>(props: TableRowProps<Row>) => ReactNode;

/** How a two-line row shares its width: each of its lines in equal parts of a grid of 60. */
const widthInLine = (index: number, count: number, firstLine: number | undefined): CSSProperties | undefined =>
  firstLine === undefined
    ? undefined
    : { gridColumn: `span ${60 / (index < firstLine ? firstLine : count - firstLine)}` };

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

/** How the open field is read, beside it: fixed on the screen, as the list's box would cut it off. */
function CellNote({ note }: { note: Note }): ReactNode {
  const element = useRef<HTMLParagraphElement>(null);
  useLayoutEffect(() => {
    const place = (): void => {
      const [own, cell] = [element.current, element.current?.closest('td')];
      if (!own || !cell) return;
      const beside = cell.getBoundingClientRect();
      const below = beside.bottom + 4 + own.offsetHeight < window.innerHeight;
      own.style.top = `${below ? beside.bottom + 4 : beside.top - own.offsetHeight - 4}px`;
      own.style.left = `${Math.max(4, Math.min(beside.left, window.innerWidth - own.offsetWidth - 12))}px`;
    };
    place();
    window.addEventListener('scroll', place, true);
    return () => window.removeEventListener('scroll', place, true);
  });
  return (
    <p ref={element} className={note.refused ? 'cell-note cell-note-refused' : 'cell-note'} aria-hidden="true">
      {note.refused && '▲ '}
      {note.text}
    </p>
  );
}

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
